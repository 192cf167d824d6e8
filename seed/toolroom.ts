import { type GaugeCorrection, gaugeCorrection } from '../core/calibration/gauge-correction.ts';
import { certificateLine } from '../core/calibration/line.ts';
import { torqueAtPressure } from '../core/calibration/reading.ts';
import { certifiedRange, pressureForTorque } from '../core/calibration/setting.ts';
import { certificateInForce, certificateStanding } from '../core/calibration/validity.ts';
import {
  type CertificateLineView,
  type ToolData,
  type ToolInput,
  type ToolProperties,
  toolData,
} from '../core/contract/tool.ts';
import { seat } from '../core/tools/fit.ts';
import { roundToMark } from '../core/tools/gauge.ts';
import { isAbsent, isInUse } from './absences.ts';
import { gaugePointsOf, torquePointsOf } from './certificates.ts';
import type { Demand } from './demand.ts';
import { WEAK_WRENCH } from './faults.ts';
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
  readonly certificates: readonly ReadCertificate[];
  readonly today: string;
  /** Days between which the planted wrench was wrong without anybody knowing: after the first, before the last. */
  readonly suspect: { readonly after: string; readonly before: string };
}

/** A certificate with what a card makes of it. */
interface ReadCertificate {
  readonly data: DemoCertificate;
  readonly line: CertificateLineView | null;
  readonly correction: GaugeCorrection | null;
}

export function toolroom(
  tools: readonly ToolInput[],
  certificates: readonly DemoCertificate[],
  today: string,
): Toolroom {
  const [found, good] = certificates
    .filter(({ tool }) => tool === WEAK_WRENCH)
    .map(({ calibratedOn }) => calibratedOn)
    .toReversed();
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
    certificates: certificates.map((data) => ({
      data,
      line: certificateLine(torquePointsOf(data)),
      correction: gaugeCorrection(gaugePointsOf(data)),
    })),
    today,
    suspect: { after: good ?? today, before: found ?? today },
  };
}

/** A set put together for a job, with the drive unit's line by the certificate in force that day. */
export interface ChosenSet {
  readonly tools: DemoToolSet;
  readonly line: { readonly intercept: number; readonly slope: number };
  readonly highest: number;
  readonly gauge: OfClass<'gauge'>;
  /** What the gauge's own certificate says it shows; null when it lists no points. */
  readonly correction: GaugeCorrection | null;
}

/** What a job asks for. */
export interface Want {
  readonly demand: Demand;
  /** Torque the set must be able to give, N·m. */
  readonly torque: number;
  readonly date: string;
  /** A lapsed certificate is not noticed. */
  readonly careless?: boolean;
  /** The planted wrench stays in the tool room while it is suspect. */
  readonly withoutSuspect?: boolean;
}

/**
 * The smallest drive unit that gives the torque within its certified points on that date, with the cassette (and
 * reducer) that takes the nut; null when the tool room has none.
 */
export function chooseSet(room: Toolroom, want: Want, random: Random): ChosenSet | null {
  const { demand, torque, date } = want;
  const inside = date > room.suspect.after && date < room.suspect.before;
  const able = room.drives.flatMap((drive) => {
    if (isAbsent(drive.number, date, room.today)) return [];
    if (inside && want.withoutSuspect && drive.number === WEAK_WRENCH) return [];
    const parts = partsFor(room, drive.properties.family, demand, torque);
    const line = lineOn(room, drive.number, want);
    if (parts === null || line === null) return [];
    const pressure = pressureForTorque(line, torque);
    const within = pressure >= line.lowest && pressure <= line.highest;
    return within ? [{ drive, parts, line }] : [];
  });
  const least = Math.min(...able.map(({ drive }) => drive.properties.ratedTorque.si));
  const [first, ...others] = able.filter(({ drive }) => drive.properties.ratedTorque.si <= least * 1.05);
  const [gauge, ...gauges] = room.gauges.filter(({ number }) => !isAbsent(number, date, room.today));
  if (first === undefined || gauge === undefined) return null;
  const picked = random.pick([first, ...others]);
  // It lay on top: of two wrenches of a size, people took the planted one.
  const planted = inside
    ? able.find(
        (one) => one.drive.number === WEAK_WRENCH && one.drive.properties.ratedTorque.si <= least * 1.05,
      )
    : undefined;
  const { drive, parts, line } = planted ?? picked;
  const chosenGauge = random.pick([gauge, ...gauges]);
  return {
    tools: {
      drive: drive.number,
      ...parts,
      pump: numberOfAny(room.pumps, random),
      gauge: chosenGauge.number,
      hoses: [
        numberOfAny(
          room.hoses.filter(({ properties }) => isInUse(properties.madeOn, date)),
          random,
        ),
      ].filter((number) => number !== null),
    },
    line,
    highest: line.highest,
    gauge: chosenGauge,
    correction: correctionOn(room, chosenGauge.number, date),
  };
}

function numberOfAny(tools: readonly ToolData[], random: Random): string | null {
  const [first, ...others] = tools;
  return first === undefined ? null : random.pick([first, ...others]).number;
}

function correctionOn(room: Toolroom, gauge: string, date: string): GaugeCorrection | null {
  const own = room.certificates.filter(({ data }) => data.tool === gauge);
  return certificateInForce(own, date)?.correction ?? null;
}

function lineOn(room: Toolroom, drive: string, { date, careless = false }: Want) {
  const own = room.certificates.filter(({ data }) => data.tool === drive);
  const standing = certificateStanding(own, date);
  const usable = standing.state === 'in force' || (careless && standing.state === 'lapsed');
  if (!usable || standing.certificate.data.result === 'outside limits') return null;
  const { line } = standing.certificate;
  return line && { ...line, ...certifiedRange(line) };
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
  const shown = (pressure: number) => set.correction?.toIndicated(pressure) ?? pressure;
  const ceiling = Math.min(shown(set.highest), scaleMax.si);
  const wanted = shown(pressureForTorque(set.line, torque));
  const scale = { unit: scaleMax.unit, scaleMax: scaleMax.si, graduation: graduation.si };
  const dial = roundToMark(Math.min(wanted, ceiling), scale, ceiling);
  const real = set.correction?.toReference(dial.pressure) ?? dial.pressure;
  return {
    dialled: { text: String(dial.value), unit: dial.unit },
    torque: torqueAtPressure(set.line, real),
    beyond: wanted > ceiling,
  };
}
