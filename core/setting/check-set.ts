import type { Raised } from '../findings/finding.ts';
import { atSettings, atTool, raise } from '../findings/raise.ts';
import { describeTool } from '../text/describe.ts';
import { showQuantity } from '../text/number.ts';
import { READABLE, scalePlace } from '../tools/gauge.ts';
import { hoseLifeEnds } from '../tools/hose.ts';
import type { RatedPart } from '../tools/rating.ts';
import { UNITS } from '../units/units.ts';
import type { Dialled, Hydraulics } from './hydraulics.ts';
import type { AnyTool, CardInput, ToolOnRegister, Wrench } from './input.ts';
import { pressureUnit, torqueUnit } from './show.ts';

const SLACK = 1 + 1e-9;

/**
 * Every part of the set, in the order of the chain.
 *
 * @param input set
 * @returns tools of the register
 * @example chosenTools(input).length // 5
 * @source rule of this program
 */
export function chosenTools({ set }: Pick<CardInput, 'set'>): AnyTool[] {
  const tools: (AnyTool | null)[] = [set.pump, set.gauge, ...set.couplers, ...toolsOf(set)];
  for (const wrench of set.further) tools.push(...toolsOf(wrench));
  tools.push(set.counterhold);
  return tools.filter((tool) => tool !== null);
}

function toolsOf({ hoses, drive, cassette, reducers }: Wrench): (AnyTool | null)[] {
  return [...hoses, drive, cassette, ...reducers];
}

/**
 * Names a part of the set with its number and what it is rated for.
 *
 * @param tool tool of the register
 * @returns short text
 * @example partText(set.cassette).startsWith('cassette C-11') // true
 * @source rule of this program
 */
export function partText(tool: AnyTool): string {
  return `${tool.data.properties.class} ${tool.data.number} (${describeTool(tool.data.properties)})`;
}

/**
 * Looks at every part of the set: there, in use, known.
 *
 * @param input input of the card
 * @returns findings; none when nothing stands against it
 * @example checkParts({ ...input, set: { ...input.set, pump: null } }).length > 0 // true
 * @source rule of this program
 */
export function checkParts(input: CardInput): Raised[] {
  const { set } = input;
  const absent = absentOf(set, '', '');
  if (set.pump === null) absent.push(['pump', 'pumpId']);
  if (set.gauge === null) absent.push(['gauge', 'gaugeId']);
  set.further.forEach((wrench, at) => {
    absent.push(...absentOf(wrench, ` of wrench ${at + 2}`, `further.${at}.`));
  });
  return [
    ...absent.map(([part, field]) =>
      raise('part_missing', () => ({ part }), {
        severity: 'refusal',
        subject: part,
        place: atSettings(field),
        source: 'the set as chosen',
      }),
    ),
    ...chosenTools(input).flatMap(checkCustody),
    ...(hoseAgeByRule(input) ? [] : hosesOf(input).flatMap((hose) => hoseAge(hose, input.endsOn))),
  ];
}

function absentOf({ drive, cassette, hoses }: Wrench, whose: string, at: string): [string, string][] {
  const absent: [string, string][] = [];
  if (drive === null) absent.push([`drive unit${whose}`, `${at}driveId`]);
  if (cassette === null) absent.push([`cassette${whose}`, `${at}cassetteId`]);
  // A hose that nobody named may be rated for anything: of all unknown ratings the most dangerous one.
  if (hoses.length === 0) absent.push([`hose${whose}`, `${at}hoseIds`]);
  return absent;
}

/** A rule of the site for the age of hoses stands before the common one. */
function hoseAgeByRule({ toolRoom: { rules } }: CardInput): boolean {
  return rules.some((rule) => rule.class === 'hose' && rule.hoseAgeMonths !== null);
}

function hosesOf({ set }: CardInput): readonly ToolOnRegister<'hose'>[] {
  return set.further.length === 0 ? set.hoses : [set, ...set.further].flatMap(({ hoses }) => hoses);
}

