import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { metricThread, type Thread, unifiedThread } from '../../core/bolting/thread.ts';
import { threadLimits } from '../../core/bolting/thread-limits.ts';
import { UNIFIED_THREADS } from '../../core/reference/asme-b1-1.ts';
import { METRIC_THREADS } from '../../core/reference/iso-261.ts';

/** A row of the second source: which thread, and its limits by column, in its own unit. */
interface Row {
  readonly name: string;
  readonly diameter: number;
  /** Threads per inch, or pitch in mm. */
  readonly step: number;
  readonly thread: Thread;
  readonly limit: (column: string) => number;
}

const UNIT = { inch: 0.0254, metric: 0.001 } as const;

function rowsOf(file: 'internal' | 'external', ...classes: readonly string[]): Row[] {
  const text = readFileSync(join(import.meta.dirname, 'files', `thread-limits-${file}.csv`), 'utf8');
  const [head = '', ...lines] = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const columns = head.split(',');
  return lines
    .map((line) => line.split(','))
    .filter(([class_]) => classes.includes(class_ ?? ''))
    .map((cells) => {
      const limit = (column: string) => Number(cells[columns.indexOf(column)]);
      const [diameter, step] = [limit('diameter'), limit('step')];
      const metric = cells[0]?.startsWith('6') ?? false;
      return {
        name: cells.slice(0, 3).join(' '),
        diameter,
        step,
        thread: metric ? metricThread(diameter, step) : unifiedThread(diameter, step),
        limit,
      };
    });
}

/** Largest deviation in the source's own unit, and where. Nothing compared is a fault, not a pass. */
function worst(rows: readonly Row[], deviation: (row: Row) => number): { by: number; at: string } {
  const found = rows.map((row) => ({ by: Math.abs(deviation(row)), at: row.name }));
  if (found.length === 0 || found.some(({ by }) => !Number.isFinite(by))) throw new Error('nothing compared');
  return found.reduce((most, one) => (one.by > most.by ? one : most));
}

const inUnit = (length: number, { thread }: Row) => length / UNIT[thread.system];
const limitsOf = ({ thread, name }: Row) => {
  const limits = threadLimits(thread);
  if (limits === null) throw new Error(`no limits for ${name}`);
  return limits;
};

const unifiedNuts = rowsOf('internal', '2B', '3B');
const metricNuts = rowsOf('internal', '6H');
const unifiedStuds = rowsOf('external', '2A');
const metricStuds = rowsOf('external', '6g');

/**
 * Two rows of the source contradict its other rows: M33x3.5 has the allowance of another pitch (0.032 mm, where M30x3.5
 * has 0.053 mm, and it depends on the pitch alone); M52x5 has a smaller tolerance than M48x5 of the same range.
 */
const contradictory = (row: Row) => ['6g 33 3.5', '6g 52 5'].includes(row.name);

describe('the shipped tables against a second source', () => {
  test('the source covers sizes of both, and no other', () => {
    expect([unifiedNuts, metricNuts, unifiedStuds, metricStuds].map(({ length }) => length)).toEqual([
      19, 35, 13, 44,
    ]);
    const unknown = [...unifiedNuts, ...unifiedStuds].filter(
      ({ diameter, step }) => !UNIFIED_THREADS.some(([, d, n]) => d === diameter && n === step),
    );
    const unknownMetric = [...metricNuts, ...metricStuds].filter(
      ({ diameter, step }) => !METRIC_THREADS.some(([, , d, p]) => d === diameter && p === step),
    );
    expect([...unknown, ...unknownMetric].map(({ name }) => name)).toEqual([]);
  });

  // The least pitch diameter of a nut's thread is the basic one, of the standards' rounding: 0.0001 in and 0.001 mm.
  test.each([
    ['unified', unifiedNuts, 0.000051],
    ['metric', metricNuts, 0.00051],
  ] as const)('pitch diameter d2 of %s threads', (_, rows, tolerance) => {
    expect(
      worst(rows, (row) => inUnit(row.thread.pitchDiameter, row) - row.limit('pitchMin')).by,
    ).toBeLessThan(tolerance);
  });

  /**
   * The least minor diameter of a nut's thread is D1 = d − 1.082532·P. Inch ones are printed to 0.001 in after a rounding
   * to 0.0001 in. The core's root diameter lies (1.299038 or 1.226869 − 1.082532)·P below it, so that it is held too.
   */
  test.each([
    ['unified', unifiedNuts, 1.299038, 0.00056],
    ['metric', metricNuts, 1.226869, 0.00051],
  ] as const)(
    'root diameter of %s threads, by the minor diameter D1 of their nuts',
    (_, rows, depth, tolerance) => {
      const minorMin = (row: Row) =>
        inUnit(row.thread.rootDiameter + (depth - 1.082532) * row.thread.pitch, row);
      expect(worst(rows, (row) => minorMin(row) - row.limit('minorMin')).by).toBeLessThan(tolerance);
    },
  );
});

