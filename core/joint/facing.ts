import type { JointData } from '../contract/joint.ts';
import { faceHeightOf, hubDiameter, ringJoint } from '../reference/faces.ts';
import type { FlangeRow } from '../reference/flanges.ts';
import { ringGasket, ringOfFlange } from '../reference/gaskets.ts';
import { oncePer } from '../reference/once-per.ts';
import { leastTrusted, type RowStatus, statusText } from '../reference/status.ts';
import { cellsToConfirm, faceCells } from '../reference/table-cells.ts';
import type { TableCell, TableValue } from '../reference/table-value.ts';
import { showQuantity } from '../text/number.ts';
import type { Known } from './known.ts';

type StandardFlange = Extract<JointData['flange'], { kind: 'standard' }>;

/** A length computed from table values, m; its trust is that of the least trusted of them. */
export interface ComputedLength {
  readonly value: number;
  readonly source: string;
  readonly status: RowStatus;
  readonly note: string;
  /** What of it a person should confirm; undefined where sources agree. */
  readonly cells: readonly TableCell[] | undefined;
}

/**
 * Clamped length between the nuts of two like flanges, faces included.
 *
 * Equation: raised face L = 2·(t + f) + gasket; ring joint L = 2·(t + E) + stand-off.
 * @param flange standard flange with its facing
 * @param row its table row, with the thickness that leaves the face out
 * @param gasket thickness of the compressed gasket, m, above 0; a ring joint needs none
 * @returns grip, m; null for other facings, a thickness, face or stand-off no table has, and EN 1092-1, whose only
 * thicknesses are those of 1969
 * @example standardGrip(data.flange, findFlange('ASME B16.5', '8', '300'), 0.0045)?.value // 0.0879
 * @source ASME B16.5, 2003 and later (second-hand); that the ring-joint face stands proud by the depth of its groove is
 * from memory
 */
export function standardGrip(
  flange: StandardFlange,
  row: FlangeRow,
  gasket: number | null,
): ComputedLength | null {
  if (row.thickness === null) return null;
  if (flange.facing === 'raised face') return raisedFaceGrip(row, row.thickness, gasket);
  if (flange.facing === 'ring joint') return RING_JOINT_GRIP(row);
  return null;
}

function raisedFaceGrip(row: FlangeRow, thickness: number, gasket: number | null): ComputedLength | null {
  const faces = RAISED_FACES_OF_FLANGE(row);
  if (faces === null || gasket === null) return null;
  const { face, source, status, note, cells } = faces;
  return { value: 2 * (thickness + face) + gasket, source, status, note, cells };
}

const RAISED_FACES_OF_FLANGE = oncePer((row: FlangeRow) => {
  const face = faceHeightOf(row);
  if (face === null || row.thickness === null) return null;
  return {
    face: face.value,
    source: `two like flanges of ${row.standard} with raised faces of ${millimetres(face)}, and the gasket’s thickness`,
    status: leastTrusted(row.status, face.status),
    note: notes(row.note, face.note),
    cells: cellsToConfirm([thicknessOf(row, row.thickness), face]),
  };
});

const RING_JOINT_GRIP = oncePer((row: FlangeRow): ComputedLength | null => {
  const { thickness } = row;
  const number = ringOfFlange(row.size, row.rating);
  const groove = number === null ? null : (ringGasket(number.number)?.grooveDepth ?? null);
  const standOff = ringJoint(row.size, row.rating)?.standOff ?? null;
  if (row.standard !== 'ASME B16.5' || thickness === null) return null;
  if (number === null || groove === null || standOff === null) return null;
  const dimensions = cellsToConfirm([thicknessOf(row, thickness), groove, standOff]) ?? [];
  const assignment = statusText(number.status) === null ? [] : faceCells(row).filter(isRing);
  return {
    value: 2 * (thickness + groove.value) + standOff.value,
    source: `two like flanges of ${row.standard} with ring-joint faces of ${millimetres(groove)}, ${millimetres(standOff)} apart (approximate)`,
    status: leastTrusted(row.status, number.status, groove.status, standOff.status),
    note: notes(row.note, standOff.note),
    cells: [...dimensions, ...assignment],
  };
});

function isRing({ field }: TableCell): boolean {
  return field === 'ring';
}

function thicknessOf(row: FlangeRow, value: number): TableValue {
  const { standard: table, size, rating, sources, status, note } = row;
  const cell = {
    table,
    key: `${size} | ${rating}`,
    field: 'thickness',
    name: 'flange thickness',
    unit: 'mm',
  } as const;
  return { value, source: table, sources, status, note, cell };
}

/**
 * Free distance from a stud's centre to the base of the hub.
 *
 * Equation: gap = (Dbc − X)/2.
 * @param flange standard flange
 * @param circle bolt circle in force Dbc, m, with the trust of its row
 * @returns gap, m, the fillet beside the hub left out; null where no table has the hub or it reaches the studs
 * @example standardHubGap(data.flange, { value: 0.3302, status: 'AGREE' })?.value // 0.03495
 * @source ASME B16.5, ASME B16.47 (second-hand); plane geometry
 */
export function standardHubGap(
  flange: StandardFlange,
  circle: Pick<Known<number>, 'value' | 'status' | 'cells'> | null,
): ComputedLength | null {
  const hub = hubDiameter(flange.standard, flange.size, flange.rating);
  if (hub === null || circle === null || hub.value >= circle.value) return null;
  return {
    value: (circle.value - hub.value) / 2,
    source: SOURCE_OF_HUB(hub),
    status: circle.status === null ? hub.status : leastTrusted(hub.status, circle.status),
    note: hub.note,
    cells: [...(circle.cells ?? []), ...CELLS_OF_HUB(hub)],
  };
}

const SOURCE_OF_HUB = oncePer((hub: TableValue) => {
  return `bolt circle and ${hub.source}, ${millimetres(hub)}; the fillet beside it is not taken off`;
});

const CELLS_OF_HUB = oncePer((hub: TableValue) => cellsToConfirm([hub]) ?? []);

function millimetres({ value }: TableValue): string {
  return showQuantity(value, 'mm', 5);
}

function notes(...all: readonly string[]): string {
  return all.filter((note) => note !== '').join('; ');
}
