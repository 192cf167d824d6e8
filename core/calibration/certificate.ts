import type { CertificateData, CertificateLineView } from '../contract/tool.ts';
import { linePoints } from './certificate-fit.ts';
import { type GaugeCorrection, gaugeCorrection } from './gauge-correction.ts';
import { certificateLine } from './line.ts';

type Measured = Pick<CertificateData, 'measured'>;

// A certificate never changes once it is recorded, so each list of points is fitted once.
const LINES = new WeakMap<object, CertificateLineView | null>();
const CORRECTIONS = new WeakMap<object, GaugeCorrection | null>();

/**
 * The line through the points of a wrench's certificate.
 *
 * Equation: T = a + b·p by least squares, weighted where every point states its own uncertainty.
 * @param certificate certificate as stored, at least 3 points, Pa and N·m
 * @returns the line in SI, or null for a gauge's certificate and for points that give no rising line
 * @example lineOfCertificate(certificate)?.slope // 1.5e-5 N·m/Pa
 * @source JCGM 100:2008 (GUM), Annex H.3
 */
export function lineOfCertificate({ measured }: Measured): CertificateLineView | null {
  if (measured.kind !== 'pressure-torque') return null;
  const { points } = measured;
  return remembered(LINES, points, () => {
    const stated = linePoints(measured);
    return certificateLine(
      points.map(({ pressure, torque, direction }, index) => ({
        pressure: pressure.si,
        torque: torque.si,
        direction,
        own: stated[index]?.u ?? null,
      })),
    );
  });
}

/**
 * The correction a gauge's own certificate gives.
 *
 * Equation: linear interpolation between (reference, indicated) pairs.
 * @param certificate certificate as stored, Pa
 * @returns the correction, or null for a wrench's certificate and where fewer than two rising points are listed
 * @example correctionOfCertificate({ measured: { kind: 'gauge', points: [{ indicated: { si: 0 }, reference: { si: 0 }
 * }, { indicated: { si: 1e7 }, reference: { si: 1.01e7 } }] } })?.toIndicated(1.01e7) // 1e7 Pa
 * @source JCGM 200:2012 (VIM), 2.53 correction
 */
export function correctionOfCertificate({ measured }: Measured): GaugeCorrection | null {
  if (measured.kind !== 'gauge') return null;
  const { points } = measured;
  return remembered(CORRECTIONS, points, () =>
    gaugeCorrection(
      points.map(({ indicated, reference }) => ({ indicated: indicated.si, reference: reference.si })),
    ),
  );
}

function remembered<T>(known: WeakMap<object, T>, points: object, read: () => T): T {
  const before = known.get(points);
  if (before !== undefined) return before;
  const found = read();
  known.set(points, found);
  return found;
}
