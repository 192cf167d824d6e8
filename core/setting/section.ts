import type { Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { InputGap } from '../findings/outcome.ts';
import { type About, raise } from '../findings/raise.ts';
import { oncePerName } from '../reference/once-per.ts';

/** Part of a card: what is shown, what stands against it, and how it came about. */
export interface Section<V> {
  readonly view: V;
  readonly findings: readonly Raised[];
  /** Spelled out only for a card: a person reads them, no check does. */
  readonly workings: () => readonly Working[];
}

/**
 * Workings of a part that shows none.
 *
 * @returns an empty list
 * @example NO_WORKINGS().length // 0
 * @source rule of this program
 */
export const NO_WORKINGS = (): readonly Working[] => [];

/**
 * Lists what a relation waits for, each need once.
 *
 * @param gaps inputs that are missing or can’t be right
 * @returns texts that name the input and what to do
 * @example needsOf(gapsOf([positive('Ag', 'gasket area, m²', null, 'measure the gasket')])) // ['gasket area: measure the gasket']
 * @source rule of this program
 */
export function needsOf(gaps: readonly InputGap[]): string[] {
  const once: InputGap[] = [];
  for (const gap of gaps) {
    if (!once.some((other) => sameNeed(other, gap))) once.push(gap);
  }
  return once.map(need);
}

function sameNeed(a: InputGap, b: InputGap): boolean {
  return a === b || (a.name === b.name && a.given === b.given && a.remedy === b.remedy);
}

function need({ name, given, remedy }: InputGap): string {
  return given === null ? `${withoutUnit(name)}: ${remedy}` : `${name}: ${given} can’t be; ${remedy}`;
}

const SI_UNIT = /, (m²|m|Pa|N·m|N\/m|N|1\/K|K|rad)(?=,|$)/;

/** The SI unit behind a name says something only beside a number. */
const withoutUnit = oncePerName((name) => name.replace(SI_UNIT, ''));

/**
 * A check that was not made. Data nobody has are a note; data that can't be right are a warning.
 *
 * @param check what was not checked
 * @param gaps what it waits for
 * @param about subject, place and source
 * @returns one finding, or none when nothing is waited for
 * @example notChecked('seating', [], { subject: 'A', place: atSettings('planId'), source: '' }).length // 0
 * @source rule of this program
 */
export function notChecked(
  check: string,
  gaps: readonly InputGap[],
  about: Omit<About, 'severity'>,
): Raised[] {
  if (gaps.length === 0) return [];
  const severity = gaps.some(({ reason }) => reason !== 'missing') ? 'warning' : 'note';
  return [raise('check_not_made', () => ({ check, needs: needsOf(gaps) }), { ...about, severity })];
}
