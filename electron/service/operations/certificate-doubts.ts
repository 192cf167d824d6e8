import { linePoints } from '../../../core/calibration/certificate-fit.ts';
import { type EntryDoubt as Doubt, entryDoubts } from '../../../core/calibration/entry-check.ts';
import { leaveOneOut } from '../../../core/calibration/leave-one-out.ts';
import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import type { CertificateData, Measured, ToolProperties } from '../../../core/contract/tool.ts';
import { doubtWords } from '../../../core/text/calibration-words.ts';
import type { Unit } from '../../../core/units/units.ts';

/** Chance of calling a point of a good certificate far from the line: common practice. */
export const OUTLIER_RISK = 0.05;

/** What looks wrong in a certificate as entered, of its points as left and as found; refusals first. */
export function certificateDoubts(
  data: CertificateData,
  properties: ToolProperties,
  today: string,
): EntryDoubt[] {
  const doubts = [
    ...doubtsOf(data.measured, 'measured', data.calibratedOn, properties, today),
    // The day is the certificate's own; it is not told twice.
    ...(data.asFound === null
      ? []
      : doubtsOf(data.asFound, 'as found', data.calibratedOn, properties, today).filter(
          ({ code }) => code !== 'dated in the future',
        )),
  ];
  return [...doubts.filter(({ refuses }) => refuses), ...doubts.filter(({ refuses }) => !refuses)];
}

function doubtsOf(
  measured: Measured,
  series: EntryDoubt['series'],
  calibratedOn: string,
  properties: ToolProperties,
  today: string,
): EntryDoubt[] {
  const { points, units, rating } = entered(measured, properties);
  const doubts = entryDoubts({ points, calibratedOn, today, torqueUnit: units.torque, rating });
  const told = doubts.filter(({ kind }) => asks(measured, kind));
  return [
    ...told.map(
      (doubt): EntryDoubt => ({
        code: doubt.kind,
        refuses: doubt.refuses,
        point: doubt.point,
        series,
        text: `${series === 'as found' ? 'as found, ' : ''}${doubtWords(doubt, units)}`,
      }),
    ),
    ...farPoints(measured, series),
  ];
}

/** A gauge and a hand torque wrench are held to their own points, which need no line. */
function asks({ kind }: Measured, doubt: Doubt['kind']): boolean {
  if (kind === 'pressure-torque') return true;
  return doubt === 'dated in the future' || (doubt === 'torque in another unit' && kind === 'hand torque');
}

interface Entered {
  readonly points: Parameters<typeof entryDoubts>[0]['points'];
  readonly units: { readonly pressure: Unit; readonly torque: Unit };
  readonly rating: { readonly torque: number; readonly pressure: number } | null;
}

/** Points of whichever certificate as abscissa and ordinate; a hand torque wrench should give what it is set to. */
function entered(measured: Measured, properties: ToolProperties): Entered {
  switch (measured.kind) {
    case 'pressure-torque':
      return {
        points: measured.points.map(({ pressure, torque, direction }) => ({
          pressure: pressure.si,
          torque: torque.si,
          direction,
        })),
        units: {
          pressure: measured.points[0]?.pressure.unit ?? 'bar',
          torque: measured.points[0]?.torque.unit ?? 'N.m',
        },
        rating:
          properties.class === 'drive unit'
            ? { torque: properties.ratedTorque.si, pressure: properties.ratedPressure.si }
            : null,
      };
    case 'hand torque':
      return {
        points: measured.points.map(({ set, reference }) => ({
          pressure: set.si,
          torque: reference.si,
          direction: 'up',
        })),
        units: {
          pressure: measured.points[0]?.set.unit ?? 'N.m',
          torque: measured.points[0]?.reference.unit ?? 'N.m',
        },
        rating:
          properties.class === 'hand torque wrench'
            ? { torque: properties.most.si, pressure: properties.most.si }
            : null,
      };
    case 'gauge':
      return { points: [], units: { pressure: 'bar', torque: 'N.m' }, rating: null };
  }
}

function farPoints(measured: Measured, series: EntryDoubt['series']): EntryDoubt[] {
  if (measured.kind !== 'pressure-torque') return [];
  const found = leaveOneOut(linePoints(measured), OUTLIER_RISK).value;
  if (found === null) return [];
  return found.points
    .filter(({ outlying }) => outlying)
    .map(({ index }): EntryDoubt => {
      const point = measured.points[index];
      const at = point === undefined ? '' : ` (${point.torque.text} at ${point.pressure.text})`;
      const prefix = series === 'as found' ? 'as found, ' : '';
      const text = `${prefix}point ${index + 1}${at} lies far from the line through the others`;
      return { code: 'far from the line', refuses: false, point: index, series, text };
    });
}
