import { batchLoadError, deliveredError, gaugeTorqueError } from '../calibration/delivered-error.ts';
import type { GaugeCorrection } from '../calibration/gauge-correction.ts';
import { torqueAtPressure } from '../calibration/reading.ts';
import { certifiedRange } from '../calibration/setting.ts';
import { combined, torqueBudget } from '../calibration/uncertainty.ts';
import type { CertificateLineView } from '../contract/tool.ts';
import { showQuantity } from '../text/number.ts';
import { type Compared, errorByComparisons } from './check-error.ts';
import type { LoadSpread } from './real-load.ts';

/** What the failing evidence says of the subject. `name` is how a person finds it: "certificate C-9 of W-03, as found". */
export type ErrorSource =
  | {
      readonly kind: 'line';
      readonly name: string;
      readonly line: CertificateLineView;
      /** Expanded uncertainty of the laboratory's reference as a fraction, and its factor; null is not stated. */
      readonly reference: { readonly expanded: number; readonly coverage: number } | null;
    }
  | { readonly kind: 'gauge'; readonly name: string; readonly correction: GaugeCorrection }
  | {
      readonly kind: 'comparisons';
      readonly name: string;
      /** What was compared, and where on which axis the comparisons stand. */
      readonly of: 'torque' | 'pressure';
      readonly along: 'pressure' | 'torque';
      readonly comparisons: readonly Compared[];
    }
  | { readonly kind: 'stated'; readonly name: string; readonly error: number }
  | { readonly kind: 'nut factor'; readonly name: string; readonly value: number }
  | { readonly kind: 'not known'; readonly name: string };

/** One use of the subject, as recorded. SI; null is not known. */
export interface SuspectUse {
  /** Pressure the gauge showed, and the true one by the gauge's certificate of that time, Pa. */
  readonly dialled: number | null;
  readonly pressure: number | null;
  /** N·m */
  readonly torque: number | null;
  /** Line the record rested on. */
  readonly line: CertificateLineView | null;
  /** Nut factor of the joint as it was set. */
  readonly nutFactor: number | null;
  /** Largest error of the gauge and the distance between its marks, Pa. */
  readonly gauge: { readonly limit: number; readonly graduation: number } | null;
}

/** What the subject did in one use. */
export interface Delivered {
  readonly intendedTorque: number | null;
  readonly deliveredTorque: number | null;
  /** Load or torque delivered over intended, less one; null is not known, `basis` says why. */
  readonly error: number | null;
  readonly uncertainty: number | null;
  /** Spread of what was delivered, friction left out. */
  readonly spread: LoadSpread;
  readonly basis: string;
}

/**
 * What a subject delivered in one use, by the evidence that it was wrong.
 *
 * Equation: e = (T delivered − T intended)/T intended at the event's pressure; by nut factor e = K assumed/K real − 1.
 * @param use the use as recorded, SI
 * @param source what the failing evidence says
 * @returns intended and delivered torque, error and its uncertainty; null with the reason where something is not known
 * @example deliveredIn({ dialled: 3e7, pressure: 3e7, torque: 450, line, nutFactor: 0.16, gauge: null }, { kind: 'stated',
 * name: 'as stated', error: -0.08 }).deliveredTorque // 414
 * @source ISO 9001:2015, 7.1.5.2; sign as a delivered error, see `calibration/decision.ts` for ISO 6789
 */
export function deliveredIn(use: SuspectUse, source: ErrorSource): Delivered {
  switch (source.kind) {
    case 'line':
      return byLine(use, source);
    case 'gauge':
      return byGauge(use, source);
    case 'comparisons':
      return source.of === 'torque' ? byTorques(use, source) : byPressures(use, source);
    case 'stated':
      return scaled(use.torque, source.error, source.name);
    case 'nut factor':
      return byNutFactor(use, source);
    case 'not known':
      return unknown(use.torque, source.name);
  }
}

type Source<K extends ErrorSource['kind']> = Extract<ErrorSource, { kind: K }>;

const NO_SPREAD: LoadSpread = { common: null, perBolt: null };
/** A pressure converted between units may differ in its last bits from the point it stands for. */
const SLACK = 1 + 1e-9;

const bar = (pressure: number) => showQuantity(pressure, 'bar');

function byLine(use: SuspectUse, { name, line, reference }: Source<'line'>): Delivered {
  const { pressure } = use;
  if (pressure === null) return unknown(use.torque, 'not known: no pressure was recorded');
  if (use.line === null) return unknown(use.torque, 'not known: no certificate says what was intended');
  const { highest } = certifiedRange(line);
  if (pressure > highest * SLACK) {
    return unknown(use.torque, `not known: ${bar(pressure)} lies above the highest point of ${name}`);
  }
  const relative = reference === null ? null : reference.expanded / reference.coverage;
  const outcome = deliveredError(use.line, line, pressure, relative).value;
  if (outcome === null) return unknown(use.torque, `not known: no torque at ${bar(pressure)}`);
  const { intended, delivered, error, uncertainty } = outcome;
  const spread = lineSpread(use, line, pressure, delivered, reference);
  const parts = [
    `${name}, at ${bar(pressure)}`,
    ...(reference === null ? ['it states no uncertainty of its reference'] : []),
    ...(use.gauge === null ? ['gauge not recorded'] : []),
  ];
  return {
    intendedTorque: intended,
    deliveredTorque: delivered,
    error,
    uncertainty,
    spread,
    basis: parts.join('; '),
  };
}

