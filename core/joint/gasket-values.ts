import type { GasketData } from '../contract/gasket.ts';
import type { JointData, ResolvedValue } from '../contract/joint.ts';
import { type ContactRing, contactRing } from '../reference/gasket-contact.ts';
import { gasketFactors, ringGasket, ringOfFlange } from '../reference/gaskets.ts';
import { cellsToConfirm } from '../reference/table-cells.ts';
import type { TableValue } from '../reference/table-value.ts';
import { showQuantity } from '../text/number.ts';
import type { Known } from './known.ts';
import { type SiteTables, statusInForce } from './site-tables.ts';

/** Dimensions and code factors of a gasket in force, m and Pa; null is not known. */
export interface GasketValues {
  readonly contactInside: Known<number> | null;
  readonly contactOutside: Known<number> | null;
  readonly pitchDiameter: Known<number> | null;
  readonly ringWidth: Known<number> | null;
  readonly factorM: Known<number> | null;
  readonly stressY: Known<number> | null;
}

/**
 * Fills what a gasket leaves blank from the gasket standard of its flange and from the code's table of factors; what was
 * entered stays in force.
 *
 * @param gasket gasket as stored; without its kind no table is read
 * @param flange flange it sits in; a gasket of a further place in a series has none
 * @returns values with origin, source and the trust of the table row
 * @example gasketValues({ ...data.gasket, kind: 'spiral wound' }, data.flange).contactOutside?.value // 0.2637
 * @source ASME B16.20, ASME B16.21, EN 1514-1, ASME BPVC VIII-1 table 2-5.1, as `core/reference` holds them
 */
export function gasketValues(gasket: GasketData, flange: JointData['flange'] | null): GasketValues {
  const contact = standardContact(gasket.kind, flange);
  const ring = standardRing(gasket.kind, flange);
  const factors = gasket.codeType === null ? null : gasketFactors(gasket.codeType);
  const source = gasket.source || 'joint data';
  const pick = (own: { readonly si: number } | null, table: TableValue | null) =>
    own === null ? fromTable(table) : entered(own.si, source);
  return {
    contactInside: pick(gasket.contactInside, contact?.inside ?? null),
    contactOutside: pick(gasket.contactOutside, contact?.outside ?? null),
    pitchDiameter: pick(gasket.pitchDiameter, ring?.pitchDiameter ?? null),
    ringWidth: pick(gasket.ringWidth, ring?.width ?? null),
    factorM: pick(gasket.factorM, factors?.factor ?? null),
    stressY: pick(gasket.stressY, factors?.seating ?? null),
  };
}

function standardContact(kind: GasketData['kind'], flange: JointData['flange'] | null): ContactRing | null {
  if (flange === null || flange.kind !== 'standard' || kind === null || kind === 'ring joint') return null;
  return contactRing(kind, flange);
}

function standardRing(kind: GasketData['kind'], flange: JointData['flange'] | null) {
  if (kind !== 'ring joint' || flange === null || flange.kind !== 'standard') return null;
  if (flange.standard !== 'ASME B16.5' || flange.facing !== 'ring joint') return null;
  const number = ringOfFlange(flange.size, flange.rating);
  return number === null ? null : ringGasket(number.number);
}

function entered(value: number, source: string): Known<number> {
  return { value, origin: 'entered', source, status: null, note: '' };
}

/**
 * A value of a shipped table as it stands in force.
 *
 * @param table value of a shipped table; null for none
 * @returns the value with its origin and what of it is to be confirmed; null for none
 * @example fromTable(hubDiameter('ASME B16.5', '8', '300'))?.origin // 'standard'
 * @source rule of this program
 */
export function fromTable(table: TableValue | null): Known<number> | null {
  if (table === null) return null;
  const { value, source, status, note } = table;
  return { value, origin: 'standard', source, status, note, cells: cellsToConfirm([table]) };
}

/**
 * Lines of the joint page about its first gasket.
 *
 * @param data joint as stored
 * @param site what the site's people confirmed
 * @returns every value with text, origin and source; none without a gasket
 * @example gasketLines(data, NO_SITE_TABLES)[0]?.name // 'Gasket, inside of the sealing element'
 * @source the tables of `core/reference`
 */
export function gasketLines(
  { gasket, flange }: Pick<JointData, 'gasket' | 'flange'>,
  site: SiteTables,
): ResolvedValue[] {
  if (gasket === null) return [];
  const values = gasketValues(gasket, flange);
  const length = (si: number) => showQuantity(si, 'mm', 5);
  const lines: [string, Known<number> | null, (si: number) => string][] =
    gasket.kind === 'ring joint'
      ? [
          ['Gasket, pitch diameter of the ring', values.pitchDiameter, length],
          ['Gasket, width of the ring', values.ringWidth, length],
        ]
      : [
          ['Gasket, inside of the sealing element', values.contactInside, length],
          ['Gasket, outside of the sealing element', values.contactOutside, length],
        ];
  lines.push(
    ['Gasket factor m of the code', values.factorM, (si) => showQuantity(si, 'one')],
    ['Seating stress y of the code', values.stressY, (si) => showQuantity(si, 'MPa')],
  );
  return lines.map(([name, known, text]) => ({
    name,
    text: known === null ? null : text(known.value),
    si: known?.value ?? null,
    origin: known?.origin ?? 'entered',
    source: known?.source ?? '',
    status: known === null ? null : statusInForce(site, known),
  }));
}
