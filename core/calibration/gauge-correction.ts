/** Point of a gauge certificate, Pa. */
export interface GaugePoint {
  readonly indicated: number;
  readonly reference: number;
}

/** Turns true pressure into what the gauge shows and back; null outside the certificate's points. */
export interface GaugeCorrection {
  readonly toIndicated: (reference: number) => number | null;
  readonly toReference: (indicated: number) => number | null;
}

/**
 * Correction of a gauge by its own certificate, straight lines between the points.
 *
 * Equation: linear interpolation between (reference, indicated) pairs; pairs at one indication are averaged.
 * @param points indicated and reference pressure, Pa, in any order
 * @returns the correction, or null when fewer than two distinct, rising points are left
 * @example gaugeCorrection([{ indicated: 0, reference: 0 }, { indicated: 1e7, reference: 1.01e7 }])?.toIndicated(1.01e7) // 1e7
 * @source JCGM 200:2012 (VIM), 2.53 correction
 */
export function gaugeCorrection(points: readonly GaugePoint[]): GaugeCorrection | null {
  const averaged = averageByIndication(points);
  if (averaged.length < 2) return null;
  const rising = averaged.every((point, i) => i === 0 || point.reference > (averaged[i - 1]?.reference ?? 0));
  if (!rising) return null;
  return {
    toIndicated: (reference) => interpolate(averaged, reference, 'reference', 'indicated'),
    toReference: (indicated) => interpolate(averaged, indicated, 'indicated', 'reference'),
  };
}

function averageByIndication(points: readonly GaugePoint[]): GaugePoint[] {
  const groups = new Map<number, number[]>();
  for (const { indicated, reference } of points) {
    groups.set(indicated, [...(groups.get(indicated) ?? []), reference]);
  }
  return [...groups]
    .map(([indicated, references]) => ({
      indicated,
      reference: references.reduce((sum, one) => sum + one, 0) / references.length,
    }))
    .sort((a, b) => a.indicated - b.indicated);
}

function interpolate(
  points: readonly GaugePoint[],
  at: number,
  from: keyof GaugePoint,
  to: keyof GaugePoint,
): number | null {
  for (let i = 1; i < points.length; i++) {
    const low = points[i - 1];
    const high = points[i];
    if (low === undefined || high === undefined) continue;
    if (at >= low[from] && at <= high[from]) {
      return low[to] + ((at - low[from]) / (high[from] - low[from])) * (high[to] - low[to]);
    }
  }
  return null;
}
