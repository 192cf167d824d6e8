import { combined, torqueBudget, type UncertaintyPart } from '../calibration/uncertainty.ts';
import type { SettingCard, Working } from '../contract/setting.ts';
import { type LoadContributor, loadBudget } from '../uncertainty/budget.ts';
import type { Basis } from './basis.ts';
import type { Dialled, Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { torqueUnit } from './show.ts';
import { number, result } from './working.ts';

type UncertaintyView = NonNullable<SettingCard['uncertainty']>;

/** Uncertainty of torque and load at the dialled pressure, with what the spread of the load is simulated from. */
export interface CardBudget {
  readonly view: UncertaintyView;
  /** Relative contributors of the load; empty while the scatter of K is not known. */
  readonly contributors: readonly LoadContributor[];
}

/**
 * Uncertainty budget of torque and load at the dialled pressure.
 *
 * Equation: u² = Σui²; (u(F)/F)² = (u(T)/T)² + (u(K)/K)².
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param basis what the joint alone says
 * @param dialled mark on the gauge with its true pressure, Pa, or null
 * @returns budget with its contributors, or null while there is nothing dialled
 * @example budgetOf(input, hydraulics, basis, null) // null
 * @source JCGM 100:2008 (GUM), 4.3, 5.1 and Annex H.3
 */
export function budgetOf(
  input: CardInput,
  hydraulics: Hydraulics,
  { friction }: Basis,
  dialled: Dialled | null,
): CardBudget | null {
  const { gauge } = input.set;
  const { line, certificate } = hydraulics;
  if (dialled === null || dialled.torque === null || dialled.pressure === null || dialled.torque <= 0)
    return null;
  if (line === null || gauge === null || certificate?.data.measured.kind !== 'pressure-torque') return null;
  const { expandedUncertainty, coverageFactor } = certificate.data.measured;
  const { accuracy, scaleMax, graduation } = gauge.data.properties;
  const parts = torqueBudget({
    line,
    pressure: dialled.pressure,
    torque: dialled.torque,
    reference:
      expandedUncertainty === null ? null : { expanded: expandedUncertainty.si, coverage: coverageFactor },
    gauge: { limit: accuracy.si * scaleMax.si, graduation: graduation.si },
  });
  const torqueRelative = combined(parts.map((part) => part.u)) / dialled.torque;
  const { scatter } = friction;
  const batch = input.joint.data.lubricant?.nutFactorBatchCv?.si ?? null;
  const contributors = scatter === null ? [] : loadContributors(parts, dialled.torque, scatter, batch);
  const whole = contributors.length === 0 ? null : loadBudget(contributors).value;
  const loadRelative = whole?.combined ?? null;
  const shares = whole?.lines.map(({ name, share, scope }) => ({ name, share, scope })) ?? [];
  const ofFriction = shares.filter(({ name }) => FRICTION.has(name));
  return {
    contributors,
    view: {
      parts,
      missing: [
        ...(expandedUncertainty === null ? ['uncertainty of the laboratory’s reference'] : []),
        ...(scatter === null ? ['scatter of the nut factor from stud to stud'] : []),
        ...(batch === null ? ['spread of the nut factor from batch to batch'] : []),
      ],
      torqueRelative,
      loadRelative,
      frictionShare:
        loadRelative === null || loadRelative === 0
          ? null
          : ofFriction.reduce((sum, { share }) => sum + share, 0),
      shares,
      simulation: null,
    },
  };
}

const SCATTER = 'Friction from stud to stud';
const BATCH = 'Friction from batch to batch';
const FRICTION: ReadonlySet<string> = new Set([SCATTER, BATCH]);

/** The tool's repeatability is drawn anew for each bolt; certificate, gauge and the mark dialled are the same for all. */
function loadContributors(
  parts: readonly UncertaintyPart[],
  torque: number,
  scatter: number,
  batch: number | null,
): LoadContributor[] {
  const ofK = (name: string, relative: number, scope: LoadContributor['scope']): LoadContributor => ({
    name,
    of: 'nut factor',
    relative,
    scope,
    basis: 'joint data',
    degreesOfFreedom: null,
  });
  return [
    ...parts.map(
      ({ name, u, basis }): LoadContributor => ({
        name,
        of: 'torque',
        relative: u / torque,
        scope: name === 'Repeatability' ? 'per bolt' : 'common',
        basis,
        degreesOfFreedom: null,
      }),
    ),
    ofK(SCATTER, scatter, 'per bolt'),
    ...(batch === null ? [] : [ofK(BATCH, batch, 'common')]),
  ];
}

/**
 * Shows how the uncertainty came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param view budget as the card shows it
 * @returns working with each contributor
 * @example uncertaintyWorking(input, basis, card.uncertainty).of // 'uncertainty'
 * @source each working names its own
 */
export function uncertaintyWorking(input: CardInput, { friction }: Basis, view: UncertaintyView): Working {
  const unit = torqueUnit(input);
  const batch = input.joint.data.lubricant?.nutFactorBatchCv?.si ?? null;
  return {
    of: 'uncertainty',
    title: 'Standard uncertainty',
    relation:
      view.loadRelative === null
        ? 'u(T)/T = √( Σ ui² ) / T; scatter of K not known, so u(F)/F is not known'
        : 'u(F)/F = √( ( u(T)/T )² + Σ ( u(K)/K )² )',
    inputs: [
      ...view.parts.map((part) => number('u', part.name, part.u, unit, 'calculated', part.basis)),
      number('u(T)/T', 'torque', view.torqueRelative, 'percent', 'calculated', 'root of the sum of squares'),
      number(
        'u(K)/K',
        'nut factor from stud to stud',
        friction.scatter,
        'percent',
        friction.assumed ? 'assumed' : 'entered',
        'joint data',
      ),
      number(
        'u(K)/K',
        'nut factor from batch to batch',
        batch,
        'percent',
        friction.assumed ? 'assumed' : 'entered',
        'joint data',
      ),
    ],
    result: result(
      'u',
      view.loadRelative === null ? 'torque' : 'load',
      view.loadRelative ?? view.torqueRelative,
      'percent',
    ),
    source: 'JCGM 100:2008 (GUM), 5.1.2, first order',
  };
}
