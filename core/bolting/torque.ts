import type { Thread } from './thread.ts';

/** Flank angle β of unified and ISO metric threads, half of the 60° profile. */
export const FLANK_ANGLE = Math.PI / 6;

type Incline = Pick<Thread, 'pitch' | 'pitchDiameter'>;

/** Torque taken by the stretch, the thread's friction and the nut face's friction, N·m. */
export interface TorqueSplit {
  readonly stretch: number;
  readonly thread: number;
  readonly bearing: number;
}

/**
 * Torque by the nut factor.
 *
 * Equation: T = K·F·D.
 * @param nutFactor K, 1, above 0
 * @param load bolt load F, N, at least 0
 * @param diameter nominal diameter D, m, above 0
 * @returns torque, N·m
 * @example torqueByNutFactor(0.16, 107829, 0.022225) // 383.44 N·m
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 */
export function torqueByNutFactor(nutFactor: number, load: number, diameter: number): number {
  return nutFactor * load * diameter;
}

/**
 * Bolt load by the nut factor.
 *
 * Equation: F = T/(K·D).
 * @param nutFactor K, 1, above 0
 * @param torque T, N·m, at least 0
 * @param diameter nominal diameter D, m, above 0
 * @returns bolt load, N
 * @example loadByNutFactor(0.16, 383.44, 0.022225) // 107829 N
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-27
 */
export function loadByNutFactor(nutFactor: number, torque: number, diameter: number): number {
  return torque / (nutFactor * diameter);
}

/**
 * Mean diameter of the bearing face, as VDI 2230 and PCC-1 use it.
 *
 * Equation: Db = (do + di)/2.
 * @param outside do, m, above `inside`
 * @param inside di, m, at least 0
 * @returns Db, m
 * @example meanBearingDiameter(0.0365125, 0.022225) // 0.02936875 m
 * @source VDI 2230-1:2003, equation for DKm; ASME PCC-1-2013, Appendix J
 */
export function meanBearingDiameter(outside: number, inside: number): number {
  return (outside + inside) / 2;
}

/**
 * Effective bearing diameter for friction spread evenly over the face.
 *
 * Equation: Db = (2/3)·(do³ − di³)/(do² − di²).
 * @param outside do, m, above `inside`
 * @param inside di, m, at least 0
 * @returns Db, m
 * @example effectiveBearingDiameter(0.0365, 0.0238) // 0.0306 m, above the mean of the two
 * @source ISO 16047:2005 (second-hand)
 */
export function effectiveBearingDiameter(outside: number, inside: number): number {
  return ((2 / 3) * (outside ** 3 - inside ** 3)) / (outside ** 2 - inside ** 2);
}

/**
 * Long form of the torque, small-angle, split into its three parts.
 *
 * Equation: T = F·[P/(2π) + μt·d2/(2·cos 30°) + μb·Db/2].
 * @param load bolt load F, N, at least 0
 * @param thread pitch P and pitch diameter d2, m
 * @param bearingDiameter Db, m, at least 0
 * @param frictionThread μt, 1, at least 0
 * @param frictionBearing μb, 1, at least 0
 * @returns parts, N·m; their sum is the torque
 * @example wholeTorque(torqueSplit(48000, metricThread(12, 1.25), 0.015, 0.12, 0.12)) // 90.0 N·m
 * @source VDI 2230-1:2003; ISO 16047:2005
 */
export function torqueSplit(
  load: number,
  thread: Incline,
  bearingDiameter: number,
  frictionThread: number,
  frictionBearing: number,
): TorqueSplit {
  return {
    stretch: (load * thread.pitch) / (2 * Math.PI),
    thread: (load * frictionThread * thread.pitchDiameter) / (2 * Math.cos(FLANK_ANGLE)),
    bearing: (load * frictionBearing * bearingDiameter) / 2,
  };
}

/**
 * Sum of the three parts of a torque.
 *
 * Equation: T = Tstretch + Tthread + Tbearing.
 * @param split parts, N·m
 * @returns T, N·m
 * @example wholeTorque({ stretch: 10, thread: 40, bearing: 50 }) // 100 N·m
 * @source VDI 2230-1:2003
 */
export function wholeTorque(split: TorqueSplit): number {
  return split.stretch + split.thread + split.bearing;
}

