import { ASME_B16_5_HUB_NOTES, ASME_B16_5_HUBS } from './asme-b16-5-hubs.ts';
import { ASME_B16_5_RING_JOINT, RING_JOINT_NOTES, type RingJointRow } from './asme-b16-5-ring-joint.ts';
import { ASME_B16_47_HUB_NOTES, ASME_B16_47_HUBS } from './asme-b16-47-hubs.ts';
import { BS_4504_1_FACES } from './bs-4504-1-faces.ts';
import { rowsBySize, type SizedRow } from './by-size.ts';
import { type FlangeRow, type FlangeStandard, findFlange } from './flanges.ts';
import { oncePer } from './once-per.ts';
import { RAISED_FACES } from './raised-faces.ts';
import { plainRating, plainSize } from './size-names.ts';
import type { RowStatus } from './status.ts';
import type { TableValue } from './table-value.ts';

const MM = 0.001;

type Row = readonly [hubDiameterMm: number | null, sources: string, status: RowStatus];

/**
 * Diameter of a flange's hub at its base.
 *
 * @param standard flange standard
 * @param size NPS; "1-1/2" and "1 1/2" are the same
 * @param rating class
 * @returns X, m, the fillet beside it left out; null where the table has no row, sources clash, or EN 1092-1
 * @example hubDiameter('ASME B16.5', '8', '300')?.value // 0.2603
 * @source ASME B16.5; ASME B16.47 (second-hand)
 */
export function hubDiameter(standard: FlangeStandard, size: string, rating: string): TableValue | null {
  return HUB(standard, size, rating) ?? HUB(standard, size, String(Number(plainRating(rating))));
}

const HUB = rowsBySize<TableValue>([
  ...ASME_B16_5_HUBS.flatMap(([class_, nps, ...row]) =>
    hubValue('ASME B16.5', class_, nps, row, ASME_B16_5_HUB_NOTES[`${nps}|${class_}`]),
  ),
  ...ASME_B16_47_HUBS.flatMap(([series, class_, nps, ...row]) =>
    hubValue(`ASME B16.47 ${series}`, class_, nps, row, ASME_B16_47_HUB_NOTES[`${series}|${class_}|${nps}`]),
  ),
]);

function hubValue(
  standard: FlangeStandard,
  class_: number,
  nps: string,
  [diameter, sources, status]: Row,
  note = '',
): SizedRow<TableValue>[] {
  if (diameter === null) return [];
  const value = {
    value: diameter * MM,
    source: `${standard}, hub of NPS ${nps} Class ${class_}`,
    sources,
    status,
    note,
    cell: faceCell(standard, nps, String(class_), 'hub', 'diameter of the hub'),
  };
  return [[standard, nps, String(class_), value]];
}

/**
 * Height of a flange's raised face, which the thickness of the 2003 and later tables leaves out.
 *
 * @param standard flange standard
 * @param size NPS or DN
 * @param rating class or PN
 * @returns height, m; null for sizes no table has, and for ASME B16.47
 * @example raisedFaceHeight('ASME B16.5', '8', '300')?.value // 0.002
 * @source ASME B16.5, metric tables; BS 4504-1:1969 for EN 1092-1 (second-hand)
 */
export function raisedFaceHeight(standard: FlangeStandard, size: string, rating: string): TableValue | null {
  // A height is only as good as the flange it belongs to: a size that doesn't exist has none.
  const row = findFlange(standard, size, rating);
  return row === null ? null : faceHeightOf(row);
}

/**
 * Height of the raised face that a flange row leaves out, as `raisedFaceHeight`.
 *
 * @param row row of a flange table
 * @returns height, m; null for sizes no table has, and for ASME B16.47
 * @example faceHeightOf(findFlange('ASME B16.5', '8', '300'))?.value // 0.002
 * @source ASME B16.5, metric tables; BS 4504-1:1969 for EN 1092-1 (second-hand)
 */
export function faceHeightOf(row: FlangeRow): TableValue | null {
  return HEIGHT_OF_FLANGE(row);
}

