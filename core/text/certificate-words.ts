import type { CertificateAnalysis } from '../contract/certificate-view.ts';
import { fromSI, UNITS, type Unit } from '../units/units.ts';
import { showNumber } from './number.ts';

interface Stated {
  readonly analysis: Pick<CertificateAnalysis, 'asLeft' | 'asFound'>;
  /** Whether the tool was adjusted, so that points as found stand beside those as left. */
  readonly adjusted: boolean;
  /** Unit on the certificate of what was set: pressure, or the torque of a hand torque wrench. */
  readonly setIn: Unit;
}

type Verdict = CertificateAnalysis['asLeft'];

const VERDICTS: Readonly<Record<NonNullable<Verdict>['verdict'], string>> = {
  accepted: 'keeps its limit',
  rejected: 'breaks its limit',
  'not sure': 'lies too near its limit to say',
  'not known': 'can not be held against its limit',
};

/**
 * Says in one sentence what a certificate found, against its own limit and decision rule.
 *
 * @param stated verdicts of the analysis, with the unit they are said in
 * @returns one sentence; without a limit it says that none was stated
 * @example certificateFinding({ analysis: { asLeft: { verdict: 'rejected', worst: -0.08, at: 6e7 }, asFound: null }, adjusted: false, setIn: 'bar' })
 * // 'It breaks its limit: largest error −8 % at 600 bar.'
 * @source wording of this program; verdicts as in `decideCertificate`
 */
export function certificateFinding({ analysis, adjusted, setIn }: Stated): string {
  const { asFound, asLeft } = analysis;
  if (asLeft === null && asFound === null) {
    return 'No limit is entered with it, so nothing is said about keeping one.';
  }
  if (!adjusted) return `It ${verdictWords(asLeft, setIn)}.`;
  return `As found it ${verdictWords(asFound, setIn)}; as left it ${verdictWords(asLeft, setIn)}.`;
}

function verdictWords(verdict: Verdict, setIn: Unit): string {
  if (verdict === null) return 'was held against no limit';
  const { worst, at } = verdict;
  if (worst === null) return VERDICTS[verdict.verdict];
  const where = at === null ? '' : ` at ${inUnit(at, setIn)}`;
  return `${VERDICTS[verdict.verdict]}: largest error ${percent(worst)}${where}`;
}

/**
 * Says how far torque at rising and at falling pressure lie apart.
 *
 * @param found largest difference, N·m, with its share and its pressure in Pa; null without both directions
 * @param pressure unit of pressure
 * @param torque unit of torque
 * @returns one sentence
 * @example hysteresisWords({ largest: 24, relative: 0.02, pressure: 3e7 }, 'bar', 'N.m')
 * // 'Rising and falling pressure differ most at 300 bar, by 24 N·m (2 %).'
 * @source wording of this program
 */
export function hysteresisWords(
  found: CertificateAnalysis['hysteresis'],
  pressure: Unit,
  torque: Unit,
): string {
  if (found === null) return 'Not known: it takes points with rising and with falling pressure.';
  const { largest, relative } = found;
  return `Rising and falling pressure differ most at ${inUnit(found.pressure, pressure)}, by ${inUnit(largest, torque)} (${percent(relative)}).`;
}

/**
 * Says which point lies farthest from the line through all the others, and whether that is more than scatter.
 *
 * @param found farthest point; null where there are too few points
 * @param pressure unit of pressure
 * @param torque unit of torque
 * @returns one sentence
 * @example leaveOneOutWords({ point: 3, pressure: 3e7, residual: -12, studentised: -2.1, critical: 3.4, outlying: false }, 'bar', 'N.m')
 * // 'Point 4 (300 bar) lies farthest from the line through the others, by −12 N·m: within the scatter of the rest (2.1 against 3.4).'
 * @source wording of this program; test as in `leaveOneOut`
 */
export function leaveOneOutWords(
  found: CertificateAnalysis['leaveOneOut'],
  pressure: Unit,
  torque: Unit,
): string {
  if (found === null) return 'Not known: it takes at least four points with some scatter.';
  const { point, residual, studentised, critical, outlying } = found;
  const meaning = outlying ? 'more than the scatter of the rest explains' : 'within the scatter of the rest';
  return `Point ${point + 1} (${inUnit(found.pressure, pressure)}) lies farthest from the line through the others, by ${inUnit(residual, torque)}: ${meaning} (${showNumber(Math.abs(studentised), 3)} against ${showNumber(critical, 3)}).`;
}

const inUnit = (si: number, unit: Unit) => `${showNumber(fromSI(si, unit), 4)} ${UNITS[unit].label}`;
const percent = (share: number) => `${showNumber(100 * share, 2)} %`;