function lineSpread(
  { gauge }: SuspectUse,
  line: CertificateLineView,
  pressure: number,
  torque: number,
  reference: Source<'line'>['reference'],
): LoadSpread {
  if (reference === null || gauge === null || torque <= 0) return NO_SPREAD;
  const parts = torqueBudget({ line, pressure, torque, reference, gauge });
  const own = parts.filter(({ name }) => name === 'Repeatability').map(({ u }) => u);
  const shared = parts.filter(({ name }) => name !== 'Repeatability').map(({ u }) => u);
  return { common: combined(shared) / torque, perBolt: combined(own) / torque };
}

/** What a gauge shows is turned into torque by the wrench's line: an error of pressure is not the same error of torque. */
function byGauge(use: SuspectUse, { name, correction }: Source<'gauge'>): Delivered {
  if (use.dialled === null) return unknown(use.torque, 'not known: no pressure was recorded');
  const actual = correction.toReference(use.dialled);
  if (actual === null) {
    return unknown(use.torque, `not known: ${bar(use.dialled)} lies outside the points of ${name}`);
  }
  return atPressure(use, actual, `${name}: ${bar(use.dialled)} shown, ${bar(actual)} there`);
}

function byPressures(use: SuspectUse, source: Source<'comparisons'>): Delivered {
  const { dialled } = use;
  const found = errorByComparisons(source.comparisons, dialled).value;
  if (found === null || dialled === null) return unknown(use.torque, notCompared(use, source));
  const actual = dialled * (1 + found.error);
  return atPressure(
    use,
    actual,
    `${compared(source, found)}: ${bar(dialled)} shown, ${bar(actual)} there; it states no uncertainty`,
  );
}

function atPressure(use: SuspectUse, actual: number, basis: string): Delivered {
  if (use.line === null || use.pressure === null) {
    return unknown(use.torque, 'not known: no certificate turns the pressure into torque');
  }
  const outcome = gaugeTorqueError(use.line, use.pressure, actual, null).value;
  if (outcome === null) return unknown(use.torque, `not known: no torque at ${bar(use.pressure)}`);
  return {
    intendedTorque: outcome.intended,
    deliveredTorque: outcome.delivered,
    error: outcome.error,
    uncertainty: null,
    spread: NO_SPREAD,
    basis,
  };
}

function byTorques(use: SuspectUse, source: Source<'comparisons'>): Delivered {
  const at = source.along === 'pressure' ? use.dialled : use.torque;
  const found = errorByComparisons(source.comparisons, at).value;
  if (found === null) return unknown(use.torque, notCompared(use, source));
  const intended =
    use.line === null || use.pressure === null ? use.torque : torqueAtPressure(use.line, use.pressure);
  return scaled(intended, found.error, `${compared(source, found)}; it states no uncertainty`);
}

function notCompared({ dialled, torque }: SuspectUse, { name, along }: Source<'comparisons'>): string {
  if ((along === 'pressure' ? dialled : torque) === null) return `not known: no ${along} was recorded`;
  return `not known: ${name} has no comparison with a number`;
}

function compared(
  { name, along }: Source<'comparisons'>,
  { how, lowest, highest }: { readonly how: string; readonly lowest: number; readonly highest: number },
): string {
  const show = (value: number) => (along === 'pressure' ? bar(value) : showQuantity(value, 'N.m'));
  const range = lowest === highest ? `at ${show(lowest)}` : `${show(lowest)} to ${show(highest)}`;
  return `${name}, ${how}, compared ${range}`;
}

function byNutFactor(use: SuspectUse, { name, value }: Source<'nut factor'>): Delivered {
  const found = batchLoadError(use.nutFactor, value, null).value;
  if (found === null) return unknown(use.torque, 'not known: the joint was set without a nut factor');
  return {
    intendedTorque: use.torque,
    // The torque was right; the load it gave was not.
    deliveredTorque: use.torque,
    error: found.error,
    uncertainty: null,
    spread: NO_SPREAD,
    basis: `${name}; it states no uncertainty`,
  };
}

function scaled(torque: number | null, error: number, basis: string): Delivered {
  return {
    intendedTorque: torque,
    deliveredTorque: torque === null ? null : torque * (1 + error),
    error,
    uncertainty: null,
    spread: NO_SPREAD,
    basis,
  };
}

function unknown(torque: number | null, basis: string): Delivered {
  return {
    intendedTorque: torque,
    deliveredTorque: null,
    error: null,
    uncertainty: null,
    spread: NO_SPREAD,
    basis,
  };
}