function hoseAge(hose: ToolOnRegister<'hose'>, endsOn: string): Raised[] {
  const { madeOn } = hose.data.properties;
  const until = madeOn === null ? null : hoseLifeEnds(madeOn);
  if (until !== null && endsOn <= until) return [];
  return [
    raise(
      'hose_age',
      () => ({
        hose: partText(hose),
        made: madeOn === null || until === null ? null : { on: madeOn, until },
        endsOn,
      }),
      {
        severity: 'warning',
        subject: hose.data.number,
        place: atTool(hose, 'madeOn'),
        source: 'DIN 20066:2002-10 (second-hand)',
        value: madeOn,
        limit: until,
      },
    ),
  ];
}

/**
 * Says when a tool is not in the tool room, or barred.
 *
 * @param tool tool of the register
 * @returns one finding, or none for an available tool
 * @example checkCustody(input.set.drive).length // 0
 * @source custody as the register has it
 */
export function checkCustody(tool: AnyTool): Raised[] {
  const { status, number } = tool.data;
  if (status === 'available') return [];
  const facts = { part: partText(tool), status };
  const about = { subject: number, place: atTool(tool, 'status'), source: 'tool register', value: status };
  if (status === 'quarantined' || status === 'scrapped') {
    return [raise('tool_barred', () => facts, { ...about, severity: 'refusal' })];
  }
  const severity = status === 'issued' ? 'note' : 'warning';
  return [raise('tool_not_available', () => facts, { ...about, severity })];
}

/**
 * Holds pressure and torque of the job against the rating of every part.
 *
 * @param input input of the card
 * @param parts parts of the set with their ratings
 * @param torque T, N·m, at least 0, or null when not known
 * @param pressure p, Pa, at least 0, or null when not known
 * @returns findings; none when nothing stands against it
 * @example checkRatings(input, parts, 2000, 695e5)[0]?.severity // 'refusal'
 * @source lowest-rated part governs: common practice
 */
export function checkRatings(
  input: CardInput,
  parts: readonly RatedPart[],
  torque: number | null,
  pressure: number | null,
): Raised[] {
  const findings: Raised[] = [];
  for (const { tool, torque: ratedTorque, pressure: ratedPressure } of parts) {
    const about = { subject: tool.data.number, source: 'rating on the tool register' };
    if (ratedTorque === null) {
      findings.push(
        raise('rating_unknown', () => ({ part: partText(tool) }), {
          ...about,
          severity: 'warning',
          place: atTool(tool, 'ratedTorque'),
        }),
      );
    }
    if (typeof ratedTorque === 'number' && torque !== null && torque > ratedTorque * SLACK) {
      const unit = torqueUnit(input);
      findings.push(
        raise(
          'torque_above_rating',
          () => ({
            part: partText(tool),
            torque: showQuantity(torque, unit),
            rating: showQuantity(ratedTorque, unit),
          }),
          {
            ...about,
            severity: 'refusal',
            place: atSettings('tools'),
            value: torque,
            limit: ratedTorque,
            unit,
          },
        ),
      );
    }
    const isGauge = tool.data.properties.class === 'gauge';
    if (
      !isGauge &&
      ratedPressure !== null &&
      ratedPressure !== undefined &&
      pressure !== null &&
      pressure > ratedPressure * SLACK
    ) {
      const unit = pressureUnit(input);
      findings.push(
        raise(
          'pressure_above_rating',
          () => ({
            part: partText(tool),
            pressure: showQuantity(pressure, unit),
            rating: showQuantity(ratedPressure, unit),
          }),
          {
            ...about,
            severity: 'refusal',
            place: atSettings('tools'),
            value: pressure,
            limit: ratedPressure,
            unit,
          },
        ),
      );
    }
  }
  return findings;
}

