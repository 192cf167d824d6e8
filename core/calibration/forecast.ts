import { compute, type Outcome, positive, type RelationInput, within } from '../findings/outcome.ts';
import { studentQuantile } from '../uncertainty/student-t.ts';
import { weightedLineUncertainty } from './prediction.ts';
import { inflationOf, type LinePoint, type WeightedLine, weightedLine } from './weighted-line.ts';

/** As-found result of one certificate. */
export interface AsFoundResult {
  /** When: years, or events since the tool came into use; rising. */
  readonly at: number;
  /** Error as found, (delivered − intended)/intended. */
  readonly error: number;
  /** Standard uncertainty of the error that belongs to this result alone; null when not known. */
  readonly uncertainty: number | null;
  /** Error the tool was left with; null when it was left as found. */
  readonly left: number | null;
}

/** Straight-line drift through as-found errors, adjustments taken out. */
export interface DriftRate {
  /** Change of the error per year or per event, with its standard uncertainty. */
  readonly rate: number;
  readonly uncertainty: number;
  /** Error now, at the last result, as left. */
  readonly present: number;
  readonly results: number;
}

/** What can be said of when a limit is reached; `at` is null wherever nothing can. */
export type Forecast =
  | { readonly state: 'too few to say'; readonly at: null; readonly results: number; readonly needed: number }
  | { readonly state: 'no significant drift'; readonly at: null; readonly drift: DriftRate }
  | { readonly state: 'reached'; readonly at: number; readonly drift: DriftRate }
  | {
      readonly state: 'forecast';
      readonly at: number;
      /** 95 % interval; it never begins before the last result. */
      readonly interval: readonly [number, number];
      readonly drift: DriftRate;
    };

const NEEDED = 3;
const PROBABILITY = 0.95;
/** Part of the torque that no certificate prints. */
const ROUNDING = 1e-9;

/**
 * When a tool's error reaches its limit if it goes on drifting as its certificates show.
 *
 * Equation: e(t) = a + b·t through the errors with adjustments undone; e(t*) = ±(L − w); interval: t with |a + b·t ∓ (L −
 * w)| ≤ t₀.₉₇₅(n − 2)·u(e(t)), after Fieller.
 * @param results as-found results, `at` rising, whatever unit it counts in
 * @param limit L, largest permissible error, 1, above 0
 * @param guard w, guard band, 1, at least 0 and below L; 0 for simple acceptance
 * @returns state; a date only where the drift differs from zero at 95 %, and never one before the last result
 * @example forecast([0, 1, 2, 3].map((at) => ({ at, error: -0.01 * at + (at % 2 ? 1e-4 : -1e-4), uncertainty: null, left: null })), 0.04, 0).value?.at // 4.0
 * @source E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175 (from memory); JCGM 100:2008 (GUM), Annexes G.3 and H.3; ILAC-G24:2022, method 2 (control chart)
 */
export function forecast(
  results: readonly AsFoundResult[],
  limit: number | null,
  guard: number | null,
): Outcome<Forecast> {
  const checked = compute(
    {
      L: positive('L', 'largest permissible error', limit, 'enter the site’s limit'),
      w: within('w', 'guard band', guard, [0, 1], 'enter 0 for simple acceptance'),
    },
    ({ L, w }) => L - w,
    results.flatMap(resultInputs),
  );
  if (checked.value === null) return checked;
  const room = compute(
    {
      room: positive(
        'L − w',
        'limit less guard band',
        checked.value,
        'the guard band leaves nothing of the limit',
      ),
    },
    (v) => v.room,
  );
  if (room.value === null) return room;
  const last = results.at(-1);
  if (results.length < NEEDED || last === undefined) {
    return {
      value: { state: 'too few to say', at: null, results: results.length, needed: NEEDED },
      missing: [],
    };
  }
  return extrapolate(results, last, room.value);
}

function extrapolate(
  results: readonly AsFoundResult[],
  last: AsFoundResult,
  room: number,
): Outcome<Forecast> {
  const { points, offset } = withoutAdjustments(results);
  const fitted = weightedLine(points);
  if (fitted.value === null) return fitted;
  const line = fitted.value;
  const factor = studentQuantile((1 + PROBABILITY) / 2, line.degreesOfFreedom);
  if (factor.value === null) return factor;
  const uncertainty = slopeDeviation(line);
  const present = last.left ?? last.error;
  const drift: DriftRate = { rate: line.slope, uncertainty, present, results: results.length };
  if (Math.abs(present) >= room) return { value: { state: 'reached', at: last.at, drift }, missing: [] };
  // A change over all results that is smaller than rounding is none, however well the points lie on their line.
  const moved = Math.abs(line.slope) * (last.at - (results[0]?.at ?? last.at)) > ROUNDING;
  if (!moved || !(Math.abs(line.slope) > factor.value * uncertainty)) {
    return { value: { state: 'no significant drift', at: null, drift }, missing: [] };
  }
  const target = Math.sign(line.slope) * room - offset;
  const at = (target - line.intercept) / line.slope;
  if (!(at > last.at)) return { value: { state: 'reached', at: last.at, drift }, missing: [] };
  const [early, late] = fieller(line, target, factor.value);
  return {
    value: {
      state: 'forecast',
      at,
      interval: [Math.max(last.at, Math.min(at, early)), Math.max(at, late)],
      drift,
    },
    missing: [],
  };
}

/** Errors as they would run on had nobody adjusted the tool, and what the adjusting has added by now. */
function withoutAdjustments(results: readonly AsFoundResult[]): { points: LinePoint[]; offset: number } {
  let offset = 0;
  const points = results.map(({ at, error, uncertainty, left }) => {
    const point = { x: at, y: error - offset, u: uncertainty };
    offset += left === null ? 0 : left - error;
    return point;
  });
  return { points, offset };
}

function slopeDeviation(line: WeightedLine): number {
  return line.slopeUncertainty * inflationOf(line);
}

/** Ends of the range of t in which the line's band holds the target; finite because the slope differs from zero. */
function fieller(line: WeightedLine, target: number, factor: number): readonly [number, number] {
  const scale = factor * inflationOf(line);
  // Taken from the centre of the points, where level and slope are independent.
  const centre = line.slopeUncertainty > 0 ? -line.covariance / line.slopeUncertainty ** 2 : 0;
  const level = line.intercept + line.slope * centre - target;
  const levelBand = factor * weightedLineUncertainty(line, centre);
  const slopeBand = scale * line.slopeUncertainty;
  const a = line.slope ** 2 - slopeBand ** 2;
  const half = line.slope * level;
  const root = Math.sqrt(Math.max(0, half ** 2 - a * (level ** 2 - levelBand ** 2)));
  return [centre + (-half - root) / a, centre + (-half + root) / a];
}

function resultInputs(
  { at, error, uncertainty, left }: AsFoundResult,
  index: number,
  all: readonly AsFoundResult[],
): RelationInput[] {
  const before = all[index - 1]?.at ?? -1e9;
  const nth = `of result ${index + 1}`;
  return [
    within('t', `time or use ${nth}`, at, [before, 1e9], 'give results in the order they were found'),
    within('e', `error ${nth}`, error, [-1, 10], 'take it from the certificate'),
    within('e', `error as left ${nth}`, left ?? 0, [-1, 10], 'take it from the certificate'),
    positive('u(e)', `standard uncertainty ${nth}`, uncertainty ?? 1, 'take it from the certificate'),
  ];
}
