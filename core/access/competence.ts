import { Temporal } from 'temporal-polyfill';
import type { CompetenceData } from '../contract/access.ts';
import type { CompetenceState } from '../contract/roles.ts';
import type { Method } from '../contract/setting.ts';

export interface CompetenceStanding {
  readonly state: CompetenceState;
  /** By which paper, or what is missing. */
  readonly reason: string;
}

/** A certificate of the standard counts so long at most; continued practice is asked for beside it. */
const YEARS_BY_EN_1591_4 = 5;

const BY_EN_1591_4 = /\bEN 1591-4\b/i;

type Dates = Pick<CompetenceData, 'scheme' | 'issuedOn' | 'validUntil'>;

/**
 * Last day on which a competence counts: as its paper says, under EN 1591-4 five years at most.
 *
 * @param competence scheme and dates of the paper
 * @returns calendar date; null when the paper states none and the scheme’s rule is not known
 * @example lastGoodDay({ scheme: 'EN 1591-4', issuedOn: '2021-03-16', validUntil: null }) // '2026-03-15'
 * @source EN 1591-4:2013, validity of the certificate (from memory)
 */
export function lastGoodDay({ scheme, issuedOn, validUntil }: Dates): string | null {
  if (!BY_EN_1591_4.test(scheme)) return validUntil;
  const byStandard = Temporal.PlainDate.from(issuedOn)
    .add({ years: YEARS_BY_EN_1591_4 })
    .subtract({ days: 1 })
    .toString();
  return validUntil !== null && validUntil < byStandard ? validUntil : byStandard;
}

/**
 * How a person's competence for a method stands on a day.
 *
 * @param competences every competence recorded of the person
 * @param method what the load is brought in with
 * @param on calendar date of the job, YYYY-MM-DD
 * @returns state with the paper behind it; without any paper it is not known, which is no pass
 * @example competenceOn([], 'hydraulic wrench', '2026-03-16').state // 'not known'
 * @source rule of this program
 */
export function competenceOn(
  competences: readonly CompetenceData[],
  method: Method,
  on: string,
): CompetenceStanding {
  if (competences.length === 0) return { state: 'not known', reason: 'no competence is recorded' };
  const held = competences.filter(({ withdrawn }) => !withdrawn);
  if (held.length === 0) {
    return { state: 'not qualified', reason: `${listed(competences)}: withdrawn` };
  }
  const named = held.filter(({ methods }) => methods.includes(method));
  const open = held.filter(({ methods }) => methods.length === 0);
  const [good] = named.filter((one) => dayOf(one, on) === 'in date');
  if (good) return { state: 'qualified', reason: inWords(good) };
  const unclear = [...named, ...open].find((one) => dayOf(one, on) === 'not known');
  const [unnamed] = open.filter((one) => dayOf(one, on) === 'in date');
  if (unnamed) return { state: 'not known', reason: `${nameOf(unnamed)} names no method` };
  if (unclear) return { state: 'not known', reason: `${nameOf(unclear)} states no last day` };
  const lapsed = [...named, ...open].filter((one) => dayOf(one, on) === 'expired').toSorted(byLastDay);
  const latest = lapsed.at(-1);
  if (latest) return { state: 'expired', reason: `${nameOf(latest)} counted until ${lastGoodDay(latest)}` };
  const [later] = [...named, ...open];
  if (later)
    return { state: 'not qualified', reason: `${nameOf(later)} is of ${later.issuedOn}, after that day` };
  return { state: 'not qualified', reason: `${listed(held)}: not for a ${method}` };
}

function dayOf(one: CompetenceData, on: string): 'in date' | 'expired' | 'later' | 'not known' {
  if (one.issuedOn > on) return 'later';
  const until = lastGoodDay(one);
  if (until === null) return 'not known';
  return on <= until ? 'in date' : 'expired';
}

const byLastDay = (a: CompetenceData, b: CompetenceData) =>
  (lastGoodDay(a) ?? '') < (lastGoodDay(b) ?? '') ? -1 : 1;

function nameOf({ scheme, certificate }: CompetenceData): string {
  return certificate === '' ? scheme : `${scheme}, ${certificate}`;
}

const listed = (competences: readonly CompetenceData[]) => competences.map(nameOf).join('; ');

function inWords(one: CompetenceData): string {
  const restricted = one.restrictions === '' ? '' : `; restricted: ${one.restrictions}`;
  return `${nameOf(one)}, until ${lastGoodDay(one)}${restricted}`;
}