/**
 * Says when the pressure lies where the gauge reads badly or not at all.
 *
 * @param input input of the card
 * @param hydraulics chosen set as it stands on the job’s first day
 * @param pressure p, Pa, at least 0, or null when not known
 * @returns findings; none when nothing stands against it
 * @example checkScale(input, hydraulics, 260e5).length // 0
 * @source READABLE: common practice
 */
export function checkScale(input: CardInput, { scale }: Hydraulics, pressure: number | null): Raised[] {
  const { gauge } = input.set;
  if (scale === null || gauge === null || pressure === null) return [];
  const place = scalePlace(pressure, scale);
  if (place === 'readable') return [];
  const facts = {
    pressure: showQuantity(pressure, scale.unit),
    scale: showQuantity(scale.scaleMax, scale.unit),
  };
  const about = {
    subject: gauge.data.number,
    place: atSettings('gaugeId'),
    value: pressure,
    unit: scale.unit,
  };
  if (place === 'beyond') {
    return [
      raise('above_gauge_scale', () => facts, {
        ...about,
        severity: 'refusal',
        source: 'scale of the gauge',
        limit: scale.scaleMax,
      }),
    ];
  }
  const limit = scale.scaleMax * (place === 'low' ? READABLE.low : READABLE.high);
  return [
    raise('gauge_scale_end', () => ({ ...facts, end: place }), {
      ...about,
      severity: 'warning',
      source: 'common practice: 20 to 90 % of the scale',
      limit,
    }),
  ];
}

/**
 * Says when the gauge has a second unit on its face: a number read on the wrong ring is another pressure.
 *
 * @param input input of the card
 * @returns one warning, or none
 * @example checkFace(input).length // 0
 * @source common practice: one unit on the face
 */
export function checkFace({ set: { gauge } }: CardInput): Raised[] {
  const { alsoPrinted, scaleMax } = gauge?.data.properties ?? { alsoPrinted: null, scaleMax: null };
  if (gauge === null || alsoPrinted === null || scaleMax === null || alsoPrinted === scaleMax.unit) return [];
  const units = { unit: UNITS[scaleMax.unit].label, also: UNITS[alsoPrinted].label };
  return [
    raise('gauge_second_unit', () => ({ gauge: partText(gauge), ...units }), {
      severity: 'warning',
      subject: gauge.data.number,
      place: atSettings('gaugeId'),
      source: 'common practice: one unit on the face',
      value: units.also,
      limit: units.unit,
    }),
  ];
}

/** Share of the torque that rounding to the mark may cost before it is worth a note, and before it is a warning. */
const ROUNDING = { note: 0.02, warning: 0.05 } as const;

/**
 * Says how far the mark’s torque lies from the one that was wanted; a mark of zero can’t be worked with at all.
 *
 * @param input input of the card
 * @param wanted torque wanted, N·m, above 0, or null when not known
 * @param dialled mark with the torque it gives, or null
 * @returns findings; none when nothing stands against it
 * @example checkRounding(input, 383.4, null).length // 0
 * @source rule of this program
 */
export function checkRounding(input: CardInput, wanted: number | null, dialled: Dialled | null): Raised[] {
  const { gauge } = input.set;
  const given = dialled?.torque ?? null;
  if (gauge === null || wanted === null || given === null || wanted <= 0) return [];
  const share = Math.abs(given - wanted) / wanted;
  const atZero = dialled?.dial?.value === 0;
  if (share <= ROUNDING.note && !atZero) return [];
  const unit = torqueUnit(input);
  return [
    raise(
      'rounding_large',
      () => ({
        wanted: showQuantity(wanted, unit),
        given: showQuantity(given, unit),
        share: showQuantity(share, 'percent', 2),
      }),
      {
        severity: atZero ? 'refusal' : share > ROUNDING.warning ? 'warning' : 'note',
        subject: gauge.data.number,
        place: atSettings('gaugeId'),
        source: 'threshold of this program: 2 %, 5 %',
        value: given,
        limit: wanted,
        unit,
      },
    ),
  ];
}
