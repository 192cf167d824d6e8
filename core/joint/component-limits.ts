import { torqueByNutFactor } from '../bolting/torque.ts';
import { compute, gapsOf, type InputGap, type Outcome, positive, within } from '../findings/outcome.ts';
import { type ComponentData, checkBoltStress, type LimitCheck } from './component-checks.ts';
import { gasketTargetStress } from './gasket-target.ts';

/** What decided the selected bolt stress. */
export type Governing =
  | 'gasket target'
  | 'largest bolt stress'
  | 'least bolt stress'
  | 'largest bolt stress by the flange';

/** One of the steps 1 to 4: what it came to and whether it changed the selection. */
export interface SelectionStep {
  readonly step: 1 | 2 | 3 | 4;
  readonly relation: string;
  /** Limit of this step, Pa on the root area; null when not known, and the step then changes nothing. */
  readonly limit: number | null;
  /** Selection after the step, Pa on the root area. */
  readonly selected: number;
  readonly changed: boolean;
}

/** Two limits that leave no room between them. */
export interface LimitConflict {
  readonly lower: 'Sb,min';
  readonly upper: 'Sb,max' | 'Sf,max';
  /** Pa on the root area. */
  readonly lowerValue: number;
  readonly upperValue: number;
}

/** A bolt stress selected between the limits of bolt, gasket and flange. */
export interface ComponentSelection {
  /** Pa on the root area; null while inputs are missing or limits are in conflict. */
  readonly selected: number | null;
  readonly governing: Governing | null;
  /** Bolt stress the gasket's target asks for, Pa on the root area. */
  readonly asked: number | null;
  /** False: gasket target not reached. */
  readonly targetReached: boolean | null;
  readonly steps: readonly SelectionStep[];
  readonly checks: readonly LimitCheck[];
  readonly conflicts: readonly LimitConflict[];
  /** Inputs without which there is no selection. */
  readonly missing: readonly InputGap[];
  /** Limits the selection could not look at. */
  readonly unknownLimits: readonly InputGap[];
}

/** Relative room for rounding when two stresses that are equal by their definition are compared. */
const ROUNDING = 1e-12;

/**
 * Selects the assembly bolt stress by the component approach, then checks it.
 *
 * Equation: 1. σ = SgT·Ag/(nb·Ab); 2. σ = min(σ, Sb,max); 3. σ = max(σ, Sb,min); 4. σ = min(σ, Sf,max); checks 5 to 8
 * as in `checkBoltStress`. All stresses on the root area.
 * @param data joint, gasket, limits and pressure cases; null members are not known
 * @returns selection with the governing limit named; refused (null) when Sb,min lies above Sb,max or Sf,max
 * @example selectBoltStress(component).governing // 'gasket target'
 * @source ASME PCC-1-2013, Appendix O, steps 1 to 8 (from memory)
 */
export function selectBoltStress(data: ComponentData): ComponentSelection {
  const asked = gasketTargetStress(data, data.gasketTarget);
  const { known, gaps } = knownLimits(data);
  const conflicts = conflictsOf(known);
  const nothing = {
    selected: null,
    governing: null,
    asked: asked.value,
    targetReached: null,
    steps: [],
    checks: [],
    conflicts,
    unknownLimits: gaps.filter((gap) => gap.reason === 'missing'),
  };
  const wrong = gaps.filter((gap) => gap.reason !== 'missing');
  // A limit that can't be right is not the same as one that nobody knows: nothing is selected beside it.
  if (asked.value === null || wrong.length > 0) return { ...nothing, missing: [...asked.missing, ...wrong] };
  if (conflicts.length > 0) return { ...nothing, missing: [] };

  const { steps, governing, selected } = runSteps(asked.value, known);
  return {
    ...nothing,
    selected,
    governing,
    targetReached: selected >= asked.value * (1 - ROUNDING),
    steps,
    checks: checkBoltStress(selected, data),
    missing: [],
  };
}

