import { describe, expect, it } from 'vitest';
import { toolData } from '../../core/contract/tool.ts';
import { certificatesOf, METRIC, onRegister, readCertificate, toolsByNumber } from './files.ts';

const wrenchId = '0198c000-0000-7000-8000-00000000000a';
const cassetteId = '0198c000-0000-7000-8000-00000000000b';
const gaugeId = '0198c000-0000-7000-8000-00000000000c';
const common = { serial: '', status: 'available', place: '', remarks: '' } as const;
const wrench = toolData.parse({
  ...common,
  number: 'W-1',
  properties: {
    class: 'drive unit',
    ratedTorque: { text: '1030', unit: 'N.m' },
    ratedPressure: { text: '690', unit: 'bar' },
    family: 'S',
    headRadius: null,
  },
});
const cassette = toolData.parse({
  ...common,
  number: 'K-1',
  properties: {
    class: 'cassette',
    acrossFlats: { text: '1-7/16', unit: 'in' },
    looseness: null,
    ratedTorque: null,
    family: 'S',
    headRadius: null,
  },
});
const gauge = toolData.parse({
  ...common,
  number: 'G-1',
  properties: {
    class: 'gauge',
    scaleMax: { text: '1000', unit: 'bar' },
    graduation: { text: '10', unit: 'bar' },
    accuracy: { text: '1', unit: 'percent' },
  },
});
const lookup = {
  tool: toolsByNumber(
    onRegister(wrench, wrenchId),
    onRegister(cassette, cassetteId),
    onRegister(gauge, gaugeId),
  ),
};

const HEAD =
  'tool number,certificate number,laboratory,calibrated on,valid until,validity basis,result,condition,with tools,expanded uncertainty %,coverage factor';
const WRENCH = 'W-1,C-7,Lab,2026-03-02,2027-03-01,site rule,within limits,as left,K-1,1,2';
const BLANK = ',,,,,,,,,,';

/** A wrench's file: the head in the first row, then the points. */
function wrenchFile(points: string[], head = WRENCH) {
  const rows = points.map((point, index) => `${index === 0 ? head : BLANK},${point}`);
  return readCertificate([`${HEAD},pressure,torque,direction`, ...rows].join('\n'), { lookup });
}

const GOOD = ['70,100,up', '140,203,up', '210,310,up'];
const faultsOf = (points: string[], head = WRENCH) =>
  wrenchFile(points, head).report.faults.map(({ line, column, allowed }) => `${line} ${column}: ${allowed}`);

