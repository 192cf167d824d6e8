import type { Unit } from '../units/units.ts';
import type { CardInput } from './input.ts';

/** Unit a length is best read in: the one it was entered in when that is a length people measure with. */
export function lengthUnit(entered: Unit | undefined): Unit {
  return entered === 'in' ? 'in' : 'mm';
}

/** Unit of the torques on a card: what the drive unit's rating is entered in. */
export function torqueUnit({ set }: Pick<CardInput, 'set'>): Unit {
  return set.drive?.data.properties.ratedTorque.unit ?? 'N.m';
}

/** Unit of the pressures on a card: what is printed on the gauge, else the drive unit's. */
export function pressureUnit({ set }: Pick<CardInput, 'set'>): Unit {
  return set.gauge?.data.properties.scaleMax.unit ?? set.drive?.data.properties.ratedPressure.unit ?? 'bar';
}

/** Unit of the stresses on a card: what the joint's target or limits are entered in. */
export function stressUnit({ joint: { data } }: Pick<CardInput, 'joint'>): Unit {
  if (data.target?.mode === 'bolt stress') return data.target.stress.unit;
  return data.limits.boltStressMax?.unit ?? data.limits.boltStressMin?.unit ?? 'MPa';
}
