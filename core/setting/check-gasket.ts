import type { Raised } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import type { LimitCheck } from '../joint/component-checks.ts';
import { showQuantity } from '../text/number.ts';
import type { CardInput } from './input.ts';
import type { LoadedGasket } from './loaded-gasket.ts';
import type { StudStress } from './loads.ts';
import { stressUnit } from './show.ts';

/**
 * What stands against the load on one gasket. Unknown limits are said elsewhere; here are only those that are broken.
 *
 * @param input input of the card
 * @param loaded gasket under the card’s load
 * @param stress stresses of one stud, Pa
 * @returns findings; none when nothing stands against it
 * @example againstGasket(complete, loaded, stress).length // 0
 * @source ASME PCC-1-2013, Appendix O (from memory); limits as entered
 */
export function againstGasket(input: CardInput, loaded: LoadedGasket, stress: StudStress): Raised[] {
  return [
    ...loaded.checks.flatMap((check) => broken(input, loaded, check)),
    ...parting(input, loaded, stress),
    ...codeFloor(input, loaded, stress),
  ];
}

function about(input: CardInput, field: string, source: string) {
  return { subject: input.joint.data.tag, place: atJoint(input.joint.id, field), source };
}

function broken(input: CardInput, { gasket }: LoadedGasket, check: LimitCheck): Raised[] {
  const { value, limit } = check;
  if (check.state !== 'not met' || value === null || limit === null) return [];
  const unit = stressUnit(input);
  const facts = { gasket: gasket.name, stress: showQuantity(value, unit), limit: showQuantity(limit, unit) };
  const stands = {
    ...about(input, 'gasket', gasket.data.source || 'gasket data'),
    severity: 'refusal' as const,
    value,
    limit,
    unit,
  };
  if (check.step === 7) return [raise('gasket_stress_high', () => facts, stands)];
  if (check.step === 8) return [raise('flange_rotation_high', () => facts, stands)];
  const what = check.case === null ? check.name : `${check.name}, ${check.case} case`;
  return [raise('gasket_stress_low', () => ({ ...facts, what }), stands)];
}

/** With the retained fraction not known the whole assembly load is held against the end force: the mildest case. */
function parting(input: CardInput, { gasket, view }: LoadedGasket, stress: StudStress): Raised[] {
  return view.cases.flatMap((one) => {
    const { endForcePerBolt: endForce } = one;
    if (endForce === null) return [];
    const load = one.residualLoad ?? stress.load;
    if (load > endForce) return [];
    return [
      raise(
        'joint_parts',
        () => ({
          gasket: gasket.name,
          case: one.case,
          endForce: showQuantity(endForce, 'kN'),
          load: showQuantity(load, 'kN'),
        }),
        {
          ...about(input, 'pressures', input.joint.data.pressures.source || 'joint data'),
          severity: 'refusal',
          value: load,
          limit: endForce,
          unit: 'kN',
        },
      ),
    ];
  });
}

function codeFloor(input: CardInput, { gasket, view }: LoadedGasket, { load }: StudStress): Raised[] {
  const minimum = view.codeMinimum;
  if (minimum === null || load >= minimum.perBolt * (1 - 1e-12)) return [];
  return [
    raise(
      'below_code_minimum',
      () => ({
        gasket: gasket.name,
        load: showQuantity(load, 'kN'),
        minimum: showQuantity(minimum.perBolt, 'kN'),
        larger: minimum.larger,
      }),
      {
        ...about(input, 'gasket', 'ASME BPVC VIII-1, Appendix 2 (second-hand)'),
        severity: 'warning',
        value: load,
        limit: minimum.perBolt,
        unit: 'kN',
      },
    ),
  ];
}
