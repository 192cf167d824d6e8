import { torqueAtPressure } from '../calibration/reading.ts';
import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { showQuantity } from '../text/number.ts';
import { wrenchParts } from '../tools/rating.ts';
import type { Basis } from './basis.ts';
import { checkCertifiedRange, checkDriveCertificate, type PassPressure } from './check-certificates.ts';
import { checkFit } from './check-fit.ts';
import { checkHead } from './check-head.ts';
import { checkRatings } from './check-set.ts';
import { type Hydraulics, hydraulicsOf } from './hydraulics.ts';
import type { CardInput, Wrench } from './input.ts';
import { pressureUnit, torqueUnit } from './show.ts';

/** A further wrench as the only one of its set. */
interface Alone {
  readonly wrench: Wrench;
  readonly input: CardInput;
  readonly hydraulics: Hydraulics;
}

/**
 * Looks at every further wrench on the pump as at the first, and whether one pressure serves all of them.
 *
 * Equation: d = (Tmax − Tmin)/T at the true pressure p, T of the first wrench; d ≤ the site’s limit.
 * @param input input of the card
 * @param basis what the joint alone says
 * @param hydraulics first wrench of the set as it stands on the job’s first day
 * @param pressure true pressure at the mark, Pa, at least 0, or null when not known
 * @param passes passes by name with their true pressure, Pa
 * @returns findings; none when nothing stands against it, or when the set has one wrench
 * @example checkFurther(input, basis, hydraulics, 260e5, []).length // 0
 * @source agreement within the site’s own limit; each other check as for the first wrench
 */
export function checkFurther(
  input: CardInput,
  basis: Basis,
  hydraulics: Hydraulics,
  pressure: number | null,
  passes: readonly PassPressure[],
): Raised[] {
  if (input.set.further.length === 0) return [];
  const others = input.set.further.map((wrench): Alone => {
    const set = { ...input.set, ...wrench, further: [] };
    const alone = { ...input, set };
    return { wrench, input: alone, hydraulics: hydraulicsOf(alone) };
  });
  return [
    ...others.flatMap((other) => checkWrench(other, basis, pressure, passes)),
    ...agreement(input, [hydraulics, ...others.map((other) => other.hydraulics)], pressure),
  ];
}

function checkWrench(
  { wrench, input, hydraulics }: Alone,
  basis: Basis,
  pressure: number | null,
  passes: readonly PassPressure[],
): Raised[] {
  const torque =
    pressure === null || hydraulics.line === null ? null : torqueAtPressure(hydraulics.line, pressure);
  return [
    ...checkDriveCertificate(input, hydraulics),
    ...checkFit(input, basis, torque),
    ...checkHead(input, basis),
    ...checkRatings(input, wrenchParts(wrench), torque, pressure),
    ...checkCertifiedRange(input, hydraulics, passes),
  ];
}

function agreement(input: CardInput, sets: readonly Hydraulics[], pressure: number | null): Raised[] {
  const rule = input.toolRoom.rules.find((each) => each.class === 'drive unit');
  const limit = rule?.lineAgreement ?? null;
  const about = { subject: input.joint.data.tag, place: atSettings('further') };
  if (rule === undefined || limit === null) {
    return [
      raise('line_agreement_unknown', () => ({ wrenches: sets.length }), {
        ...about,
        severity: 'refusal',
        source: 'no rule of the site for drive units names a limit',
      }),
    ];
  }
  const lines = sets.flatMap(({ line }) => (line === null ? [] : [line]));
  const [first] = lines;
  // Without a line or a pressure there is nothing to compare; what is missing refuses by itself.
  if (first === undefined || pressure === null || lines.length < sets.length) return [];
  const torques = lines.map((line) => torqueAtPressure(line, pressure));
  const [least, most] = [Math.min(...torques), Math.max(...torques)];
  const difference = (most - least) / torqueAtPressure(first, pressure);
  if (difference <= limit.si * (1 + 1e-9)) return [];
  const unit = torqueUnit(input);
  return [
    raise(
      'lines_disagree',
      () => ({
        pressure: showQuantity(pressure, pressureUnit(input)),
        torques: torques.map((torque) => showQuantity(torque, unit)),
        difference: showQuantity(difference, 'percent', 2),
        limit: showQuantity(limit.si, 'percent', 2),
      }),
      {
        ...about,
        severity: 'refusal',
        source: rule.source,
        value: difference,
        limit: limit.si,
        unit: 'percent',
      },
    ),
  ];
}