describe('a wrench certificate', () => {
  it('is read whole, with its parts named by number', () => {
    const { report, record, state } = wrenchFile(GOOD);
    expect(report).toMatchObject({ fileFault: null, faults: [], rows: 3, good: 3, added: 1 });
    expect(state).toBe('added');
    expect(record).toEqual({
      number: 'C-7',
      toolId: wrenchId,
      withToolIds: [cassetteId],
      laboratory: 'Lab',
      calibratedOn: '2026-03-02',
      validUntil: '2027-03-01',
      validityBasis: 'site rule',
      result: 'within limits',
      condition: 'as left',
      measured: {
        kind: 'pressure-torque',
        points: [
          [70, 100],
          [140, 203],
          [210, 310],
        ].map(([bar, torque]) => ({
          pressure: { text: String(bar), unit: 'bar', si: Number(bar) * 1e5 },
          torque: { text: String(torque), unit: 'N.m', si: torque },
          direction: 'up',
          uncertainty: null,
        })),
        expandedUncertainty: { text: '1', unit: 'percent', si: 0.01 },
        coverageFactor: 2,
      },
      asFound: null,
      method: '',
      environment: null,
      decisionRule: null,
      confirmed: [],
      remarks: '',
    });
  });

  it('may repeat its head in every row', () => {
    const rows = GOOD.map((point) => `${WRENCH},${point}`);
    const { report } = readCertificate([`${HEAD},pressure,torque,direction`, ...rows].join('\n'), { lookup });
    expect(report).toMatchObject({ fileFault: null, added: 1 });
  });

  it('is read in psi and pound-feet with a decimal comma when that was chosen', () => {
    const text =
      'tool number;certificate number;laboratory;calibrated on;valid until;validity basis;result;condition;pressure;torque\n'.concat(
        'W-1;C-8;Lab;2026-03-02;2027-03-01;site rule;no limits stated;as found;1000;73,5\n;;;;;;;;2000;150,1\n;;;;;;;;3000;228,9',
      );
    const { record } = readCertificate(text, {
      lookup,
      options: {
        delimiter: ';',
        decimalSign: ',',
        units: { ...METRIC.units, pressure: 'psi', torque: 'lbf.ft' },
      },
    });
    expect(record?.measured).toMatchObject({ expandedUncertainty: null, coverageFactor: 2 });
    const first = record?.measured.kind === 'pressure-torque' ? record.measured.points[0] : undefined;
    expect(first?.torque).toMatchObject({ text: '73.5', unit: 'lbf.ft' });
    // NIST SP 811 (2008), Appendix B.8: 1 lbf·ft = 1.355818 N·m, 1 psi = 6894.757 Pa.
    expect(first?.torque.si).toBeCloseTo(73.5 * 1.355818, 4);
    expect((first?.pressure.si ?? 0) / 1000).toBeCloseTo(6894.757, 3);
  });

  it('is taken whole or not at all', () => {
    const { report, record } = wrenchFile([...GOOD, '280,4l4,up']);
    expect(record).toBeNull();
    expect(report).toMatchObject({ rows: 4, good: 3, faultyRows: 1, added: 0, faultCount: 1 });
    expect(report.fileFault).toBe('A certificate is taken whole or not at all; it has 1 fault');
    expect(report.faults[0]).toMatchObject({ line: 5, column: 'torque', value: '4l4' });
  });

  it('has a torque that rises with pressure, each pressure once, and three of them', () => {
    expect(faultsOf(['70,100,up', '140,203,up', '210,190,up'])).toEqual([
      '4 torque: more than 203, which line 3 gives at a lower pressure',
    ]);
    expect(faultsOf([...GOOD, '140,204,up'])).toEqual([
      '5 pressure: each pressure once upwards; line 3 has the same. Readings taken again stand with "equal pressures" in the column "confirmed"',
    ]);
    expect(faultsOf(['70,100,up', '140,203,up', '70,101,down', '140,204,down'])).toEqual([
      '5 pressure: at least 3 different pressures; the file has 2',
    ]);
    expect(faultsOf([...GOOD, '210,312,down', '140,207,down', '70,103,down'])).toEqual([]);
    expect(faultsOf(['70,100,up', '140,203,up'])).toEqual(['2 torque: at least 3 points']);
  });

  it('names points that are not filled', () => {
    expect(faultsOf(['70,,up', '140,203,up', ',310,sideways'])).toEqual([
      '2 torque: needed',
      '4 pressure: needed',
      '4 direction: one of: up, down',
    ]);
  });

  it('hangs on a drive unit that is on the register, with cassettes and reducers only', () => {
    expect(faultsOf(GOOD, WRENCH.replace('W-1', 'W-9'))).toEqual([
      '2 tool number: number of a tool on the register',
    ]);
    expect(faultsOf(GOOD, WRENCH.replace('W-1', 'G-1'))).toEqual([
      "2 tool number: a drive unit, as the file's columns say; this tool is a gauge",
    ]);
    expect(faultsOf(GOOD, WRENCH.replace('K-1', 'K-1 + G-1'))).toEqual([
      '2 with tools: numbers of cassettes, square-drive heads and reducers on the register, joined by +; not "G-1"',
    ]);
    expect(faultsOf(GOOD, WRENCH.replace(',K-1,', ',,'))).toEqual([]);
  });

  it('does not end before it begins, nor miss a part of its head', () => {
    expect(faultsOf(GOOD, WRENCH.replace('2027-03-01', '2025-03-01'))).toEqual([
      '2 valid until: not before "calibrated on" (2026-03-02)',
    ]);
    expect(faultsOf(GOOD, WRENCH.replace('2026-03-02', '02/03/2026'))).toEqual([
      '2 calibrated on: a date as YYYY-MM-DD',
    ]);
    expect(faultsOf(GOOD, 'W-1,,,2026-03-02,2027-03-01,,,as left,K-1,1,')).toEqual([
      '2 certificate number: needed',
      '2 laboratory: needed',
      '2 validity basis: needed',
      '2 result: needed',
      '2 coverage factor: needed when the expanded uncertainty is stated',
    ]);
  });

  it('is one per file', () => {
    const rows = [
      `${WRENCH},70,100,up`,
      `${WRENCH.replace('C-7', 'C-8')},140,203,up`,
      `${WRENCH},210,310,up`,
    ];
    const { report, record } = readCertificate([`${HEAD},pressure,torque,direction`, ...rows].join('\n'), {
      lookup,
    });
    expect(record).toBeNull();
    expect(report.faults).toEqual([
      {
        line: 3,
        column: 'certificate number',
        value: 'C-8',
        allowed: '"C-7" as in line 2, or blank: one file holds one certificate',
      },
    ]);
  });

  it('is not taken twice, and never in another version', () => {
    const { record } = wrenchFile(GOOD);
    if (record === null) throw new Error('the good file was not read');
    const again = { lookup: { ...lookup, certificate: certificatesOf(record) } };
    const text = [`${HEAD},pressure,torque,direction`, ...GOOD.map((point) => `${WRENCH},${point}`)].join(
      '\n',
    );
    expect(readCertificate(text, again)).toMatchObject({
      state: 'unchanged',
      report: { unchanged: 1, added: 0 },
    });
    const other = readCertificate(text.replace('140,203', '140,205'), again);
    expect(other.record).toBeNull();
    expect(other.report.faults[0]).toMatchObject({ line: 2, column: 'certificate number', value: 'C-7' });
  });
});

