import type { JointData } from '../contract/joint.ts';
import type { InputGap } from '../findings/outcome.ts';
import { type ComponentSelection, selectBoltStress } from './component-limits.ts';
import { componentData, type JointGasket } from './gaskets.ts';
import type { ResolvedJoint } from './resolve.ts';

/** Bolt stress by the gasket's target, with the gasket that asks for most. */
export interface TargetSelection extends ComponentSelection {
  readonly gasket: string;
}

const NO_GASKET: InputGap = {
  symbol: 'SgT',
  name: 'gasket',
  reason: 'missing',
  given: null,
  allowed: 'a gasket with its data',
  remedy: 'enter the gasket and its target stress from the data sheet',
};

const SHARED: InputGap = {
  symbol: 'nb·Ab',
  name: 'bolting that loads the gasket',
  reason: 'no solution',
  given: null,
  allowed: 'one bolt set',
  remedy: 'several bolt sets load this gasket together: enter a bolt load for each set from its calculation',
};

/**
 * Bolt stress of a target that starts from the gasket: its target stress alone, or held between the limits of bolt and
 * flange. Gaskets in series carry the same load; the one that asks for most decides.
 *
 * Equation: steps 1, or 1 to 4, of `selectBoltStress` for the gasket with the largest SgT·Ag.
 * @param data joint as stored
 * @param joint the same joint resolved
 * @param gaskets its gaskets
 * @param mode target mode
 * @returns selection with the gasket that decided; null `selected` with what is missing
 * @example selectForTarget(complete.joint.data, joint, [gasket], 'component limits').governing // 'gasket target'
 * @source ASME PCC-1-2013, Appendix O (from memory); equilibrium of members in series
 */
export function selectForTarget(
  data: JointData,
  joint: ResolvedJoint,
  gaskets: readonly JointGasket[],
  mode: 'gasket stress' | 'component limits',
): TargetSelection {
  const [first] = gaskets;
  if (first === undefined) return nothing(NO_GASKET);
  if (data.boltSets.length > 0) return nothing(SHARED);
  const selections = gaskets.map((gasket) => select(data, joint, gasket, mode));
  const [head = nothing(NO_GASKET), ...rest] = selections;
  const missing = selections.flatMap((one) => one.missing);
  if (missing.length > 0) return { ...head, selected: null, governing: null, targetReached: null, missing };
  return rest.reduce((most, one) => ((one.asked ?? 0) > (most.asked ?? 0) ? one : most), head);
}

function select(
  data: JointData,
  joint: ResolvedJoint,
  gasket: JointGasket,
  mode: 'gasket stress' | 'component limits',
): TargetSelection {
  const component = componentData(data, joint, gasket);
  const bounds = { boltStressMax: null, boltStressMin: null, flangeStressMax: null };
  const selection = selectBoltStress(mode === 'gasket stress' ? { ...component, ...bounds } : component);
  // The area's own gaps say which diameter to measure; "gasket area" alone would not.
  const own = selection.missing.filter(({ symbol }) => symbol !== 'Ag' || gasket.area.value !== null);
  const missing = selection.selected === null ? [...gasket.area.missing, ...own] : selection.missing;
  return { ...selection, missing, gasket: gasket.name };
}

function nothing(gap: InputGap): TargetSelection {
  return {
    gasket: '',
    selected: null,
    governing: null,
    asked: null,
    targetReached: null,
    steps: [],
    checks: [],
    conflicts: [],
    missing: [gap],
    unknownLimits: [],
  };
}
