import type { ScatterData, ScatterView, SimulatedPlan } from '../contract/scatter.ts';
import type { PassPlan } from '../sequence/plans.ts';
import { starOrder } from '../sequence/star.ts';
import type { RingJoint } from './bolts.ts';
import { evenPlan } from './even.ts';
import { fitGasket, type MeasuredLoads } from './fit.ts';
import type { ScatterInputs } from './inputs.ts';
import { planSteps } from './plan-steps.ts';
import { passesUntilQuiet } from './quiet.ts';
import { evenness, type Simulation, simulate, type TighteningStep } from './simulate.ts';
import {
  evenWords,
  fitWords,
  MODEL_CAVEAT,
  planWords,
  sensitivityWords,
  simulationFinding,
} from './words.ts';

type Simulated = NonNullable<SimulatedPlan['result']>;

/**
 * Loads of a joint's bolts under one or two pass plans, with everything asked for beside them. Without all of its inputs
 * the model is not run and says which are missing.
 *
 * Equation: as of `simulate`.
 * @param tag tag of the joint
 * @param inputs what the model is run with
 * @param plans plans to compare, with their ids
 * @param data what else was asked for
 * @returns steps with the load in every bolt, evenness, peak against limit, and words
 * @example scatterView('J', { joint: null, values: [], missing: ['Width of the gasket'], target: null, limit: null, scatter: null, tolerance: 0.02 }, [], scatterData).plans.length // 0
 * @source ring model of `simulate`
 */
export function scatterView(
  tag: string,
  inputs: ScatterInputs,
  plans: readonly PassPlan[],
  data: ScatterData,
): ScatterView {
  const { joint, values, missing, target, limit } = inputs;
  const plain = { tag, caveat: MODEL_CAVEAT, inputs: [...values], missing: [...missing], target, limit };
  if (joint === null || target === null) {
    return {
      ...plain,
      finding: simulationFinding([], missing),
      plans: [],
      even: null,
      sensitivity: [],
      sensitivityWords: null,
      fit: null,
      fitWhy: data.measured.length === 0 ? null : 'The model can’t be run yet.',
    };
  }
  const run = (of: RingJoint) =>
    plans.map((plan) => {
      const steps = planSteps(plan, of.boltCount, target);
      return { plan, steps, simulation: steps === null ? null : simulate(of, steps) };
    });
  const simulated = run(joint).map(({ plan, steps, simulation }): SimulatedPlan => {
    const result = simulation === null ? null : simulatedOf(simulation, inputs);
    const quiet = steps === null ? null : passesUntilQuiet(joint, steps, target, inputs.tolerance).passes;
    return {
      planId: plan.id,
      name: plan.name,
      result,
      passesUntilQuiet: quiet,
      words: planWords(result, quiet),
    };
  });
  const sensitivity = data.sensitivity
    .toSorted((one, other) => one - other)
    .map((factor) => {
      const foundation = joint.gasket.foundation * factor;
      return {
        factor,
        gasketStiffness: foundation,
        plans: run({ ...joint, gasket: { ...joint.gasket, foundation } }).map(({ plan, simulation }) => ({
          planId: plan.id,
          evenness: simulation === null ? null : evenness(simulation.loads),
        })),
      };
    });
  return {
    ...plain,
    finding: simulationFinding(simulated, []),
    plans: simulated,
    even: data.even === null ? null : evenOf(joint, inputs, target, data.even.trips),
    sensitivity,
    sensitivityWords: sensitivityWords(sensitivity, simulated),
    ...fitOf(joint, planStepsOf(plans[0], joint, target), data),
  };
}