const HEIGHT_OF_FLANGE = oncePer(({ standard, size, rating }: FlangeRow): TableValue | null => {
  const at = Number(standard === 'EN 1092-1' ? size : rating);
  const face = RAISED_FACES.find(([name, , from, to]) => name === standard && at >= from && at <= to);
  if (face === undefined) return null;
  const [, by, from, to, height, sources, status] = face;
  return {
    value: height * MM,
    source: `${standard}, raised face, ${by} ${from} to ${to}`,
    sources,
    status,
    note: status === 'DISAGREE' ? 'inch tables 0.06 in (1.6 mm), metric tables 2 mm: rounding' : '',
    cell: faceCell(standard, size, rating, 'faceHeight', 'height of the raised face'),
  };
});

/**
 * Outside diameter of a flange's raised face.
 *
 * @param standard flange standard
 * @param size NPS or DN
 * @param rating class or PN
 * @returns diameter, m; null where no table prints it (NPS 22 of ASME B16.5)
 * @example raisedFaceDiameter('ASME B16.5', '8', '300')?.value // 0.2697
 * @source ASME B16.5; ASME B16.47; BS 4504-1:1969 for EN 1092-1 (second-hand)
 */
export function raisedFaceDiameter(
  standard: FlangeStandard,
  size: string,
  rating: string,
): TableValue | null {
  if (standard === 'EN 1092-1') return raisedFaceEn(Number(plainSize(size)), Number(plainRating(rating)));
  const row = findFlange(standard, size, rating);
  if (row === null || row.raisedFace === null) return null;
  return {
    value: row.raisedFace,
    source: `${standard}, raised face of NPS ${row.size} Class ${row.rating}`,
    sources: row.sources,
    status: row.status,
    note: row.note,
    cell: faceCell(standard, row.size, row.rating, 'faceDiameter', 'diameter of the raised face'),
  };
}

function faceCell(standard: FlangeStandard, size: string, rating: string, field: string, name: string) {
  return { table: standard, key: `${size} | ${rating}`, field, name, unit: 'mm' } as const;
}

function raisedFaceEn(dn: number, pn: number): TableValue | null {
  const row = BS_4504_1_FACES.find((one) => one[0] === pn && one[1] === dn);
  if (row === undefined || row[2] === null) return null;
  return {
    value: row[2] * MM,
    source: `BS 4504-1:1969, raised face of PN ${pn} DN ${dn}`,
    sources: row[4],
    status: row[5],
    note: '',
    cell: faceCell('EN 1092-1', String(dn), String(pn), 'faceDiameter', 'diameter of the raised face'),
  };
}

/** Stud length and stand-off of a ring joint, m; null where not found. */
export interface RingJoint {
  readonly studLength: TableValue | null;
  /** Approximate distance between the two flanges. */
  readonly standOff: TableValue | null;
}

/**
 * Stud length and distance between the flanges of an ASME B16.5 ring joint, current metric column.
 *
 * @param size NPS
 * @param rating class
 * @returns both, each null where not found; null when the table has no such flange
 * @example ringJoint('8', '300')?.studLength?.value // 0.15
 * @source ASME B16.5 (second-hand)
 */
export function ringJoint(size: string, rating: string): RingJoint | null {
  return RING_JOINT('ASME B16.5', size, rating);
}

const RING_JOINT = rowsBySize(
  ASME_B16_5_RING_JOINT.map((row) => ['ASME B16.5', row[1], String(row[0]), ringJointOf(row)]),
);

function ringJointOf([class_, nps, length, , standOff, sources, status]: RingJointRow): RingJoint {
  const about = (field: string, what: string, millimetres: number | null): TableValue | null =>
    millimetres === null
      ? null
      : {
          value: millimetres * MM,
          source: `ASME B16.5, ring joint, ${what} of NPS ${nps} Class ${class_}, current metric column`,
          sources,
          status,
          note: RING_JOINT_NOTES[`${nps}|${class_}`] ?? '',
          cell: faceCell('ASME B16.5', nps, String(class_), field, `${what}, ring joint`),
        };
  return {
    studLength: about('ringStudLength', 'stud length', length),
    standOff: about('standOff', 'distance between flanges', standOff),
  };
}
