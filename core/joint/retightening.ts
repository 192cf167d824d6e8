import { LEAST_DWELL } from '../sequence/dwell.ts';

/** Bolt-metal temperatures of a start-up retightening, °C. Common practice: 120 to 230 °C, 250 to 450 °F. */
export const COMMON_WINDOW = { from: 120, to: 230, source: 'common practice' } as const;

/** Kinds of retightening after the last full pass. Live tightening of a leaking joint is none of them. */
export type Retightening = 'ambient, after a dwell' | 'start-up, while warming';

/** What is known about the joint at the moment of asking. Null is not known. */
export interface RetighteningFacts {
  readonly kind: Retightening;
  /** Measured on the stud's metal, °C. */
  readonly boltMetalTemperature: number | null;
  readonly gasketType: string | null;
  /** Gasket kinds that the site does not retighten hot; null when the site has not said. */
  readonly excludedGaskets: readonly string[] | null;
  /** Since the last full pass, s. */
  readonly sinceFullPass: number | null;
  /** Torque of the last full pass, N·m: a start-up pass goes back to it, never above. */
  readonly lastTorque: number | null;
  /** Number of the site procedure that allows this retightening. */
  readonly siteProcedure: string | null;
  /** Window of the site, °C; null takes the common one. */
  readonly window: { readonly from: number; readonly to: number; readonly source: string } | null;
}

/** Reasons against, each a sentence of its own. No reason is not a permit. */
export interface RetighteningAnswer {
  readonly reasons: readonly string[];
  readonly window: { readonly from: number; readonly to: number; readonly source: string };
  /** What an empty list means. */
  readonly deferral: string;
}

const DEFERRAL = 'No reason against it is known here. The site procedure and its signatures decide.';

/**
 * Reasons why a joint can't be retightened now. The answer never allows anything.
 *
 * Equation: start-up: Tfrom ≤ Tbolt ≤ Tto; ambient: t ≥ 4 h and Tbolt < Tfrom.
 * @param facts temperature, gasket, wait, last torque and site procedure; null members are reasons of their own
 * @returns reasons, each beginning "not eligible:", and the window used
 * @example retighteningReasons({ kind: 'start-up, while warming', boltMetalTemperature: null, gasketType: 'spiral
 * wound', excludedGaskets: [], sinceFullPass: 20000, lastTorque: 400, siteProcedure: 'P-1', window: null }).reasons //
 * ['not eligible: bolt-metal temperature not measured']
 * @source window: common practice; wait of at least 4 h: ASME PCC-1-2013 (from memory); excluded gaskets: site data
 */
export function retighteningReasons(facts: RetighteningFacts): RetighteningAnswer {
  const window = facts.window ?? COMMON_WINDOW;
  const reasons = [
    ...windowReasons(window),
    ...temperatureReasons(facts, window),
    ...(facts.kind === 'start-up, while warming' ? gasketReasons(facts) : dwellReasons(facts.sinceFullPass)),
    ...(facts.lastTorque !== null && Number.isFinite(facts.lastTorque) && facts.lastTorque > 0
      ? []
      : ['torque of the last full pass not known']),
    ...(facts.siteProcedure === null || facts.siteProcedure.trim() === ''
      ? ['no site procedure named for this retightening']
      : []),
  ];
  return { reasons: reasons.map((reason) => `not eligible: ${reason}`), window, deferral: DEFERRAL };
}

type Window = RetighteningAnswer['window'];

function windowReasons({ from, to }: Window): string[] {
  return from < to ? [] : [`temperature window ${from} to ${to} °C leaves no room`];
}

function temperatureReasons({ kind, boltMetalTemperature: at }: RetighteningFacts, window: Window): string[] {
  if (at === null || !Number.isFinite(at)) return ['bolt-metal temperature not measured'];
  // A temperature read in another unit has no end of digits.
  const metal = `bolt metal at ${Number(at.toFixed(1))} °C`;
  if (kind === 'ambient, after a dwell') {
    return at < window.from ? [] : [`${metal} is not at ambient temperature`];
  }
  if (at < window.from) return [`${metal}, window begins at ${window.from} °C`];
  if (at > window.to) return [`${metal}, window ends at ${window.to} °C`];
  return [];
}

function gasketReasons({ gasketType, excludedGaskets }: RetighteningFacts): string[] {
  if (gasketType === null || gasketType.trim() === '') return ['gasket not known'];
  if (excludedGaskets === null) return ['the site has not said which gaskets it excludes'];
  const wanted = plain(gasketType);
  return excludedGaskets.some((kind) => plain(kind) !== '' && wanted.includes(plain(kind)))
    ? [`gasket "${gasketType}" is excluded by the site`]
    : [];
}

function dwellReasons(seconds: number | null): string[] {
  if (seconds === null || !Number.isFinite(seconds) || seconds < 0)
    return ['time of the last full pass not known'];
  if (seconds >= LEAST_DWELL) return [];
  return [`${(seconds / 3600).toFixed(1)} h since the last full pass, at least 4 h needed`];
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')
    .trim();
}

/** What a site's checklist for tightening in service asks about; null is not known. */
export interface LiveTighteningFacts {
  readonly boltCount: number | null;
  readonly boltLoadRecorded: boolean | null;
  readonly standardFlange: boolean | null;
  readonly bellowsOrClamp: boolean | null;
  readonly boltsSound: boolean | null;
  readonly pressureReduced: boolean | null;
  readonly siteProcedure: string | null;
}

/** Fewest bolts of a joint in common entry conditions for work in service. */
const FEWEST_BOLTS = 8;

/**
 * Reasons against tightening or renewing bolts in service. The answer never allows anything.
 *
 * Equation: every condition known and met; at least 8 bolts.
 * @param facts the checklist; null members are reasons of their own
 * @returns reasons, each beginning "not eligible:"
 * @example liveTighteningReasons({ boltCount: 4, boltLoadRecorded: true, standardFlange: true, bellowsOrClamp: false,
 * boltsSound: true, pressureReduced: true, siteProcedure: 'P-1' }).reasons // ['not eligible: 4 bolts, common practice
 * asks for at least 8']
 * @source common practice for hot bolting; ASME PCC-2, Article 311, for the subject (not read)
 */
export function liveTighteningReasons(
  facts: LiveTighteningFacts,
): Pick<RetighteningAnswer, 'reasons' | 'deferral'> {
  const { boltCount } = facts;
  const reasons = [
    ...(boltCount === null || !Number.isInteger(boltCount) ? ['bolt count not known'] : []),
    ...(boltCount !== null && Number.isInteger(boltCount) && boltCount < FEWEST_BOLTS
      ? [`${boltCount} bolts, common practice asks for at least ${FEWEST_BOLTS}`]
      : []),
    ...demand(facts.boltLoadRecorded, true, 'no record of the bolt load'),
    ...demand(facts.standardFlange, true, 'not a standard flange'),
    ...demand(facts.bellowsOrClamp, false, 'bellows, clamp, compact or insulating joint'),
    ...demand(facts.boltsSound, true, 'bolts necked or corroded'),
    ...demand(facts.pressureReduced, true, 'pressure not reduced'),
    ...(facts.siteProcedure === null || facts.siteProcedure.trim() === '' ? ['no site procedure named'] : []),
  ];
  return { reasons: reasons.map((reason) => `not eligible: ${reason}`), deferral: DEFERRAL };
}

function demand(fact: boolean | null, wanted: boolean, reason: string): string[] {
  if (fact === null) return [`not known whether: ${reason}`];
  return fact === wanted ? [] : [reason];
}
