import { raisedFaceDiameter } from './faces.ts';
import type { FlangeStandard } from './flanges.ts';
import { gasketDimensions } from './gaskets.ts';
import { leastTrusted } from './status.ts';
import type { TableValue } from './table-value.ts';

/** Ring of a gasket that the two faces press on, m; null where a table leaves it open. */
export interface ContactRing {
  readonly inside: TableValue | null;
  readonly outside: TableValue | null;
}

/**
 * Ring of a standard gasket that is pressed. A flat ring reaches out to the studs; on a raised face it is pressed only as
 * far as the face goes. The bore of the flange is taken as no larger than the gasket's.
 *
 * Equation: outside = min(gasket, raised face).
 * @param kind spiral wound or flat
 * @param flange standard flange with its facing
 * @returns ring, m; null where no table has the gasket for the facing; outside null where the face's diameter is open
 * @example contactRing('flat', { standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' })?.outside?.value // 0.2697
 * @source ASME B16.20, ASME B16.21, EN 1514-1 and the flange standards (second-hand); geometry
 */
export function contactRing(
  kind: 'spiral wound' | 'flat',
  flange: {
    readonly standard: FlangeStandard;
    readonly size: string;
    readonly rating: string;
    readonly facing: 'raised face' | 'flat face' | 'ring joint' | 'other';
  },
): ContactRing | null {
  const { standard, size, rating, facing } = flange;
  if (facing !== 'raised face' && !(facing === 'flat face' && kind === 'flat')) return null;
  const gasket = gasketDimensions(kind, standard, size, rating);
  if (gasket === null) return null;
  const { inside, outside } = gasket;
  if (kind === 'spiral wound' || facing === 'flat face') return { inside, outside };
  const face = raisedFaceDiameter(standard, size, rating);
  return { inside, outside: face === null ? null : lesser(outside, face) };
}

/** The smaller of two diameters rests on both tables: each had to be right for it to be the smaller one. */
function lesser(gasket: TableValue, face: TableValue): TableValue {
  const smaller = gasket.value <= face.value ? gasket : face;
  const other = smaller === gasket ? face : gasket;
  return {
    ...smaller,
    source: `${smaller.source}; smaller than by ${other.source}`,
    status: leastTrusted(smaller.status, other.status),
    note: [smaller.note, other.note].filter((note) => note !== '').join('; '),
  };
}
