import type { TableCells } from '../contract/site.ts';
import type { Wording } from '../text/finding-facts.ts';
import type { Unit } from '../units/units.ts';
import type { FindingCode } from './codes.ts';

/** Refusal: the setting can't be issued. Warning: look before going on. Note: good to know. */
export const SEVERITIES = ['refusal', 'warning', 'note'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Where a finding is solved. */
export interface FindingPlace {
  readonly screen: 'joint' | 'tool' | 'settings';
  readonly id: string | null;
  readonly field: string | null;
}

/** Something that stands against what is on the page, its words still to be written. */
export interface Raised {
  readonly code: FindingCode;
  readonly severity: Severity;
  /** The thing it is about: a tag, a tool's number. */
  readonly subject: string;
  /** Number in SI, or text; null when not known. */
  readonly value: number | string | null;
  readonly limit: number | string | null;
  /** Unit in which `value` and `limit` are best read. */
  readonly unit: Unit | null;
  /** Rule, standard or document behind the limit. */
  readonly source: string;
  readonly place: FindingPlace;
  /** Values of a shipped table that a person can confirm here; null for every other finding. */
  readonly confirm: TableCells | null;
  /** Written only when somebody reads them: a planner looks through thousands of settings by code. */
  readonly words: () => Wording;
}

/** One thing the book has to say about what is on the page. */
export interface Finding extends Omit<Raised, 'words'>, Wording {}
