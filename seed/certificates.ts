import type { ToolInput } from '../core/contract/tool.ts';
import { enter } from '../core/units/entered.ts';
import { addDays, addYears } from './calendar.ts';
import {
  DRIFT_PER_YEAR,
  DRIFTING_WRENCH,
  LAPSED_WRENCH,
  LATE_BY_DAYS,
  LATE_WRENCH,
  WEAK_BY,
  WEAK_WRENCH,
} from './faults.ts';
import { HIRED_WRENCH } from './further-tools.ts';
import { type Random, randomStream } from './random.ts';
import { toolsOf } from './tools.ts';
import type { DemoCertificate } from './types.ts';

/** Calibrations each tool has behind it: enough to cover every event of the plant. */
const CALIBRATIONS = 5;
/** Tools come back this many days before the last certificate lapses, so that the next one joins on. */
const EARLY_DAYS = 3;
const POINTS = 10;

type Drive = ReturnType<typeof toolsOf<'drive unit'>>[number];
type Gauge = ReturnType<typeof toolsOf<'gauge'>>[number];
type HandWrench = ReturnType<typeof toolsOf<'hand torque wrench'>>[number];

/** Days since the newest calibration. */
const LAST_CALIBRATION: Readonly<Record<string, number>> = {
  'W-01': 60,
  'W-02': 19,
  'W-03': 90,
  'W-04': 210,
  'W-05': 366,
  'W-06': 150,
  'W-07': 300,
  'W-08': 30,
  'G-01': 45,
  'G-02': 120,
  'G-03': 200,
  'G-04': 75,
  'G-05': 260,
  'T-01': 80,
  'T-02': 350,
  'T-03': 170,
};

/** Parts a drive unit was calibrated with; none for the others: their certificates name only the drive unit. */
const CALIBRATED_WITH: Readonly<Record<string, readonly string[]>> = {
  'W-02': ['K-06', 'R-01'],
  'W-04': ['K-09'],
  'W-05': ['K-12'],
  'W-07': ['K-15'],
};

/** Certificates of every drive unit, gauge and hand torque wrench, oldest first. */
export function demoCertificates(
  tools: readonly ToolInput[],
  today: string,
  seed: number,
): DemoCertificate[] {
  const drives = toolsOf(tools, 'drive unit').flatMap((drive) =>
    driveCertificates(drive, today, randomStream(seed, `certificates ${drive.number}`)),
  );
  const gauges = toolsOf(tools, 'gauge').flatMap((gauge) =>
    gaugeCertificates(gauge, today, randomStream(seed, `certificates ${gauge.number}`)),
  );
  const hand = toolsOf(tools, 'hand torque wrench').flatMap((wrench) =>
    handCertificates(wrench, today, randomStream(seed, `certificates ${wrench.number}`)),
  );
  return [...drives, ...gauges, ...hand].sort((a, b) => (a.calibratedOn < b.calibratedOn ? -1 : 1));
}

/** Dates of a tool's calibrations, oldest first. */
export function calibrationDates(number: string, today: string): string[] {
  const lapsedYesterday = addDays(addYears(addDays(today, -1), -1), 1);
  const last =
    number === LAPSED_WRENCH ? lapsedYesterday : addDays(today, -(LAST_CALIBRATION[number] ?? 100));
  // Of a hired tool the site has only the paper that came with it.
  const calibrations = number === HIRED_WRENCH ? 1 : CALIBRATIONS;
  return Array.from({ length: calibrations }, (_, index) => {
    const age = calibrations - 1 - index;
    const late = number === LATE_WRENCH && age > 0 ? LATE_BY_DAYS : 0;
    return addDays(addYears(last, -age), age * EARLY_DAYS - late);
  });
}

function heading(tool: ToolInput, calibratedOn: string) {
  return {
    number: `DC-${calibratedOn.slice(0, 7)}-${tool.number}`,
    tool: tool.number,
    withTools: CALIBRATED_WITH[tool.number] ?? [],
    laboratory: 'Invented calibration laboratory',
    calibratedOn,
    validUntil: addDays(addYears(calibratedOn, 1), -1),
    validityBasis: 'invented site rule: 12 months',
    method: 'invented laboratory method CM-02, rising load',
    environment: {
      temperature: { text: '21', unit: 'degC' } as const,
      humidity: { text: '46', unit: 'percent' } as const,
    },
    remarks: 'Invented demo data.',
  };
}

