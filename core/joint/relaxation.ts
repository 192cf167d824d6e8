import { compute, type Outcome, positive, within } from '../findings/outcome.ts';

/** A reason for load to be lost after tightening, with the fraction that stays. */
export interface Loss {
  readonly name: string;
  /** Fraction of the load that is left after this loss alone, 0 to 1. */
  readonly retained: number | null;
  /** Where the fraction comes from. */
  readonly source: string;
}

/**
 * Load left after losses that act one after the other.
 *
 * Equation: Fres = Fas·Π φi.
 * @param assembled load at the end of tightening Fas, N, at least 0
 * @param losses every loss with its retained fraction
 * @returns Fres, N
 * @example residualLoad(100000, [{ name: 'gasket creep', retained: 0.7, source: 'data sheet' }]).value // 70000 N
 * @source ASME PCC-1-2013, Appendix O, for φg (from memory); product of independent fractions
 */
export function residualLoad(assembled: number | null, losses: readonly Loss[]): Outcome<number> {
  return compute(
    {
      assembled: within(
        'Fas',
        'load at the end of tightening, N',
        assembled,
        [0, 1e8],
        'enter the assembly load',
      ),
      ...Object.fromEntries(
        losses.map(({ name, retained }, index) => [
          `loss${index}`,
          within(
            'φ',
            `fraction left after ${name}`,
            retained,
            [0, 1],
            `measure the load before and after ${name}`,
          ),
        ]),
      ),
    },
    (v) => losses.reduce((load, { retained }) => load * (retained ?? 0), v.assembled),
  );
}

/**
 * Assembly load that leaves a wanted load after losses.
 *
 * Equation: Fas = Freq/Π φi.
 * @param required load that has to be left Freq, N, at least 0
 * @param losses every loss with its retained fraction, each above 0
 * @returns Fas, N
 * @example assemblyLoadFor(70000, [{ name: 'gasket creep', retained: 0.7, source: 'data sheet' }]).value // 100000 N
 * @source ASME PCC-1-2013, Appendix O, for φg (from memory); product of independent fractions
 */
export function assemblyLoadFor(required: number | null, losses: readonly Loss[]): Outcome<number> {
  const share = residualLoad(1, losses);
  if (share.value === null) return share;
  return compute(
    {
      required: within(
        'Freq',
        'load that has to be left, N',
        required,
        [0, 1e8],
        'enter the load the joint needs',
      ),
      share: positive('Πφ', 'fraction left after all losses', share.value, 'measure the losses'),
    },
    (v) => v.required / v.share,
  );
}

/** Roughness of the faces as the embedding table groups it. */
export type RoughnessBand = 'Rz below 10 µm' | 'Rz 10 to 40 µm' | 'Rz 40 to 160 µm';

/** Embedding under axial load, m: in the thread, per head or nut seat, per interface between clamped parts. */
const EMBEDDING: Readonly<Record<RoughnessBand, readonly [number, number, number]>> = {
  'Rz below 10 µm': [3e-6, 2.5e-6, 1.5e-6],
  'Rz 10 to 40 µm': [3e-6, 3e-6, 2e-6],
  'Rz 40 to 160 µm': [3e-6, 4e-6, 3e-6],
};

/**
 * Settling of rough faces of a metal-to-metal joint under axial load. A gasket's creep is not in it.
 *
 * Equation: fZ = fthread + nseat·fseat + ninterface·finterface.
 * @param band roughness of the faces
 * @param seats head or nut seats, whole, 0 to 4
 * @param interfaces inner interfaces, whole, 0 to 20
 * @returns fZ, m
 * @example embedding('Rz 10 to 40 µm', 2, 2).value // 13e-6 m
 * @source VDI 2230-1, Table 5, axial load (from memory)
 */
export function embedding(band: RoughnessBand, seats: number, interfaces: number): Outcome<number> {
  const [inThread, perSeat, perInterface] = EMBEDDING[band];
  return compute(
    {
      seats: within('nseat', 'head and nut seats', seats, [0, 4], 'count the seats'),
      interfaces: within('ninterface', 'inner interfaces', interfaces, [0, 20], 'count the interfaces'),
    },
    (v) => inThread + v.seats * perSeat + v.interfaces * perInterface,
  );
}

/**
 * Load lost by settling.
 *
 * Equation: FZ = fZ/(δS + δP) = fZ/(1/kb + 1/kj).
 * @param settling fZ, m, at least 0
 * @param boltStiffness kb, N/m, above 0
 * @param jointStiffness kj of the clamped parts per bolt, N/m, above 0
 * @returns FZ, N
 * @example embeddingLoss(13e-6, 500e6, 2000e6).value // 5200 N
 * @source VDI 2230-1 (from memory)
 */
export function embeddingLoss(
  settling: number | null,
  boltStiffness: number | null,
  jointStiffness: number | null,
): Outcome<number> {
  return compute(
    {
      settling: within('fZ', 'settling, m', settling, [0, 0.01], 'count seats and interfaces'),
      bolt: positive('kb', 'stiffness of one bolt, N/m', boltStiffness, 'enter grip, thread and modulus'),
      joint: positive(
        'kj',
        'stiffness of the clamped parts per bolt, N/m',
        jointStiffness,
        'have it calculated',
      ),
    },
    (v) => v.settling / (1 / v.bolt + 1 / v.joint),
  );
}
