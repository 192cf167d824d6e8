import type { RatingRow } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import type { Raised } from '../findings/finding.ts';
import type { InputGap } from '../findings/outcome.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { fromTable } from '../joint/gasket-values.ts';
import { ratingAt } from '../reference/ratings.ts';
import type { TableValue } from '../reference/table-value.ts';
import { showQuantity } from '../text/number.ts';
import type { Unit } from '../units/units.ts';
import { type TableUse, tableFindings } from './check-table-values.ts';
import type { CardInput } from './input.ts';
import { NO_WORKINGS, notChecked, type Section } from './section.ts';
import { number, result, words } from './working.ts';

/** A pressure test of the system goes up to 1.5 times the rating at 38 °C. */
const TEST = { factor: 1.5, temperature: 38 } as const;

/**
 * Holds the pressure cases against the rating of an ASME B16.5 flange.
 *
 * Equation: p ≤ rating(material group, class, T); test p ≤ 1.5·rating(38 °C).
 * @param input input of the card
 * @returns rows, findings and workings; empty for other flanges
 * @example ratingSection(complete).view[0]?.state // 'met'
 * @source ASME B16.5 (second-hand); test at 1.5 times the cold rating: from memory
 */
export function ratingSection(input: CardInput): Section<RatingRow[]> {
  const { flange, flangeMaterial, pressures } = input.joint.data;
  if (flange.kind !== 'standard' || flange.standard !== 'ASME B16.5') {
    return { view: [], findings: [], workings: NO_WORKINGS };
  }
  const rows: RatingRow[] = [];
  const findings: Raised[] = [];
  const workings: (() => Working)[] = [];
  const gaps: InputGap[] = [];
  const uses: TableUse[] = [];
  for (const name of ['design', 'operating', 'test'] as const) {
    const { pressure, temperature } = pressures[name];
    if (pressure === null) {
      gaps.push(NO_PRESSURE[name]);
      continue;
    }
    // The test is held against the cold rating whatever the medium's temperature.
    const at = name === 'test' ? TEST.temperature : (temperature?.si ?? null);
    const rated = flangeMaterial === null || at === null ? null : ratingAt(flangeMaterial, flange.rating, at);
    if (flangeMaterial === null) gaps.push(NO_MATERIAL);
    else if (at === null) gaps.push(NO_TEMPERATURE[name]);
    else if (rated === null) gaps.push(gap(`rating at ${showQuantity(at, 'degC')}`, NO_ROW));
    const limit = rated === null ? null : rated.value * (name === 'test' ? TEST.factor : 1);
    const state = limit === null ? 'not known' : pressure.si <= limit * (1 + 1e-9) ? 'met' : 'not met';
    const source = rated?.source ?? 'not known';
    rows.push({
      case: name,
      pressure: pressure.si,
      temperature: temperature?.si ?? null,
      rated: limit,
      state,
      source,
    });
    if (rated === null || limit === null || at === null) continue;
    uses.push({ what: 'Flange rating', field: 'pressures', known: fromTable(rated), rests: true });
    workings.push(() => working(name, rated, limit, at, pressure));
    if (state === 'not met') findings.push(exceeded(input, name, pressure, limit, at, source));
  }
  const about = {
    subject: input.joint.data.tag,
    place: atJoint(input.joint.id, 'pressures'),
    source: 'ASME B16.5 (second-hand)',
  };
  return {
    view: rows,
    findings: [...findings, ...notChecked('flange rating', gaps, about), ...tableFindings(input, uses)],
    workings: () => workings.map((spell) => spell()),
  };
}

const NO_ROW = 'no table has this group, class and temperature: take it from the standard';

const NO_MATERIAL = gap('material group of the flange', 'enter it: "1.1"');
const NO_PRESSURE = gapsByCase((name) => `pressure in the ${name} case`);
const NO_TEMPERATURE = gapsByCase((name) => `temperature in the ${name} case`);

function gapsByCase(named: (name: RatingRow['case']) => string): Record<RatingRow['case'], InputGap> {
  const of = (name: RatingRow['case']) => gap(named(name), 'enter it');
  return { design: of('design'), operating: of('operating'), test: of('test') };
}

function gap(name: string, remedy: string): InputGap {
  return { symbol: '', name, reason: 'missing', given: null, allowed: '', remedy };
}

function exceeded(
  input: CardInput,
  name: RatingRow['case'],
  pressure: { readonly si: number; readonly unit: Unit },
  limit: number,
  at: number,
  source: string,
): Raised {
  return raise(
    'flange_rating_exceeded',
    () => ({
      case: name,
      pressure: showQuantity(pressure.si, pressure.unit),
      rated: showQuantity(limit, pressure.unit),
      temperature: showQuantity(at, 'degC'),
    }),
    {
      severity: 'refusal',
      subject: input.joint.data.tag,
      place: atJoint(input.joint.id, 'pressures'),
      source,
      value: pressure.si,
      limit,
      unit: pressure.unit,
    },
  );
}

function working(
  name: RatingRow['case'],
  rated: TableValue,
  limit: number,
  at: number,
  pressure: { readonly unit: Unit },
): Working {
  return {
    of: 'rating',
    title: `Rating of the flange in the ${name} case`,
    relation:
      name === 'test'
        ? 'pmax = 1.5 · rating at 38 °C'
        : 'pmax from the table, linear between its temperatures',
    inputs: [
      number('', 'rating', rated.value, pressure.unit, 'standard', rated.source),
      number('T', 'temperature', at, 'degC', name === 'test' ? 'standard' : 'entered', 'joint data'),
      words('', 'trust of the row', rated.note || rated.status, 'standard', rated.sources),
    ],
    result: result('pmax', 'largest pressure', limit, pressure.unit),
    source:
      name === 'test' ? 'ASME B16.5, 2.6 (from memory), on the table’s rating' : 'ASME B16.5 (second-hand)',
  };
}
