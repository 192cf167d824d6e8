import { combined, torqueBudget } from '../calibration/uncertainty.ts';
import type { SettingCard, Working } from '../contract/setting.ts';
import type { Basis } from './basis.ts';
import type { Dialled, Hydraulics } from './hydraulics.ts';
import type { CardInput } from './input.ts';
import { torqueUnit } from './show.ts';
import { number, result } from './working.ts';

type UncertaintyView = NonNullable<SettingCard['uncertainty']>;

/** Uncertainty of torque and load at the dialled pressure; null while there is nothing dialled. */
export function uncertaintyOf(
  input: CardInput,
  hydraulics: Hydraulics,
  { friction }: Basis,
  dialled: Dialled | null,
): UncertaintyView | null {
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
  const loadRelative = scatter === null ? null : combined([torqueRelative, scatter]);
  return {
    parts,
    missing: [
      ...(expandedUncertainty === null ? ['uncertainty of the laboratory’s reference'] : []),
      ...(scatter === null ? ['scatter of the nut factor from stud to stud'] : []),
    ],
    torqueRelative,
    loadRelative,
    frictionShare:
      scatter === null || loadRelative === null || loadRelative === 0 ? null : (scatter / loadRelative) ** 2,
  };
}

/** How the uncertainty came about. */
export function uncertaintyWorking(input: CardInput, { friction }: Basis, view: UncertaintyView): Working {
  const unit = torqueUnit(input);
  return {
    of: 'uncertainty',
    title: 'Standard uncertainty',
    relation:
      view.loadRelative === null
        ? 'u(T)/T = √( Σ ui² ) / T; scatter of K not known, so u(F)/F is not known'
        : 'u(F)/F = √( ( u(T)/T )² + ( u(K)/K )² )',
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
