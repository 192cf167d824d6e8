import { compute, type Outcome, positive, whole, within } from '../findings/outcome.ts';

/** Part of a pass-partition bar's area that ASME PCC-1 practice counts; from memory. A site may rule otherwise. */
export const PARTITION_SHARE_PCC1 = 0.5;

/** A straight bar of the gasket across a channel, between the inside edges of the ring. */
export interface PartitionBar {
  /** m */
  readonly length: number;
  /** m */
  readonly width: number;
}

/**
 * Area of a ring gasket's sealing element.
 *
 * Equation: Ag = (π/4)·(Dod² − Did²).
 * @param outside outside diameter of the sealing element Dod, m, above `inside`; not the centring ring's
 * @param inside inside diameter of the sealing element Did, m, at least 0
 * @returns Ag, m²
 * @example ringArea(0.2636, 0.2333).value // 0.011825 m²
 * @source plane geometry; ASME PCC-1-2013, Appendix O, definition of Ag (from memory)
 */
export function ringArea(outside: number | null, inside: number | null): Outcome<number> {
  return compute(
    {
      outside: within(
        'Dod',
        'outside diameter of the sealing element, m, above its inside diameter',
        outside,
        [inside === null || !Number.isFinite(inside) ? 0 : inside * (1 + 1e-9), 20],
        'measure the sealing element or take it from the gasket standard',
      ),
      inside: within(
        'Did',
        'inside diameter of the sealing element, m',
        inside,
        [0, 20],
        'measure the sealing element or take it from the gasket standard',
      ),
    },
    (v) => (Math.PI / 4) * (v.outside ** 2 - v.inside ** 2),
  );
}

/**
 * Gasket area that the bolts have to load: the ring and the counted part of its pass-partition bars.
 *
 * Equation: Ag = Aring + s·Σ(L·w).
 * @param ring area of the ring, m², above 0
 * @param bars pass-partition bars
 * @param share counted part of the bars s, 0 to 1, by the site's rule; null asks for it when there are bars
 * @returns Ag, m²
 * @example gasketArea(0.02, [{ length: 0.5, width: 0.01 }], 0.5).value // 0.0225 m²
 * @source site rule; half of the bars' area is ASME PCC-1 practice, from memory
 */
export function gasketArea(
  ring: number | null,
  bars: readonly PartitionBar[],
  share: number | null,
): Outcome<number> {
  const area = bars.reduce((sum, bar) => sum + barArea(bar), 0);
  return compute(
    {
      ring: positive('Aring', 'area of the ring, m²', ring, 'measure the sealing element'),
      bars: within('Σ(L·w)', 'area of the partition bars, m²', area, [0, 100], 'measure each bar'),
      share: within(
        's',
        'counted part of the partition bars',
        bars.length === 0 ? 0 : share,
        [0, 1],
        'enter the site rule for pass-partition bars',
      ),
    },
    (v) => v.ring + v.share * v.bars,
  );
}

/** A bar of negative size would lower the area without a word; it has to show as out of range instead. */
function barArea({ length, width }: PartitionBar): number {
  return length >= 0 && width >= 0 ? length * width : Number.NaN;
}

/** One of the gaskets that a joint's bolts clamp one behind the other. */
export interface GasketInSeries {
  readonly name: string;
  /** m² */
  readonly area: number | null;
  /** Stress the gasket asks for, Pa. */
  readonly target: number | null;
}

/** Stress in each gasket of a series, and the one that asks for the largest load. */
export interface SeriesStress {
  /** Load in every gasket, N: the whole bolt load, not a part of it. */
  readonly load: number;
  readonly stresses: readonly { readonly name: string; readonly stress: number }[];
}

/**
 * Stress in gaskets clamped in series, such as the two of an exchanger's girth joint.
 *
 * Equation: SG,i = nb·Fb/Ag,i for every i; the load is not shared.
 * @param gaskets gaskets one behind the other
 * @param boltCount nb, whole, 1 to 400
 * @param boltLoad Fb, N, at least 0
 * @returns load and the stress in each gasket, Pa
 * @example seriesStress([{ name: 'shell', area: 0.02, target: null }], 10, 40000).value?.stresses[0]?.stress // 20e6
 * @source equilibrium of members in series
 */
export function seriesStress(
  gaskets: readonly GasketInSeries[],
  boltCount: number | null,
  boltLoad: number | null,
): Outcome<SeriesStress> {
  return compute(
    {
      count: whole('nb', 'number of bolts', boltCount, [1, 400], 'count the bolts'),
      load: within('Fb', 'bolt load, N', boltLoad, [0, 1e8], 'choose a target or enter the measured load'),
      gaskets: whole('n', 'number of gaskets', gaskets.length, [1, 10], 'name the gaskets of the joint'),
      ...areas(gaskets),
    },
    (v) => {
      const load = v.count * v.load;
      return { load, stresses: gaskets.map(({ name, area }) => ({ name, stress: load / (area ?? 0) })) };
    },
  );
}

/**
 * Bolt load that brings every gasket of a series to its target, with the gasket that asks for most.
 *
 * Equation: Fb = max(SgT,i·Ag,i)/nb.
 * @param gaskets gaskets one behind the other, each with its area and target stress
 * @param boltCount nb, whole, 1 to 400
 * @returns load per bolt, N, and the name of the gasket that governs
 * @example seriesTarget([{ name: 'shell', area: 0.02, target: 80e6 }], 16).value?.load // 100000 N
 * @source equilibrium of members in series; ASME PCC-1-2013, Appendix O, for SgT·Ag (from memory)
 */
export function seriesTarget(
  gaskets: readonly GasketInSeries[],
  boltCount: number | null,
): Outcome<{ readonly load: number; readonly governing: string }> {
  return compute(
    {
      count: whole('nb', 'number of bolts', boltCount, [1, 400], 'count the bolts'),
      gaskets: whole('n', 'number of gaskets', gaskets.length, [1, 10], 'name the gaskets of the joint'),
      ...areas(gaskets),
      ...Object.fromEntries(
        gaskets.map(({ name, target }, index) => [
          `target${index}`,
          positive(
            'SgT',
            `target stress of the ${name} gasket, Pa`,
            target,
            'take it from the gasket data sheet',
          ),
        ]),
      ),
    },
    (v) => {
      const loads = gaskets.map(({ name, area, target }) => ({ name, load: (area ?? 0) * (target ?? 0) }));
      const most = loads.reduce((a, b) => (b.load > a.load ? b : a));
      return { load: most.load / v.count, governing: most.name };
    },
  );
}

/** Named keys keep one input per gasket, so that the gap says which gasket is meant. */
function areas(gaskets: readonly GasketInSeries[]) {
  return Object.fromEntries(
    gaskets.map(({ name, area }, index) => [
      `area${index}`,
      positive('Ag', `area of the ${name} gasket, m²`, area, 'measure the sealing element'),
    ]),
  );
}