function driveCertificates(drive: Drive, today: string, random: Random): DemoCertificate[] {
  const ownError = 1 + 0.012 * random.normal();
  const dates = calibrationDates(drive.number, today);
  let given = ownError;
  return dates.flatMap((calibratedOn, index): DemoCertificate[] => {
    const drifting = drive.number === DRIFTING_WRENCH;
    const yearly = drifting ? (1 - DRIFT_PER_YEAR) ** index : 1 + 0.003 * random.normal();
    const before = given;
    given = ownError * yearly;
    const certificate: DemoCertificate = {
      ...heading(drive, calibratedOn),
      decisionRule: { limit: { text: '4', unit: 'percent' }, guardBand: index % 2 === 1 },
      result: 'within limits',
      condition: drifting ? 'as found' : 'as left',
      measured: torquePoints(drive, given, random),
    };
    const newest = index === dates.length - 1;
    if (drive.number === LAPSED_WRENCH && newest) return [{ ...certificate, validUntil: addDays(today, -1) }];
    if (drive.number !== WEAK_WRENCH || !newest) return [certificate];
    return [
      {
        ...certificate,
        asFound: torquePoints(drive, before, random, 1 - WEAK_BY),
        remarks: 'Invented demo data. Found 8 % low: worn seals; replaced, adjusted and measured again.',
      },
    ];
  });
}

/** Points up to the rating; `share` is what is left of the torque where the wrench had grown weak. */
function torquePoints(drive: Drive, factor: number, random: Random, share = 1): DemoCertificate['measured'] {
  const { ratedPressure, ratedTorque } = drive.properties;
  const [pressure, torque] = [Number(ratedPressure.text), Number(ratedTorque.text)];
  // The last step ends at the rating; steps of a tenth of it stand on whole tens of bar or hundreds of psi.
  const step = Math.ceil(pressure / POINTS / 10) * 10;
  const points = Array.from({ length: POINTS }, (_, index) => Math.min((index + 1) * step, pressure));
  return {
    kind: 'pressure-torque',
    points: points.map((at) => ({
      pressure: { text: String(at), unit: ratedPressure.unit },
      torque: {
        text: String(
          Math.round(share * torque * (factor * (at / pressure) - 0.005) * (1 + 0.001 * random.normal())),
        ),
        unit: ratedTorque.unit,
      },
      direction: 'up',
    })),
    expandedUncertainty: { text: '1', unit: 'percent' },
    coverageFactor: 2,
  };
}

function gaugeCertificates(gauge: Gauge, today: string, random: Random): DemoCertificate[] {
  const { scaleMax, graduation } = gauge.properties;
  const { unit } = scaleMax;
  const mark = Number(graduation.text);
  // One gauge's laboratory states a result without numbers, as happens.
  const listed = gauge.number === 'G-05' ? [] : [0.1, 0.25, 0.5, 0.75, 1];
  return calibrationDates(gauge.number, today).map((calibratedOn) => ({
    ...heading(gauge, calibratedOn),
    result: 'within limits',
    condition: 'as left',
    measured: {
      kind: 'gauge',
      points: listed.map((share) => {
        const indicated = share * Number(scaleMax.text);
        const reference = indicated + 0.2 * mark * random.normal();
        return {
          indicated: { text: String(indicated), unit },
          reference: { text: reference.toFixed(unit === 'psi' ? 0 : 1), unit },
        };
      }),
    },
  }));
}

function handCertificates(wrench: HandWrench, today: string, random: Random): DemoCertificate[] {
  const { least, most, torqueGraduation } = wrench.properties;
  const middle = String((Number(least.text) + Number(most.text)) / 2);
  return calibrationDates(wrench.number, today).map((calibratedOn) => ({
    ...heading(wrench, calibratedOn),
    decisionRule: { limit: { text: '4', unit: 'percent' }, guardBand: false },
    result: 'within limits',
    condition: 'as left',
    measured: {
      kind: 'hand torque',
      points: [least.text, middle, most.text].map((set) => ({
        set: { text: set, unit: 'N.m' },
        reference: {
          text: (Number(set) + 0.3 * Number(torqueGraduation.text) * random.normal()).toFixed(1),
          unit: 'N.m',
        },
      })),
    },
  }));
}

/** Points in SI, as the calibration line takes them. */
export function torquePointsOf(certificate: DemoCertificate) {
  if (certificate.measured.kind !== 'pressure-torque') return [];
  return certificate.measured.points.flatMap(({ pressure, torque, direction }) => {
    const [p, t] = [enter(pressure.text, pressure.unit), enter(torque.text, torque.unit)];
    return p && t ? [{ pressure: p.si, torque: t.si, direction }] : [];
  });
}

/** Points of a gauge in SI, as its correction takes them. */
export function gaugePointsOf(certificate: DemoCertificate) {
  if (certificate.measured.kind !== 'gauge') return [];
  return certificate.measured.points.flatMap(({ indicated, reference }) => {
    const [shown, real] = [enter(indicated.text, indicated.unit), enter(reference.text, reference.unit)];
    return shown && real ? [{ indicated: shown.si, reference: real.si }] : [];
  });
}
