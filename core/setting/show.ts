import type { Unit } from '../units/units.ts';
import type { CardInput } from './input.ts';

/**
 * Chooses the unit a length is best read in: the one it was entered in when that is a length people measure with.
 *
 * @param entered unit it was entered in, if any
 * @returns mm or in
 * @example lengthUnit('in') // 'in'
 * @source rule of this program
 */
export function lengthUnit(entered: Unit | undefined): Unit {
  return entered === 'in' ? 'in' : 'mm';
}

/**
 * Chooses the unit of the torques on a card: what the drive unit’s rating is entered in.
 *
 * @param input set
 * @returns unit of torque
 * @example torqueUnit(input) // 'N.m'
 * @source rule of this program
 */
export function torqueUnit({ set }: Pick<CardInput, 'set'>): Unit {
  return set.drive?.data.properties.ratedTorque.unit ?? 'N.m';
}

/**
 * Chooses the unit of the pressures on a card: what is printed on the gauge, else the drive unit’s.
 *
 * @param input set
 * @returns unit of pressure
 * @example pressureUnit(input) // 'bar'
 * @source rule of this program
 */
export function pressureUnit({ set }: Pick<CardInput, 'set'>): Unit {
  return set.gauge?.data.properties.scaleMax.unit ?? set.drive?.data.properties.ratedPressure.unit ?? 'bar';
}

/**
 * Chooses the unit of the stresses on a card: what the joint’s target or limits are entered in.
 *
 * @param input joint
 * @returns unit of stress
 * @example stressUnit(complete) // 'MPa'
 * @source rule of this program
 */
export function stressUnit({ joint: { data } }: Pick<CardInput, 'joint'>): Unit {
  if (data.target?.mode === 'bolt stress') return data.target.stress.unit;
  return data.limits.boltStressMax?.unit ?? data.limits.boltStressMin?.unit ?? 'MPa';
}
