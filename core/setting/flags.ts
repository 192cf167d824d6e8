import type { Raised } from '../findings/finding.ts';

/** What stands against a record that is kept all the same. */
export interface RecordFacts {
  /** Findings about what was really used; null when nothing could be checked for want of a tool set. */
  readonly assessed: { readonly findings: readonly Raised[] } | null;
  readonly settingIssued: boolean;
  /** Studs done; null when the kind of record doesn't count them. */
  readonly boltsDone: number | null;
  readonly boltCount: number | null;
  /** Refusals that were set aside when the setting was issued. */
  readonly setAside?: { readonly setting: string; readonly codes: readonly string[] } | null;
}

const REFUSAL = 'refusal: ';

/**
 * Texts a recorded event is flagged with. A refusal never blocks recording what was done; it shows here instead.
 *
 * @param facts what was recorded against what the joint and the setting say
 * @returns one text per flag, none when nothing stands against the record
 * @example recordFlags({ assessed: null, settingIssued: false, boltsDone: 10, boltCount: 12 }) // ['recorded without an
 * issued setting', 'unfinished: 10 of 12 studs']
 * @source rule of this program
 */
export function recordFlags(facts: RecordFacts): string[] {
  const { assessed, settingIssued, boltsDone, boltCount, setAside = null } = facts;
  const flags: string[] = [];
  if (!settingIssued) flags.push('recorded without an issued setting');
  if (boltsDone !== null && boltCount === null) flags.push('stud count of the joint not known');
  if (boltsDone !== null && boltCount !== null && boltsDone < boltCount) {
    flags.push(`unfinished: ${boltsDone} of ${boltCount} studs`);
  }
  if (boltsDone !== null && boltCount !== null && boltsDone > boltCount) {
    flags.push(`more studs recorded than the joint has: ${boltsDone} of ${boltCount}`);
  }
  for (const finding of assessed?.findings ?? []) {
    if (finding.severity !== 'refusal') continue;
    const aside = setAside?.codes.includes(finding.code) ? `; set aside in setting ${setAside.setting}` : '';
    flags.push(`${REFUSAL}${finding.words().title}${aside}`);
  }
  return flags;
}

/**
 * Whether a record was kept although what was done broke a limit that refuses a setting.
 *
 * @param flags texts of `recordFlags`
 * @returns true where one of them tells a refusal
 * @example tellsRefusal(['recorded without an issued setting']) // false
 * @source rule of this program
 */
export const tellsRefusal = (flags: readonly string[]): boolean =>
  flags.some((flag) => flag.startsWith(REFUSAL));
