import type { Thread } from '../bolting/thread.ts';
import { torqueSplit, wholeTorque } from '../bolting/torque.ts';
import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

/** The joint's friction as it was installed. */
export interface InstalledFriction {
  readonly thread: number;
  readonly bearing: number;
  /** Db, m */
  readonly bearingDiameter: number;
}

/** Loads between which the one at breakout may have lain. */
export interface LoadBetween {
  readonly low: number;
  readonly high: number;
  /** Friction at breakout over friction when installed, at either end: much friction means little load. */
  readonly friction: readonly [least: number, most: number];
}

/**
 * Load that may have been left, from the breakout torque alone. Friction and load can't be told apart by one torque, so
 * friction is let run from a little less than installed to as much more as breakout has shown with the load kept.
 *
 * Equation: F = Toff/(f·B − P/(2π)), B = μt·d2/(2·cos β) + μb·Db/2; most f from R95 = (f·B − P/(2π))/(B + P/(2π)).
 * @param torque Toff, N·m, above 0
 * @param thread thread of the stud
 * @param friction pair and bearing face as installed
 * @param near s, half width of friction's scatter on its logarithm, 1, at least 0
 * @param highRatio R95, breakout ratio that 95 of 100 bolts of the like stay under, 1, above 0
 * @returns loads in N; no value where the least friction would not hold the thread
 * @example residualBetween(290, thread, { thread: 0.12, bearing: 0.12, bearingDiameter: 0.0306 }, 0.17, 2).value?.low // 39211 N
 * @source VDI 2230-1’s relation with the sign of the incline turned; bounds of friction are this program's rule
 */
export function residualBetween(
  torque: number | null,
  thread: Thread,
  friction: InstalledFriction,
  near: number,
  highRatio: number,
): Outcome<LoadBetween> {
  const split = torqueSplit(1, thread, friction.bearingDiameter, friction.thread, friction.bearing);
  const rubbing = split.thread + split.bearing;
  const least = Math.exp(-near);
  const most = Math.max(Math.exp(near), (highRatio * wholeTorque(split) + split.stretch) / rubbing);
  return compute(
    {
      T: positive('Toff', 'breakout torque, N·m', torque, 'read the torque of first movement'),
      arm: positive(
        'f·B − P/2π',
        'lever of loosening at the least friction, m',
        least * rubbing - split.stretch,
        'check the friction that was entered',
      ),
      R: within('R', 'high breakout ratio', highRatio, [1e-3, 100], 'check the history'),
    },
    ({ T, arm }) => ({
      low: T / (most * rubbing - split.stretch),
      high: T / arm,
      friction: [least, most] as const,
    }),
  );
}

/** Load from a torque pair, with its relative standard uncertainty. */
export interface PairLoad {
  readonly load: number;
  readonly relative: number;
}

/**
 * Bolt load from the torques of tightening and of loosening at once, where the friction is the same in both.
 *
 * Equation: F = π·(Ton − Toff)/P; u(F)/F = u·√(Ton² + Toff²)/(Ton − Toff).
 * @param on Ton, N·m, above 0
 * @param off Toff taken at once, N·m, above 0 and below Ton
 * @param pitch P, m, above 0
 * @param relative u, relative standard uncertainty of each torque, 1, 0 to 1
 * @returns load in N with its uncertainty
 * @example pairLoad(383.44, 286.6, 0.0028222, 0.02).value?.relative // 0.0989
 * @source load from tightening and immediate untightening torque, LUBMAT 2014, paper L144056; GUM 5.1.2 for the uncertainty
 */
export function pairLoad(
  on: number | null,
  off: number | null,
  pitch: number | null,
  relative: number | null,
): Outcome<PairLoad> {
  const most = on === null || !Number.isFinite(on) ? 0 : on * (1 - 1e-6);
  return compute(
    {
      on: positive('Ton', 'tightening torque, N·m', on, 'read it'),
      off: within(
        'Toff',
        'loosening torque, N·m, below the tightening torque',
        off,
        [0, most],
        'read it at once',
      ),
      P: positive('P', 'pitch, m', pitch, 'choose the thread'),
      u: within('u', 'relative uncertainty of a torque', relative, [0, 1], 'take it from the certificate'),
    },
    (v) => ({
      load: (Math.PI * (v.on - v.off)) / v.P,
      relative: (v.u * Math.hypot(v.on, v.off)) / (v.on - v.off),
    }),
  );
}
