import { certificateLine } from '../core/calibration/line.ts';
import { torqueAtPressure } from '../core/calibration/reading.ts';
import { pressureForTorque } from '../core/calibration/setting.ts';
import { certificateInForce } from '../core/calibration/validity.ts';
import { type ToolData, type ToolInput, type ToolProperties, toolData } from '../core/contract/tool.ts';
import { seat } from '../core/tools/fit.ts';
import { roundToMark } from '../core/tools/gauge.ts';
import { torquePointsOf } from './certificates.ts';
import type { Demand } from './demand.ts';
import type { Random } from './random.ts';
import type { DemoCertificate, DemoToolSet } from './types.ts';

type OfClass<C extends ToolProperties['class']> = ToolData & {
  readonly properties: Extract<ToolProperties, { class: C }>;
};

/** The demo's tools as the people of the plant see them: what is there, and what each certificate says. */
export interface Toolroom {
  readonly drives: readonly OfClass<'drive unit'>[];
  readonly cassettes: readonly OfClass<'cassette'>[];
  readonly reducers: readonly OfClass<'reducer'>[];
  readonly gauges: readonly OfClass<'gauge'>[];
  readonly pumps: readonly OfClass<'pump'>[];
  readonly hoses: readonly OfClass<'hose'>[];
  readonly certificates: readonly { readonly data: DemoCertificate }[];
}

export function toolroom(tools: readonly ToolInput[], certificates: readonly DemoCertificate[]): Toolroom {
  const parsed = tools.map((tool) => toolData.parse(tool));
  const of = <C extends ToolProperties['class']>(wanted: C) =>
    parsed.filter((tool): tool is OfClass<C> => tool.properties.class === wanted);
  return {
    drives: of('drive unit'),
    cassettes: of('cassette'),
    reducers: of('reducer'),
    gauges: of('gauge'),
    pumps: of('pump'),
    hoses: of('hose'),
    certificates: certificates.map((data) => ({ data })),
  };
}

/** A set put together for a job, with the drive unit's line by the certificate in force that day. */
export interface ChosenSet {
  readonly tools: DemoToolSet;
  readonly line: { readonly intercept: number; readonly slope: number };
  readonly lowest: number;
  readonly highest: number;
  readonly gauge: OfClass<'gauge'>;
}

/**
 * The smallest drive unit that gives the torque within its certified points on that date, with the cassette (and
 * reducer) that takes the nut; null when the tool room has none.
 */
export function chooseSet(
  room: Toolroom,
  demand: Demand,
  torque: number,
  date: string,
  random: Random,
): ChosenSet | null {
  const able = room.drives.flatMap((drive) => {
    const parts = partsFor(room, drive.properties.family, demand, torque);
    const line = lineOn(room, drive.number, date);
    if (parts === null || line === null) return [];
    const pressure = pressureForTorque(line, torque);
    const within = pressure >= line.lowest && pressure <= line.highest;
    return within ? [{ drive, parts, line }] : [];
  });
  const least = Math.min(...able.map(({ drive }) => drive.properties.ratedTorque.si));
  const [first, ...others] = able.filter(({ drive }) => drive.properties.ratedTorque.si <= least * 1.05);
  const [gauge, ...gauges] = room.gauges;
  if (first === undefined || gauge === undefined) return null;
  const { drive, parts, line } = random.pick([first, ...others]);
  const chosenGauge = random.pick([gauge, ...gauges]);
  return {
    tools: {
      drive: drive.number,
      ...parts,
      pump: numberOfAny(room.pumps, random),
      gauge: chosenGauge.number,
      hoses: [numberOfAny(room.hoses, random)].filter((number) => number !== null),
    },
    line,
    lowest: line.lowest,
    highest: line.highest,
    gauge: chosenGauge,
  };
}

function numberOfAny(tools: readonly ToolData[], random: Random): string | null {
  const [first, ...others] = tools;
  return first === undefined ? null : random.pick([first, ...others]).number;
}

function lineOn(room: Toolroom, drive: string, date: string) {
  const own = room.certificates.filter(({ data }) => data.tool === drive);
  const certificate = certificateInForce(own, date);
  if (certificate === null || certificate.data.result === 'outside limits') return null;
  const points = torquePointsOf(certificate.data);
  const line = certificateLine(points);
  if (line === null) return null;
  const pressures = points.map(({ pressure }) => pressure);
  return {
    intercept: line.intercept,
    slope: line.slope,
    lowest: Math.min(...pressures),
    highest: Math.max(...pressures),
  };
}

function partsFor(
  room: Toolroom,
  family: string,
  { nut }: Demand,
  torque: number,
): { cassette: string; reducers: string[] } | null {
  const fits = (tool: OfClass<'cassette' | 'reducer'>, hexagon: number) => {
    const { acrossFlats, looseness, ratedTorque } = tool.properties;
    const strong = ratedTorque === null || ratedTorque.si >= torque;
    return (
      strong && seat({ acrossFlats: acrossFlats.si, looseness: looseness?.si ?? null }, hexagon) === 'fits'
    );
  };
  const cassettes = room.cassettes.filter(({ properties }) => properties.family === family);
  const direct = cassettes.find((cassette) => fits(cassette, nut.acrossFlats));
  if (direct) return { cassette: direct.number, reducers: [] };
  for (const reducer of room.reducers.filter((each) => fits(each, nut.acrossFlats))) {
    const cassette = cassettes.find((each) => fits(each, reducer.properties.outerAcrossFlats.si));
    if (cassette) return { cassette: cassette.number, reducers: [reducer.number] };
  }
  return null;
}

/**
 * What a person dials for a torque on the set's gauge, to the nearest mark and never beyond what the set may stand, and
 * the torque the certificate then promises. `beyond`: the torque would have needed more.
 */
export function dialFor(set: ChosenSet, torque: number) {
  const { scaleMax, graduation } = set.gauge.properties;
  const ceiling = Math.min(set.highest, scaleMax.si);
  const wanted = pressureForTorque(set.line, torque);
  const scale = { unit: scaleMax.unit, scaleMax: scaleMax.si, graduation: graduation.si };
  const dial = roundToMark(Math.min(wanted, ceiling), scale, ceiling);
  return {
    dialled: { text: String(dial.value), unit: dial.unit },
    torque: torqueAtPressure(set.line, dial.pressure),
    beyond: wanted > ceiling,
  };
}
