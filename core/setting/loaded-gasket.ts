import type { GasketView } from '../contract/card-views.ts';
import type { InputGap } from '../findings/outcome.ts';
import { CODE_MINIMUM_USE, codeMinimum } from '../joint/code-minimum.ts';
import { type ComponentData, checkBoltStress, type LimitCheck } from '../joint/component-checks.ts';
import { gasketStressAt } from '../joint/gasket-target.ts';
import { componentData, type JointGasket } from '../joint/gaskets.ts';
import { endForce } from '../joint/hydrostatic.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';

/** One gasket under the card's load, with everything its rows and workings are made of. */
export interface LoadedGasket {
  readonly gasket: JointGasket;
  readonly component: ComponentData;
  readonly view: GasketView;
  readonly checks: readonly LimitCheck[];
  readonly codeGaps: readonly InputGap[];
}

/**
 * Looks at one gasket under a bolt load.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param gasket gasket of the joint
 * @param load F, N, at least 0
 * @param root its stress on the root area, Pa, at least 0
 * @returns stresses, limits and what is missing of them
 * @example loadGasket(complete, basisOf(complete), gasket, 107829, 398.6e6).view.area // 0.0118 m²
 * @source ASME PCC-1-2013, Appendix O (from memory)
 */
export function loadGasket(
  { joint: { data } }: CardInput,
  { joint }: Basis,
  gasket: JointGasket,
  load: number,
  root: number,
): LoadedGasket {
  const component = componentData(data, joint, gasket);
  const count = joint.boltCount;
  const code = codeMinimum(
    gasket.contact,
    data.pressures.design.pressure?.si ?? null,
    gasket.values.factorM?.value ?? null,
    gasket.values.stressY?.value ?? null,
    count,
  );
  const kindGap = gasket.data.kind === null ? [KIND] : [];
  const minimum = gasket.data.kind === null ? null : code.value;
  const cases = component.cases.flatMap((one) => {
    if (one.pressure === null) return [];
    const force = endForce(gasket.inside, one.pressure, count).value;
    const left =
      one.retained === null
        ? null
        : gasketStressAt(component, root * one.retained, one.pressure, gasket.inside).value;
    return [
      {
        case: one.name,
        pressure: one.pressure,
        temperature: data.pressures[one.name].temperature?.si ?? null,
        retained: one.retained,
        endForce: force?.force ?? null,
        endForcePerBolt: force?.perBolt ?? null,
        residualLoad: one.retained === null ? null : load * one.retained,
        stressLeft: left,
      },
    ];
  });
  return {
    gasket,
    component,
    checks: checkBoltStress(root, component),
    codeGaps: [...kindGap, ...code.missing],
    view: {
      name: gasket.name,
      kind: gasket.data.kind,
      area: gasket.area.value,
      stress: gasketStressAt(component, root, 0, 0).value,
      cases,
      codeMinimum:
        minimum === null
          ? null
          : {
              use: CODE_MINIMUM_USE,
              contactWidth: minimum.contactWidth,
              basicWidth: minimum.basic,
              effectiveWidth: minimum.effective,
              reactionDiameter: minimum.reactionDiameter,
              endForce: minimum.endForce,
              gasketForce: minimum.gasketForce,
              Wm1: minimum.Wm1,
              Wm2: minimum.Wm2,
              larger: minimum.larger,
              perBolt: minimum.perBolt,
            },
    },
  };
}

const KIND: InputGap = {
  symbol: 'kind',
  name: 'kind of gasket for the code’s minimum',
  reason: 'missing',
  given: null,
  allowed: '',
  remedy: 'choose flat, spiral wound or ring joint',
};