describe('a gauge certificate', () => {
  const text = (tool: string) =>
    [
      'tool number,certificate number,laboratory,calibrated on,valid until,validity basis,result,condition,indicated,reference',
      `${tool},C-9,Lab,2026-03-02,2027-03-01,site rule,within limits,as left,200,201.5`,
      ',,,,,,,,400,402',
    ].join('\n');

  it('holds what the gauge showed beside the reference', () => {
    const { record } = readCertificate(text('G-1'), { lookup });
    expect(record).toMatchObject({
      toolId: gaugeId,
      measured: {
        kind: 'gauge',
        points: [
          { indicated: { text: '200', si: 2e7 }, reference: { text: '201.5' } },
          { indicated: { text: '400' }, reference: { text: '402' } },
        ],
      },
    });
  });

  it('hangs on a gauge', () => {
    expect(readCertificate(text('W-1'), { lookup }).report.faults[0]?.allowed).toBe(
      "a gauge, as the file's columns say; this tool is a drive unit",
    );
  });
});

it('a file with neither kind of point lacks columns', () => {
  const { report } = readCertificate(`${HEAD},pressure\n${WRENCH},70`, { lookup });
  expect(report.missingColumns).toEqual(['torque or reference or reference torque']);
  expect(report.fileFault).toBe(
    'The heading line lacks "torque or reference or reference torque": every row needs it',
  );
});