interface KnownLimits {
  readonly boltMax: number | null;
  readonly boltMin: number | null;
  readonly flangeMax: number | null;
}

function knownLimits(data: ComponentData): { known: KnownLimits; gaps: InputGap[] } {
  const inputs = [
    positive(
      'Sb,max',
      'largest bolt stress, Pa',
      data.boltStressMax,
      'enter the site limit for this bolting',
    ),
    within(
      'Sb,min',
      'least bolt stress, Pa',
      data.boltStressMin,
      [0, 5e9],
      'enter the site limit for this joint',
    ),
    positive(
      'Sf,max',
      'largest bolt stress by the flange, Pa',
      data.flangeStressMax,
      'have the flange calculated, or take the limit from a table the site accepts',
    ),
  ];
  return {
    known: { boltMax: data.boltStressMax, boltMin: data.boltStressMin, flangeMax: data.flangeStressMax },
    gaps: gapsOf(inputs),
  };
}

function conflictsOf({ boltMax, boltMin, flangeMax }: KnownLimits): LimitConflict[] {
  const upper = [
    ['Sb,max', boltMax],
    ['Sf,max', flangeMax],
  ] as const;
  return upper.flatMap(([name, value]) =>
    boltMin !== null && value !== null && boltMin > value
      ? [{ lower: 'Sb,min' as const, upper: name, lowerValue: boltMin, upperValue: value }]
      : [],
  );
}

function runSteps(asked: number, { boltMax, boltMin, flangeMax }: KnownLimits) {
  let selected = asked;
  let governing: Governing = 'gasket target';
  const steps: SelectionStep[] = [
    { step: 1, relation: 'σb = SgT·Ag/(nb·Ab)', limit: null, selected, changed: false },
  ];
  const bound = (
    step: 2 | 3 | 4,
    relation: string,
    limit: number | null,
    moves: (limit: number) => boolean,
    name: Governing,
  ) => {
    const changed = limit !== null && moves(limit);
    if (changed) {
      selected = limit;
      governing = name;
    }
    steps.push({ step, relation, limit, selected, changed });
  };
  bound(2, 'σb = min(σb, Sb,max)', boltMax, (limit) => selected > limit, 'largest bolt stress');
  bound(3, 'σb = max(σb, Sb,min)', boltMin, (limit) => selected < limit, 'least bolt stress');
  bound(
    4,
    'σb = min(σb, Sf,max)',
    flangeMax,
    (limit) => selected > limit,
    'largest bolt stress by the flange',
  );
  return { steps, governing, selected };
}

/**
 * Torque of a selected bolt stress.
 *
 * Equation: T = σb·K·Ab·d.
 * @param boltStress σb on the root area, Pa, at least 0
 * @param nutFactor K, 1, above 0
 * @param boltRootArea Ab, m², above 0
 * @param diameter nominal diameter D, m, above 0
 * @returns T, N·m
 * @example assemblyTorque(345e6, 0.2, 3.555e-4, 0.0254).value // 623 N·m
 * @source ASME PCC-1-2013, Appendix O, step 9 (from memory)
 */
export function assemblyTorque(
  boltStress: number | null,
  nutFactor: number | null,
  boltRootArea: number | null,
  diameter: number | null,
): Outcome<number> {
  return compute(
    {
      stress: within('σb', 'bolt stress on the root area, Pa', boltStress, [0, 5e9], 'select a bolt stress'),
      nutFactor: positive(
        'K',
        'nut factor',
        nutFactor,
        'measure K for this lubricant, size and stud material',
      ),
      area: positive('Ab', 'root area of one bolt, m²', boltRootArea, 'choose the thread of the stud'),
      diameter: positive('d', 'nominal diameter, m', diameter, 'choose the thread of the stud'),
    },
    (v) => torqueByNutFactor(v.nutFactor, v.stress * v.area, v.diameter),
  );
}
