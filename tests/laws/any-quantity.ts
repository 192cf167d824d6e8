import fc from 'fast-check';
import type { Entered } from '../../core/units/entered.ts';
import { toSI, type Unit } from '../../core/units/units.ts';

const TYPICAL: Readonly<Record<string, readonly [Unit, ...Unit[]]>> = {
  length: ['mm', 'in'],
  stress: ['MPa', 'ksi'],
  pressure: ['bar', 'psi', 'MPa_pressure'],
  torque: ['N.m', 'lbf.ft'],
  area: ['mm2', 'in2'],
  angle: ['deg', 'rad'],
  expansion: ['um/m.K', 'uin/in.F'],
  stiffness: ['kN/mm', 'lbf/in'],
};

/** A quantity between two SI bounds as a person would have typed it, spread over the decades. */
export function quantity(kind: keyof typeof TYPICAL, min: number, max: number): fc.Arbitrary<Entered> {
  const units = TYPICAL[kind] ?? ['mm'];
  return fc
    .record({
      exponent: fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }),
      unit: fc.constantFrom(...units),
    })
    .map(({ exponent, unit }) => asTyped(Math.exp(exponent), unit));
}

export function asTyped(si: number, unit: Unit): Entered {
  const value = Number((si / (toSI(1, unit) || 1)).toPrecision(4));
  return { text: String(value), unit, si: toSI(value, unit) };
}

export function ratio(min: number, max: number): fc.Arbitrary<Entered> {
  return fc.double({ min, max, noNaN: true }).map((si) => ({ text: String(si), unit: 'one' as const, si }));
}

export const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null, freq: 3 });
