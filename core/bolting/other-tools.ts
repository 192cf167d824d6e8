import { compute, gapsOf, noSolution, type Outcome, positive, within } from '../findings/outcome.ts';
import { axialStress } from './stress.ts';
import type { Thread } from './thread.ts';

/** Tools without a pump: what is set on them is a torque or a numbered step, never a pressure. */
export type ToolKind = 'hand torque wrench' | 'battery torque tool' | 'pneumatic torque tool';

/** How a tool is set. */
export type ToolScale =
  | {
      readonly by: 'torque';
      /** Least and most torque of the scale, N·m. */
      readonly least: number | null;
      readonly most: number | null;
      /** Graduation or display step, N·m. */
      readonly graduation: number | null;
    }
  | {
      readonly by: 'step';
      /** Steps of the tool with the torque its certificate gives for each, N·m. */
      readonly steps: readonly { readonly label: string; readonly torque: number }[];
    };

/** N·m: no wrench sets less or more, and beyond it a quotient may leave the range of numbers. */
const TORQUE_RANGE = [0.001, 1e7] as const;

/** What to set, and the torque it gives. */
export interface ToolSetting {
  readonly tool: ToolKind;
  /** Torque to set, N·m, or the label of the step. */
  readonly set:
    | { readonly by: 'torque'; readonly torque: number }
    | { readonly by: 'step'; readonly label: string };
  /** Torque the setting gives, N·m. */
  readonly torque: number;
  /** (torque − wanted)/wanted */
  readonly deviation: number;
  readonly basis: string;
}

/**
 * Setting of a hand, battery or pneumatic tool for a torque.
 *
 * Equation: by torque: nearest graduation, the one below when the nearest lies above the ceiling or the scale; by step:
 * the step whose torque lies nearest and not above the ceiling.
 * @param tool which of the three
 * @param scale torque scale or steps
 * @param wanted torque T, N·m, above 0
 * @param ceiling torque never to be exceeded, N·m, above 0; null when no limit is known
 * @returns what to set and what it gives; no solution outside the scale
 * @example otherToolSetting('hand torque wrench', { by: 'torque', least: 40, most: 200, graduation: 5 }, 123,
 * null).value?.torque // 125
 * @source rounding rule of this program; ISO 6789-1 for the use of a hand wrench within its scale (from memory)
 */
export function otherToolSetting(
  tool: ToolKind,
  scale: ToolScale,
  wanted: number | null,
  ceiling: number | null,
): Outcome<ToolSetting> {
  const inputs = [
    within('T', 'torque wanted, N·m', wanted, TORQUE_RANGE, 'choose a target and friction'),
    ...(ceiling === null
      ? []
      : [positive('Tmax', 'torque not to be exceeded, N·m', ceiling, 'check the limit')]),
  ];
  const gaps = gapsOf(inputs);
  if (wanted === null || gaps.length > 0) return { value: null, missing: gaps };
  const limit = ceiling ?? Number.POSITIVE_INFINITY;
  if (wanted > limit) {
    return noSolution(
      'T',
      'setting of the tool',
      `${wanted} N·m lies above the limit of ${limit} N·m: check both`,
    );
  }
  return scale.by === 'torque'
    ? byTorque(tool, scale, wanted, limit)
    : byStep(tool, scale.steps, wanted, limit);
}

function byTorque(
  tool: ToolKind,
  scale: Extract<ToolScale, { by: 'torque' }>,
  wanted: number,
  limit: number,
): Outcome<ToolSetting> {
  const onScale = compute(
    {
      least: within('Tleast', 'least torque of the scale, N·m', scale.least, [0, 1e6], 'read the scale'),
      most: positive('Tmost', 'most torque of the scale, N·m', scale.most, 'read the scale'),
      graduation: positive('ΔT', 'graduation of the scale, N·m', scale.graduation, 'read the scale'),
    },
    ({ least, most, graduation }) => {
      // The small shift keeps 0.3/0.1 from falling to 2 in binary arithmetic.
      const highest = Math.floor(Math.min(most, limit) / graduation + 1e-9);
      const torque = Math.min(Math.round(wanted / graduation), highest) * graduation;
      return { torque, fits: wanted >= least && wanted <= most && torque >= least && torque > 0 };
    },
  );
  if (onScale.value === null) return onScale;
  if (!onScale.value.fits) return outside(wanted);
  const { torque } = onScale.value;
  return done(tool, { by: 'torque', torque }, torque, wanted, 'torque set on the tool; nearest graduation');
}

function byStep(
  tool: ToolKind,
  steps: readonly { readonly label: string; readonly torque: number }[],
  wanted: number,
  limit: number,
): Outcome<ToolSetting> {
  const [least, most] = TORQUE_RANGE;
  const usable = steps.filter(({ torque }) => torque >= least && torque <= Math.min(most, limit));
  const [first, ...rest] = usable;
  if (first === undefined) return outside(wanted);
  const near = rest.reduce(
    (best, step) => (Math.abs(step.torque - wanted) < Math.abs(best.torque - wanted) ? step : best),
    first,
  );
  return done(
    tool,
    { by: 'step', label: near.label },
    near.torque,
    wanted,
    'step of the tool by its certificate',
  );
}

function done(
  tool: ToolKind,
  set: ToolSetting['set'],
  torque: number,
  wanted: number,
  basis: string,
): Outcome<ToolSetting> {
  return { value: { tool, set, torque, deviation: (torque - wanted) / wanted, basis }, missing: [] };
}

function outside(wanted: number): Outcome<never> {
  return noSolution('T', 'setting of the tool', `${wanted} N·m can't be set on this tool: choose another`);
}

/** A joint that was stretched by a tensioner. It has a load and no torque. */
export interface TensionedLoad {
  readonly load: number;
  /** Pa, on the tensile area. */
  readonly stressTensile: number;
  /** Pa, on the root area. */
  readonly stressRoot: number;
  readonly torque: null;
  readonly torqueReason: 'tensioned: recorded with its load; no torque belongs to it';
}

/**
 * What is recorded of a tensioned stud.
 *
 * Equation: σt = F/As; σr = F/Ar.
 * @param load residual load F by the tensioning procedure, N, above 0
 * @param thread thread of the stud
 * @returns load and both stresses, and why there is no torque
 * @example tensionedLoad(108000, unifiedThread(0.875, 9)).value?.torque // null
 * @source definition of stress
 */
export function tensionedLoad(load: number | null, thread: Thread): Outcome<TensionedLoad> {
  return compute(
    { load: positive('F', 'residual bolt load, N', load, 'take it from the tensioning record') },
    (v) => ({
      load: v.load,
      stressTensile: axialStress(v.load, thread.tensileArea),
      stressRoot: axialStress(v.load, thread.rootArea),
      torque: null,
      torqueReason: 'tensioned: recorded with its load; no torque belongs to it' as const,
    }),
  );
}