describe('points as found and as left', () => {
  const POINT = 'pressure,torque,direction,condition of the point,point uncertainty';
  const file = (points: string[], head = HEAD, first = WRENCH, blank = BLANK) =>
    readCertificate(
      [`${head},${POINT}`, ...points.map((point, index) => `${index === 0 ? first : blank},${point}`)].join(
        '\n',
      ),
      { lookup },
    );
  const BOTH = ['70,92,up,as found,', '140,187,up,as found,', '210,285,up,as found,'];
  const LEFT = ['70,100,up,as left,1.5', '140,203,up,,1.5', '210,310,up,as left,2'];

  it('are kept apart, each with its own uncertainty', () => {
    const { record, report } = file([...BOTH, ...LEFT]);
    expect(report.faults).toEqual([]);
    const torques = (points: readonly object[] = []) =>
      points.map((point) => ('torque' in point ? point.torque : null));
    expect(torques(record?.asFound?.points)).toMatchObject([{ si: 92 }, { si: 187 }, { si: 285 }]);
    expect(torques(record?.measured.points)).toMatchObject([{ si: 100 }, { si: 203 }, { si: 310 }]);
    expect(record?.measured.points).toMatchObject([
      { uncertainty: { si: 1.5 } },
      {},
      { uncertainty: { si: 2 } },
    ]);
  });

  it('name the row of a point that is wrong, whichever they are of', () => {
    expect(file([...BOTH.slice(0, 2), '210,x,up,as found,', ...LEFT]).report.faults).toMatchObject([
      { line: 4, column: 'torque', value: 'x' },
    ]);
    expect(file(BOTH).report.faults.map(({ line, column }) => `${line} ${column}`)).toContain(
      '2 condition of the point',
    );
    const asFound = WRENCH.replace('as left', 'as found');
    expect(file([...BOTH, ...LEFT], HEAD, asFound).report.faults).toMatchObject([
      { line: 2, column: 'condition' },
    ]);
  });

  it('stand with method, surroundings, limit and guard band', () => {
    const head = `${HEAD},method,temperature,humidity %,limit %,guard band`;
    const { record, report } = file(LEFT, head, `${WRENCH},CP-4,21,45,4,yes`, `${BLANK},,,,,`);
    expect(report.faults).toEqual([]);
    expect(record).toMatchObject({
      method: 'CP-4',
      environment: { temperature: { text: '21' }, humidity: { si: 0.45 } },
      decisionRule: { limit: { si: 0.04 }, guardBand: true },
    });
    expect(file(LEFT, head, `${WRENCH},CP-4,,,,yes`, `${BLANK},,,,,`).report.faults).toMatchObject([
      { line: 2, column: 'limit %', allowed: 'needed with a guard band' },
    ]);
  });
});

describe('what looks wrong in the points of a file', () => {
  it('is refused where it can not be: a day that has not come', () => {
    const late = WRENCH.replace('2026-03-02', '2027-01-01');
    expect(wrenchFile(GOOD, late).report.faults).toMatchObject([
      { line: 2, column: 'calibrated on', allowed: '2026-12-31 (today) or earlier; this is 2027-01-01' },
    ]);
  });

  // 1030 N·m at 690 bar by rating; in pound-feet the same line reads 1030/1.3558 = 760.
  const POUND_FEET = ['70,77,up', '345,380,up', '690,760,up'];
  const confirmed = (name: string, points: string[]) =>
    readCertificate(
      [
        `${HEAD},confirmed,pressure,torque,direction`,
        ...points.map((point, index) => `${index === 0 ? `${WRENCH},${name}` : `${BLANK},`},${point}`),
      ].join('\n'),
      { lookup },
    );

  it('waits for its name in the column "confirmed": torque in another unit', () => {
    expect(wrenchFile(POUND_FEET).report.faults).toMatchObject([
      { line: 2, column: 'torque', allowed: expect.stringContaining('"torque in another unit"') },
    ]);
    const { record, report } = confirmed('torque in another unit', POUND_FEET);
    expect(report.faults).toEqual([]);
    expect(record?.confirmed).toEqual(['torque in another unit']);
  });

  it('waits for its name in the column "confirmed": a pressure read twice', () => {
    const twice = [...GOOD, '210,312,up'];
    expect(wrenchFile(twice).report.faultCount).toBe(1);
    expect(confirmed('equal pressures', twice).report.faults).toEqual([]);
  });
});

it('a hand torque wrench is read by what it was set to and what it gave', () => {
  const hand = toolData.parse({
    ...common,
    number: 'N-1',
    properties: {
      class: 'hand torque wrench',
      least: { text: '40', unit: 'N.m' },
      most: { text: '200', unit: 'N.m' },
      torqueGraduation: { text: '5', unit: 'N.m' },
    },
  });
  const head =
    'tool number,certificate number,laboratory,calibrated on,valid until,validity basis,result,condition';
  const first = 'N-1,C-8,Lab,2026-03-02,2027-03-01,site rule,within limits,as found';
  const text = `${head},set torque,reference torque\n${first},40,40.4\n,,,,,,,,200,198`;
  const { record, report } = readCertificate(text, { lookup: { tool: toolsByNumber(hand) } });
  expect(report.faults).toEqual([]);
  expect(record?.measured).toMatchObject({
    kind: 'hand torque',
    points: [
      { set: { si: 40 }, reference: { si: 40.4 } },
      { set: { si: 200 }, reference: { si: 198 } },
    ],
  });
  expect(readCertificate(text, { lookup }).report.faults).toMatchObject([{ column: 'tool number' }]);
});