describe('the relations for limits of size against a second source', () => {
  // The standard rounds the tolerance, and the limit again: one unit of the last place, 0.0001 in.
  test('2A: least major and pitch diameter of the stud', () => {
    const rows = unifiedStuds;
    expect(worst(rows, (row) => inUnit(limitsOf(row).majorMin, row) - row.limit('majorMin')).by).toBeLessThan(
      0.000101,
    );
    expect(worst(rows, (row) => inUnit(limitsOf(row).pitchMin, row) - row.limit('pitchMin')).by).toBeLessThan(
      0.000101,
    );
  });

  test('2B: largest pitch and minor diameter of the nut', () => {
    const rows = rowsOf('internal', '2B');
    expect(
      worst(rows, (row) => inUnit(limitsOf(row).nutPitchMax, row) - row.limit('pitchMax')).by,
    ).toBeLessThan(0.000101);
    expect(
      worst(rows, (row) => inUnit(limitsOf(row).nutMinorMax, row) - row.limit('minorMax')).by,
    ).toBeLessThan(0.00056);
  });

  /**
   * ISO 965-1 takes the geometric mean of a range for d, up to 3.5 % off in d^0.1, and rounds twice to preferred numbers of
   * the series R 40, up to 3 % each: a limit may lie a tenth of its tolerance beside the relation.
   */
  const tenth = 0.1;
  // Below a pitch of 1 mm the relation of the minor diameter is another one.
  const coarse = metricNuts.filter(({ step }) => step >= 1);

  test('6H: largest pitch and minor diameter of the nut', () => {
    expect(coarse.length).toBe(metricNuts.length - 1);
    const pitch = worst(
      coarse,
      (row) =>
        (inUnit(limitsOf(row).nutPitchMax, row) - row.limit('pitchMax')) /
        (row.limit('pitchMax') - row.limit('pitchMin')),
    );
    const minor = worst(
      coarse,
      (row) =>
        (inUnit(limitsOf(row).nutMinorMax, row) - row.limit('minorMax')) /
        (row.limit('minorMax') - row.limit('minorMin')),
    );
    expect(pitch.by).toBeLessThan(tenth);
    expect(minor.by).toBeLessThan(tenth);
  });

  const major = (row: Row) =>
    (inUnit(limitsOf(row).majorMin, row) - row.limit('majorMin')) /
    (row.limit('majorMax') - row.limit('majorMin'));
  const pitch = (row: Row) =>
    (inUnit(limitsOf(row).pitchMin, row) - row.limit('pitchMin')) /
    (row.limit('pitchMax') - row.limit('pitchMin'));

  test('6g: least major and pitch diameter of the stud', () => {
    const rows = metricStuds.filter((row) => row.step >= 1 && !contradictory(row));
    expect(rows.length).toBe(metricStuds.length - 3);
    expect(worst(rows, major).by).toBeLessThan(tenth);
    expect(worst(rows, pitch).by).toBeLessThan(tenth);
  });

  test('the two rows left out do contradict their neighbours', () => {
    const of = (name: string) => {
      const row = metricStuds.find((one) => one.name === name);
      if (row === undefined) throw new Error(`no row ${name}`);
      return row;
    };
    const allowance = (row: Row) => row.diameter - row.limit('majorMax');
    expect(allowance(of('6g 30 3.5')) - allowance(of('6g 33 3.5'))).toBeCloseTo(0.021, 6);
    const zone = (row: Row) => row.limit('pitchMax') - row.limit('pitchMin');
    expect(zone(of('6g 52 5'))).toBeLessThan(zone(of('6g 48 5')) - 0.01);
  });
});
