import type { RatioStanding } from '../contract/forecast.ts';

/**
 * Breakout over installed torque of a clean joint whose load and friction are as they were.
 *
 * Equation: c = Toff/Ton = 1 − P/(π·K·D), from Ton − Toff = F·P/π and Ton = K·F·D.
 * @param pitch P, m, above 0
 * @param nutFactor K, 1, above 0
 * @param diameter D, m, above 0
 * @returns ratio, at least 0
 * @example cleanRatio(0.0028222, 0.16, 0.022225) // 0.747
 * @source sign of the incline turned in VDI 2230-1’s relation
 */
export function cleanRatio(pitch: number, nutFactor: number, diameter: number): number {
  return Math.max(0, 1 - pitch / (Math.PI * nutFactor * diameter));
}

/** Torques are read to about 3 %; friction scatters by 10 % where nobody has entered by how much. */
const READING = 0.03;
export const USUAL_FRICTION_SCATTER = 0.1;
/** 90 % of a normal variable. */
const NINETY = 1.645;

/**
 * Spread of ln R about the clean value that friction and reading alone explain.
 *
 * Equation: s = 1.645·√(v² + 0.03²).
 * @param frictionScatter v, coefficient of variation of K, 1, at least 0; null takes 10 %
 * @returns half width of "near" on ln R
 * @example nearWidth(0.1) // 0.1717
 * @source rule of this program
 */
export function nearWidth(frictionScatter: number | null): number {
  return NINETY * Math.hypot(frictionScatter ?? USUAL_FRICTION_SCATTER, READING);
}

/** How a ratio stands against the clean value of its joint, with what that can mean. */
export interface RatioMeaning {
  readonly standing: RatioStanding;
  readonly meaning: string;
}

const MEANINGS: Readonly<Record<RatioStanding, string>> = {
  'below the clean value':
    'Less than a clean joint would take: suspect lost load. Look at the gasket and for leaks, and have the load looked into before the joint goes back as it was.',
  'near it':
    'About what a clean joint takes. That is no sign either way: lost load and higher friction cancel each other.',
  'above it':
    'More than a clean joint would take: ageing lubricant, corrosion or galling. It says nothing about the load.',
  'not known': 'The clean value of this joint is not known: enter its thread and friction.',
};

/**
 * Says what a breakout ratio can mean, against the clean value of this very joint.
 *
 * Equation: near when |ln(R/c)| ≤ s.
 * @param ratio R, 1, above 0; null when not known
 * @param clean c, 1, above 0; null when not known
 * @param near s, half width on ln R, 1, at least 0
 * @returns standing and its words
 * @example meaningOf(0.5, 0.75, 0.17).standing // 'below the clean value'
 * @source reading of breakout as on this program's calculations page; common practice
 */
export function meaningOf(ratio: number | null, clean: number | null, near: number): RatioMeaning {
  const standing = standingOf(ratio, clean, near);
  return { standing, meaning: MEANINGS[standing] };
}

function standingOf(ratio: number | null, clean: number | null, near: number): RatioStanding {
  if (ratio === null || clean === null || ratio <= 0 || clean <= 0) return 'not known';
  const apart = Math.log(ratio / clean);
  if (Math.abs(apart) <= near) return 'near it';
  return apart < 0 ? 'below the clean value' : 'above it';
}