/**
 * Torque on an exact incline, tightening (raising the load) or loosening (lowering it).
 *
 * Equation: T = F/2·[d2·(μt ± cos β·tan λ)/(cos β ∓ μt·tan λ) + Db·μb], tan λ = lead/(π·d2).
 * @param load bolt load F, N, at least 0
 * @param screw lead (pitch × starts) and mean thread diameter, m; flank angle β, rad, 0 for a square thread
 * @param bearingDiameter Db, m, at least 0; 0 without a collar
 * @param frictionThread μt, 1, below cos β/tan λ
 * @param frictionBearing μb, 1, at least 0
 * @param direction +1 tightening, −1 loosening
 * @returns torque, N·m; negative when the screw runs back by itself
 * @example exactTorque(15000, { lead: 0.024, meanDiameter: 0.046, flankAngle: 0 }, 0.0825, 0.15, 0.15, 1) // 204.644
 * N·m
 * @source Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th ed., equation 8-26; ASME PCC-1, Appendix J
 */
export function exactTorque(
  load: number,
  screw: { readonly lead: number; readonly meanDiameter: number; readonly flankAngle: number },
  bearingDiameter: number,
  frictionThread: number,
  frictionBearing: number,
  direction: 1 | -1,
): number {
  const tangent = (direction * screw.lead) / (Math.PI * screw.meanDiameter);
  const cosine = Math.cos(screw.flankAngle);
  const incline = (frictionThread + cosine * tangent) / (cosine - frictionThread * tangent);
  return (load / 2) * (screw.meanDiameter * incline + bearingDiameter * frictionBearing);
}

/**
 * Torque that loosens a clean joint while its load is still there, small-angle.
 *
 * Equation: Toff = Ton − F·P/π.
 * @param installed torque it was tightened with Ton, N·m, at least 0
 * @param load bolt load F, N, at least 0
 * @param pitch P, m, above 0
 * @returns loosening torque, N·m; never below zero
 * @example looseningTorque(384.15, 108030, 0.00282222) // 287.1 N·m
 * @source sign of the incline turned in VDI 2230-1's relation; LUBMAT 2014, paper L144056, for its use
 */
export function looseningTorque(installed: number, load: number, pitch: number): number {
  return Math.max(0, installed - (load * pitch) / Math.PI);
}

/**
 * Nut factor of a pair of friction coefficients.
 *
 * Equation: K = [P/(2π) + μt·d2/(2·cos 30°) + μb·Db/2]/D.
 * @param thread thread of the stud
 * @param bearingDiameter Db, m, at least 0
 * @param frictionThread μt, 1, at least 0
 * @param frictionBearing μb, 1, at least 0
 * @returns K, 1
 * @example nutFactorOf(metricThread(24, 3), 0.0300, 0.12, 0.12) // 0.159
 * @source VDI 2230-1:2003, solved for K
 */
export function nutFactorOf(
  thread: Incline & Pick<Thread, 'diameter'>,
  bearingDiameter: number,
  frictionThread: number,
  frictionBearing: number,
): number {
  return (
    wholeTorque(torqueSplit(1, thread, bearingDiameter, frictionThread, frictionBearing)) / thread.diameter
  );
}

/**
 * The one friction coefficient, same in thread and bearing face, that a nut factor stands for. One K belongs to many
 * pairs; μt = μb is the rule chosen here.
 *
 * Equation: μ = (K·D − P/(2π))/(d2/(2·cos 30°) + Db/2).
 * @param nutFactor K, 1, above 0
 * @param thread thread of the stud
 * @param bearingDiameter Db, m, at least 0
 * @returns μ, 1; null when K is too small to turn the thread at all
 * @example equalFriction(0.16, unifiedThread(0.875, 9), 0.02936875) // 0.1174
 * @source VDI 2230-1:2003, solved for μ
 */
export function equalFriction(
  nutFactor: number,
  thread: Incline & Pick<Thread, 'diameter'>,
  bearingDiameter: number,
): number | null {
  const arm = thread.pitchDiameter / (2 * Math.cos(FLANK_ANGLE)) + bearingDiameter / 2;
  const friction = (nutFactor * thread.diameter - thread.pitch / (2 * Math.PI)) / arm;
  return friction > 0 ? friction : null;
}
