import { checkBoltStress, type LimitCheck } from '../joint/component-checks.ts';
import { gasketStressAt } from '../joint/gasket-target.ts';
import type { JointGasket } from '../joint/gaskets.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import { type LoadedGasket, loadGasket } from './loaded-gasket.ts';
import { loadOfSets } from './set-shares.ts';

/** Relations of the gasket for the set of the card while the others hold Wo. */
const RELATIONS: Readonly<Record<Exclude<LimitCheck['step'], 8>, string>> = {
  5: 'σb ≥ (Sg,minS·Ag − Wo)/(nb·Ab)',
  6: 'σb ≥ ((Sg,minO·Ag + (π/4)·Pmax·Gid²)/φg − Wo)/(nb·Ab)',
  7: 'σb ≤ (Sg,max·Ag − Wo)/(nb·Ab)',
};

/**
 * Looks at one gasket that several bolt sets load together, the other sets at their targets. Stresses and states are
 * those of the sum; limits are what is left of them for the set of the card.
 *
 * Equation: W = nb·F + Wo; SG = W/Ag; limit of this set σb = (Wlimit − Wo)/(nb·Ab), at least 0.
 * @param input input of the card
 * @param basis what the joint alone says, with the other sets
 * @param gasket gasket of the joint
 * @param load F of one bolt of this set, N, at least 0
 * @param root its stress on the root area, Pa, at least 0
 * @returns stresses, limits and what is missing of them; as by `loadGasket` for a single set
 * @example loadShared(complete, basisOf(complete), gasket, 107829, 398.6e6).view.area // 0.0118 m²
 * @source equilibrium; ASME PCC-1-2013, Appendix O (from memory)
 */
export function loadShared(
  input: CardInput,
  basis: Basis,
  gasket: JointGasket,
  load: number,
  root: number,
): LoadedGasket {
  const alone = loadGasket(input, basis, gasket, load, root);
  const count = basis.joint.boltCount;
  const others = loadOfSets(basis.others);
  const { component, view } = alone;
  const { boltRootArea, gasketInside } = component;
  if (count === null || boltRootArea === null || others === null || basis.others.length === 0) return alone;
  const total = count * load + others;
  // One bolt of one square metre stands for all sets: its stress in Pa is their load in N.
  const whole = { ...component, boltCount: 1, boltRootArea: 1 };
  const leftFor = (force: number) => Math.max(0, force - others) / count;
  const bySum = checkBoltStress(total, whole);
  return {
    ...alone,
    checks: alone.checks.map((own, index) => {
      const sum = bySum[index];
      // The flange's rotation hangs on the stress of the bolts that its limit is given for.
      if (own.step === 8 || sum === undefined) return own;
      const limit = sum.limit === null ? null : leftFor(sum.limit) / boltRootArea;
      return { ...own, limit, state: sum.state, missing: sum.missing, relation: RELATIONS[own.step] };
    }),
    view: {
      ...view,
      stress: gasketStressAt(whole, total, 0, 0).value,
      cases: view.cases.map((one) => ({
        ...one,
        endForcePerBolt:
          one.endForce === null ? null : Math.max(0, one.endForce - others * (one.retained ?? 1)) / count,
        stressLeft:
          one.retained === null
            ? null
            : gasketStressAt(whole, total * one.retained, one.pressure, gasketInside).value,
      })),
      codeMinimum:
        view.codeMinimum === null
          ? null
          : { ...view.codeMinimum, perBolt: leftFor(view.codeMinimum.perBolt * count) },
    },
  };
}