function simulatedOf(
  { results, loads, peaks }: Simulation,
  { limit, scatter }: Pick<ScatterInputs, 'limit' | 'scatter'>,
): Simulated {
  const highest = peaks
    .map(({ load, step }, index) => ({ bolt: index + 1, load, step }))
    .reduce((most, one) => (one.load > most.load ? one : most), {
      bolt: 1,
      load: 0,
      step: null as number | null,
    });
  const peak =
    highest.step === null ? null : { bolt: highest.bolt, load: highest.load, step: highest.step + 1 };
  const count = Math.max(0, ...results.map(({ step }) => step.pass + 1));
  return {
    steps: results.map(({ step, loads: after, turned }) => ({
      pass: step.pass + 1,
      bolts: [...step.bolts],
      set: step.load,
      turned,
      loads: [...after],
    })),
    loads: [...loads],
    evenness: evenness(loads),
    passes: Array.from({ length: count }, (_, pass) => {
      const last = results.findLast(({ step }) => step.pass === pass);
      return { pass: pass + 1, set: last?.step.load ?? 0, evenness: evenness(last?.loads ?? loads) };
    }),
    peak,
    overLimit: standingOf(peak?.load ?? 0, limit, scatter),
  };
}

function standingOf(peak: number, limit: number | null, scatter: number | null): Simulated['overLimit'] {
  if (limit === null) return 'not known';
  if (peak > limit) return 'yes';
  if (scatter === null) return 'not known';
  return peak * (1 + scatter) > limit ? 'with scatter' : 'no';
}

function evenOf(joint: RingJoint, inputs: ScatterInputs, target: number, trips: number): ScatterView['even'] {
  const order = starOrder(joint.boltCount)?.groups.flat();
  if (order === undefined) return null;
  const { limit, tolerance } = inputs;
  // Without a limit nothing holds a load back on the way.
  const most = Math.max(target, limit ?? Number.MAX_VALUE);
  const plan = evenPlan(joint, order, target, most, { trips, tolerance });
  const result = simulatedOf(plan.simulation, inputs);
  const { overLimit, peak } = result;
  return {
    // "Not known" is not reached: nothing says that a bolt stands what it carries on the way.
    reached: plan.reached && overLimit === 'no',
    deviation: plan.deviation,
    result,
    words: evenWords(plan, tolerance, { target, limit, overLimit, peak }),
  };
}

const planStepsOf = (plan: PassPlan | undefined, joint: RingJoint, target: number) =>
  plan === undefined ? null : planSteps(plan, joint.boltCount, target);

/** Above this many bolts the search for a stiffness keeps others waiting for too long. */
const MOST_FITTED = 120;

function fitOf(
  joint: RingJoint,
  steps: readonly TighteningStep[] | null,
  { measured }: ScatterData,
): Pick<ScatterView, 'fit' | 'fitWhy'> {
  if (measured.length === 0) return { fit: null, fitWhy: null };
  if (steps === null) return { fit: null, fitWhy: 'The first plan has no order for this number of bolts.' };
  if (joint.boltCount > MOST_FITTED) {
    return { fit: null, fitWhy: `Loads are fitted for joints of up to ${MOST_FITTED} bolts.` };
  }
  const fitted = fitGasket(
    joint,
    steps,
    measured.flatMap(({ afterPass, loads }) => measuredAt(joint, steps, afterPass, loads)),
  );
  if (fitted === null)
    return { fit: null, fitWhy: 'A stiffness can’t be fitted to fewer than four measured loads.' };
  const { foundation, interval, open, residual, measurements } = fitted;
  const fit = {
    gasketStiffness: foundation,
    low: interval[0],
    high: interval[1],
    openLow: open[0],
    openHigh: open[1],
    residual,
    measurements,
  };
  return { fit: { ...fit, words: fitWords(fit) }, fitWhy: null };
}

function measuredAt(
  { boltCount }: RingJoint,
  steps: readonly TighteningStep[],
  afterPass: number,
  loads: ScatterData['measured'][number]['loads'],
): MeasuredLoads[] {
  const afterStep = steps.findLastIndex(({ pass }) => pass === afterPass - 1);
  if (afterStep < 0) return [];
  const byBolt = new Map(loads.map(({ bolt, load }) => [bolt, load.si]));
  return [
    { afterStep, loads: Array.from({ length: boltCount }, (_, index) => byBolt.get(index + 1) ?? null) },
  ];
}
