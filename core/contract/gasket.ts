import * as z from 'zod';
import { entered, optionalText, text } from './values.ts';

const length = (min: number, max: number) => entered('length', { min, max }).nullable().default(null);
const stress = entered('stress', { min: 0, max: 5e9 }).nullable().default(null);
const fraction = entered('ratio', { min: 0, max: 1 }).nullable().default(null);

/** How the design code reads the contact width. */
export const gasketKind = z.enum(['flat', 'spiral wound', 'ring joint']);

/** A gasket with what its data sheet says; null is not known, and nothing is put in its place. */
export const gasketData = z.strictObject({
  type: text(120),
  thickness: entered('length', { min: 0.0001, max: 0.2 }).nullable(),
  kind: gasketKind.nullable().default(null),
  /** Sealing element, not the centring ring. */
  contactInside: length(0.001, 20),
  contactOutside: length(0.001, 20),
  /** Ring joint: pitch diameter P and width A of the ring. */
  pitchDiameter: length(0.001, 20),
  ringWidth: length(0.001, 1),
  /** All pass-partition bars together, and the part of it the site counts. */
  partitionArea: entered('area', { min: 0, max: 10 }).nullable().default(null),
  partitionShare: fraction,
  /** Type and material as the code's table of m and y names it; blank m and y are taken from there. */
  codeType: text(120).nullable().default(null),
  /** m of the design code. */
  factorM: entered('ratio', { min: 0, max: 20 }).nullable().default(null),
  /** y of the design code. */
  stressY: stress,
  /** Sg,minS */
  seatingStress: stress,
  /** Sg,minO */
  operatingStress: stress,
  /** Sg,max */
  stressMax: stress,
  /** SgT */
  targetStress: stress,
  /** φg: part of the assembly stress that is left in operation, and at the pressure test. */
  retainedOperating: fraction,
  retainedTest: fraction,
  /** θg,max */
  rotationMax: entered('angle', { min: 0, max: 1 }).nullable().default(null),
  /** Mean coefficient of expansion through the thickness. */
  expansion: entered('expansion', { min: -1e-4, max: 1e-3 }).nullable().default(null),
  batch: optionalText(80).default(''),
  source: optionalText(300).default(''),
});
export type GasketData = z.output<typeof gasketData>;

export const caseName = z.enum(['design', 'operating', 'test']);

const pressureCase = z
  .strictObject({
    pressure: entered('pressure', { min: 0, max: 1e9 }).nullable().default(null),
    temperature: entered('temperature', { min: -273, max: 1200 }).nullable().default(null),
  })
  .prefault({});

/** Pressures the joint has to hold, each with the fluid's temperature. */
export const pressureCases = z
  .strictObject({
    design: pressureCase,
    operating: pressureCase,
    test: pressureCase,
    source: optionalText(300).default(''),
  })
  .prefault({});
