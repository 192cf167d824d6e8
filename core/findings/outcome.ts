/** What keeps a relation from being computed: an input nobody has given, or one that can't be right. */
export interface InputGap {
  readonly symbol: string;
  readonly name: string;
  readonly reason: 'missing' | 'out of range' | 'no solution';
  /** The value as given, in SI; null when none was given. */
  readonly given: string | null;
  readonly allowed: string;
  /** What to measure, enter or look up. */
  readonly remedy: string;
}

/** A result, or what it waits for. Never both, never NaN. */
export type Outcome<T> =
  | { readonly value: T; readonly missing: readonly [] }
  | { readonly value: null; readonly missing: readonly InputGap[] };

/** What an input of a relation is and may be. */
export interface InputRule {
  readonly symbol: string;
  readonly name: string;
  readonly rule: 'above least' | 'within' | 'whole';
  readonly least: number;
  readonly most: number;
  readonly remedy: string;
}

/** One input of a relation with what it may be. */
export interface RelationInput extends InputRule {
  readonly value: number | null;
}

/** Rules for `relation`: as of `positive`, `within` and `whole`, for values that come later. */
export const rules = {
  positive: (symbol: string, name: string, remedy: string): InputRule => {
    return { symbol, name, rule: 'above least', least: 0, most: Number.POSITIVE_INFINITY, remedy };
  },
  within: (symbol: string, name: string, [least, most]: Range, remedy: string): InputRule => {
    return { symbol, name, rule: 'within', least, most, remedy };
  },
  whole: (symbol: string, name: string, [least, most]: Range, remedy: string): InputRule => {
    return { symbol, name, rule: 'whole', least, most, remedy };
  },
};

type Range = readonly [least: number, most: number];

/**
 * An input that has to be above zero.
 *
 * Equation: x > 0 and finite.
 * @param symbol the relation's symbol
 * @param name what it is, with its SI unit where it has one
 * @param value SI, any number, null when not known
 * @param remedy what to measure or enter
 * @returns the input with its rule
 * @example gapsOf([positive('Ag', 'gasket area, m²', null, 'measure the gasket')])[0]?.allowed // 'above 0'
 * @source rule of this program for input
 */
export function positive(symbol: string, name: string, value: number | null, remedy: string): RelationInput {
  return { symbol, name, value, rule: 'above least', least: 0, most: Number.POSITIVE_INFINITY, remedy };
}

/**
 * An input between two values, both allowed.
 *
 * Equation: least ≤ x ≤ most.
 * @param symbol the relation's symbol
 * @param name what it is, with its SI unit where it has one
 * @param value SI, any number, null when not known
 * @param range least and most value; `Infinity` for an open end
 * @param remedy what to measure or enter
 * @returns the input with its rule
 * @example gapsOf([within('φg', 'retained fraction', 7, [0, 1], 'ask the data sheet')])[0]?.allowed // '0 to 1'
 * @source rule of this program for input
 */
export function within(
  symbol: string,
  name: string,
  value: number | null,
  [least, most]: Range,
  remedy: string,
): RelationInput {
  return { symbol, name, value, rule: 'within', least, most, remedy };
}

/**
 * An input that has to be a whole number in a range.
 *
 * Equation: x ∈ {least … most}.
 * @param symbol the relation's symbol
 * @param name what it is
 * @param value the number, any, null when not known
 * @param range least and most value
 * @param remedy what to count
 * @returns the input with its rule
 * @example gapsOf([whole('nb', 'number of bolts', 1.5, [1, 400], 'count')])[0]?.allowed // 'whole number, 1 to 400'
 * @source rule of this program for input
 */
export function whole(
  symbol: string,
  name: string,
  value: number | null,
  [least, most]: Range,
  remedy: string,
): RelationInput {
  return { symbol, name, value, rule: 'whole', least, most, remedy };
}

/**
 * Computes a relation once every input is there and can be right.
 *
 * Equation: y = f(x…) when every x is known, in range and y is finite.
 * @param inputs the relation's inputs by name
 * @param relation the relation on plain numbers
 * @param further inputs that are checked too but that the relation takes from elsewhere
 * @returns the result, or every gap at once
 * @example compute({ F: positive('F', 'load, N', 10, 'measure it') }, ({ F }) => 2 * F).value // 20
 * @source rule of this program for input
 */
export function compute<I extends Readonly<Record<string, RelationInput>>, T>(
  inputs: I,
  relation: (values: { readonly [K in keyof I]: number }) => T,
  further: readonly RelationInput[] = [],
): Outcome<T> {
  const gaps: InputGap[] = [];
  for (const name in inputs) {
    const input: RelationInput | undefined = inputs[name];
    if (input !== undefined) note(input, gaps);
  }
  for (const input of further) note(input, gaps);
  if (gaps.length > 0) return { value: null, missing: gaps };
  const values: Record<string, number> = {};
  for (const name in inputs) values[name] = inputs[name]?.value ?? 0;
  const value = relation(values as { readonly [K in keyof I]: number });
  if (everyNumberFinite(value)) return { value, missing: NOTHING };
  const all = [...Object.values(inputs), ...further];
  return { value: null, missing: all.map((input) => gap(input, 'no solution', input.value)) };
}

const NOTHING = [] as const;

/** Takes an input of a call with its rule. */
export type Look = (rule: InputRule, value: number | null) => void;

/**
 * A relation whose inputs have the same rules for every joint: the rules are written once, the values come with each
 * call.
 *
 * Equation: y = f(x…) when every x is known, in range and y is finite.
 * @param ruled what each input is and may be, by name
 * @param formula the relation on plain numbers, and on what else is given with a call
 * @param further names the inputs within what else is given, such as the lengths of a stud; they are looked at last
 * @returns the relation: from values by name, SI, null when not known, to the result or every gap at once
 * @example relation({ F: rules.positive('F', 'load, N', 'measure it') }, ({ F }) => 2 * F)({ F: 10 }).value // 20
 * @source rule of this program for input
 */
export function relation<R extends Readonly<Record<string, InputRule>>, T, G = void>(
  ruled: R,
  formula: (values: { readonly [K in keyof R]: number }, given: G) => T,
  further: ((given: G, look: Look) => void) | null = null,
): (values: { readonly [K in keyof R]: number | null }, given: G) => Outcome<T> {
  const inputs = Object.entries(ruled).map(([name, rule]) => {
    return { name, rule, missing: gap(rule, 'missing', null) };
  });
  return (values, given) => {
    const gaps: InputGap[] = [];
    for (const { name, rule, missing } of inputs) {
      const value = values[name] ?? null;
      if (value === null) gaps.push(missing);
      else if (!keeps(rule, value)) gaps.push(gapOf(rule, value));
    }
    further?.(given, (rule, value) => {
      if (value === null || !keeps(rule, value)) gaps.push(gapOf(rule, value));
    });
    if (gaps.length > 0) return { value: null, missing: gaps };
    const value = formula(values as { readonly [K in keyof R]: number }, given);
    if (everyNumberFinite(value)) return { value, missing: NOTHING };
    const all = inputs.map(({ name, rule }) => gap(rule, 'no solution', values[name] ?? null));
    further?.(given, (rule, own) => all.push(gap(rule, 'no solution', own)));
    return { value: null, missing: all };
  };
}

/**
 * What is wrong with inputs, without computing anything.
 *
 * @param inputs inputs with their rules
 * @returns one gap per input that is missing or out of range
 * @example gapsOf([positive('F', 'load, N', -1, 'measure it')])[0]?.reason // 'out of range'
 * @source rule of this program for input
 */
export function gapsOf(inputs: readonly RelationInput[]): InputGap[] {
  const gaps: InputGap[] = [];
  for (const input of inputs) note(input, gaps);
  return gaps;
}

/**
 * The outcome of a relation that has no answer for inputs which are each in range.
 *
 * @param symbol what was sought
 * @param name what it is
 * @param remedy what to check
 * @returns an outcome without a value
 * @example noSolution('μ', 'friction coefficient', 'check K').missing[0]?.reason // 'no solution'
 * @source rule of this program for input
 */
export function noSolution(symbol: string, name: string, remedy: string): Outcome<never> {
  return {
    value: null,
    missing: [{ symbol, name, reason: 'no solution', given: null, allowed: 'see remedy', remedy }],
  };
}

function note(input: RelationInput, gaps: InputGap[]): void {
  if (input.value === null || !keeps(input, input.value)) gaps.push(gapOf(input, input.value));
}

function gapOf(rule: InputRule, value: number | null): InputGap {
  return gap(rule, value === null ? 'missing' : 'out of range', value);
}

function keeps({ rule, least, most }: InputRule, value: number): boolean {
  if (!Number.isFinite(value) || value > most) return false;
  if (rule === 'above least') return value > least;
  return value >= least && (rule === 'within' || Number.isInteger(value));
}

function gap(rule: InputRule, reason: InputGap['reason'], value: number | null): InputGap {
  const { symbol, name, remedy } = rule;
  const given = value === null ? null : String(value);
  return { symbol, name, reason, given, allowed: allowedText(rule), remedy };
}

function allowedText({ rule, least, most }: InputRule): string {
  if (rule === 'above least') return `above ${least}`;
  if (rule === 'whole') return `whole number, ${least} to ${most}`;
  return Number.isFinite(most) ? `${least} to ${most}` : `at least ${least}`;
}

function everyNumberFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value)) return value.every(everyNumberFinite);
  if (value === null || typeof value !== 'object') return true;
  for (const key in value) {
    if (!everyNumberFinite((value as Readonly<Record<string, unknown>>)[key])) return false;
  }
  return true;
}
