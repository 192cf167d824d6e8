import { describe, expect, it } from 'vitest';
import { toolData } from '../../core/contract/tool.ts';
import { METRIC, onRegister, readTools, toolsByNumber } from './files.ts';

const HEADINGS =
  'number,class,family,rated torque,rated pressure,head radius,opening,looseness,outer across flats,scale max,graduation,accuracy % of scale,made on';
const ROWS = [
  'W-1,drive unit,M,2700,690,30,,,,,,,',
  'K-1,cassette,M,2700,,32,36.5,0.4,,,,,',
  'R-1,reducer,,1030,,,36.5,,46,,,,',
  'P-1,pump,,,700,,,,,,,,',
  'G-1,gauge,,,,,,,,1000,10,1,',
  'H-1,hose,,,700,,,,,,,,2024-05-01',
];
const list = (...rows: string[]) => [HEADINGS, ...rows].join('\n');
const faultsOf = (...rows: string[]) => readTools(list(...rows)).report.faults;

it('one tool a row, its class deciding which cells are needed', () => {
  const { report, records } = readTools(list(...ROWS));
  expect(report).toMatchObject({ fileFault: null, faults: [], good: 6, added: 6 });
  expect(records.map(({ data }) => data.properties)).toMatchObject([
    {
      class: 'drive unit',
      ratedTorque: { text: '2700', unit: 'N.m', si: 2700 },
      ratedPressure: { text: '690', unit: 'bar', si: 69e6 },
      family: 'M',
      headRadius: { text: '30', unit: 'mm', si: 0.03 },
      reactionArm: null,
      coupling: '',
    },
    {
      class: 'cassette',
      acrossFlats: { text: '36.5', unit: 'mm', si: 0.0365 },
      looseness: { text: '0.4', unit: 'mm', si: 0.0004 },
      ratedTorque: { text: '2700', unit: 'N.m', si: 2700 },
      family: 'M',
      headRadius: { text: '32', unit: 'mm', si: 0.032 },
      studRoom: null,
      openThrough: false,
    },
    {
      class: 'reducer',
      outerAcrossFlats: { text: '46', unit: 'mm', si: 0.046 },
      acrossFlats: { text: '36.5', unit: 'mm', si: 0.0365 },
      looseness: null,
      ratedTorque: { text: '1030', unit: 'N.m', si: 1030 },
    },
    { class: 'pump', ratedPressure: { text: '700', unit: 'bar', si: 7e7 } },
    {
      class: 'gauge',
      scaleMax: { text: '1000', unit: 'bar', si: 1e8 },
      graduation: { text: '10', unit: 'bar', si: 1e6 },
      accuracy: { text: '1', unit: 'percent', si: 0.01 },
    },
    { class: 'hose', ratedPressure: { text: '700', unit: 'bar', si: 7e7 }, madeOn: '2024-05-01' },
  ]);
  expect(records.map(({ data }) => data.status)).toEqual(Array(6).fill('available'));
});

it('inch openings are fractions of the inch chosen for the file', () => {
  const { records } = readTools('number,class,family,opening\nK-1,cassette,S,1-7/16', {
    options: { units: { ...METRIC.units, length: 'in' } },
  });
  expect(records[0]?.data.properties).toMatchObject({
    acrossFlats: { text: '1-7/16', unit: 'in', si: 1.4375 * 0.0254 },
    looseness: null,
  });
});

it('cells a class needs are named with the class', () => {
  expect(faultsOf('W-1,drive unit,,,690,,,,,,,,')).toEqual([
    { line: 2, column: 'family', value: '', allowed: 'needed for a drive unit' },
    { line: 2, column: 'rated torque', value: '', allowed: 'needed for a drive unit' },
  ]);
  expect(faultsOf('G-1,gauge,,,,,,,,1000,,,').map(({ column }) => column)).toEqual([
    'graduation',
    'accuracy % of scale',
  ]);
});

it('the further classes are read with what each needs', () => {
  const head =
    'number,class,family,rated torque,opening,looseness,square,stud room,open through,rated pressure,coupling,least torque,most torque,torque graduation,weight kg';
  const { report, records } = readTools(
    [
      head,
      'S-1,square-drive head,M,2700,46,0.3,25.4,,yes,,,,,,6.5',
      'C-1,coupler,,,,,,,,700,screwed,,,,',
      'B-1,counterhold wrench,,,46,,,,,,,,,,',
      'T-1,hand torque wrench,,,,,,,,,,40,200,5,',
    ].join('\n'),
  );
  expect(report.faults).toEqual([]);
  expect(records.map(({ data }) => data.properties)).toMatchObject([
    { class: 'square-drive head', square: { si: 0.0254 }, openThrough: true, studRoom: null },
    { class: 'coupler', coupling: 'screwed', ratedPressure: { si: 7e7 } },
    { class: 'counterhold wrench', ratedTorque: null, looseness: null },
    { class: 'hand torque wrench', least: { si: 40 }, most: { si: 200 }, torqueGraduation: { si: 5 } },
  ]);
  expect(records[0]?.data.weight).toMatchObject({ text: '6.5', unit: 'kg' });
});

it('cells that mean nothing for a class are faults, so that no value is dropped', () => {
  expect(faultsOf('H-1,hose,M,,700,,,,,1000,,,')).toEqual([
    { line: 2, column: 'family', value: 'M', allowed: 'blank for a hose' },
    { line: 2, column: 'scale max', value: '1000', allowed: 'blank for a hose' },
  ]);
});

it('a class that does not exist, a date that is none and a pressure out of range name what is allowed', () => {
  expect(faultsOf('T-1,tensioner,,,,,,,,,,,')).toEqual([
    {
      line: 2,
      column: 'class',
      value: 'tensioner',
      allowed:
        'one of: drive unit, cassette, square-drive head, reducer, pump, gauge, hose, coupler, counterhold wrench, hand torque wrench',
    },
  ]);
  expect(faultsOf('H-1,hose,,,700,,,,,,,,1.5.2024')[0]?.allowed).toBe('a date as YYYY-MM-DD');
  expect(faultsOf('P-1,pump,,,70000,,,,,,,,')[0]?.allowed).toBe('70000 bar: allowed 1 bar to 4000 bar');
});

it('numbers that stand twice are faults at both lines', () => {
  const { report, records } = readTools(
    list('P-1,pump,,,700,,,,,,,,', ROWS[4] ?? '', 'P-1,pump,,,690,,,,,,,,'),
  );
  expect(report.faults.map(({ line, allowed }) => [line, allowed])).toEqual([
    [2, 'each number once; also in line 4'],
    [4, 'each number once; also in line 2'],
  ]);
  expect(records.map(({ data }) => data.number)).toEqual(['G-1']);
});

it('a tool on the register keeps what the file has no column for and stays of its class', () => {
  const before = toolData.parse({
    number: 'K-1',
    serial: '77',
    status: 'quarantined',
    place: 'shelf 2',
    properties: {
      class: 'cassette',
      acrossFlats: { text: '1-7/16', unit: 'in' },
      looseness: null,
      ratedTorque: null,
      family: 'S',
      headRadius: null,
    },
    remarks: '',
  });
  const lookup = { tool: toolsByNumber(before) };
  const same = readTools('number,class\nK-1,cassette', { lookup });
  expect(same.records[0]).toMatchObject({ state: 'unchanged', data: before });
  const moved = readTools('number,class,place,rated torque\nK-1,cassette,shelf 3,1030', { lookup });
  expect(moved.records[0]).toMatchObject({
    state: 'changed',
    existing: { version: 3 },
    data: {
      ...before,
      place: 'shelf 3',
      properties: { ...before.properties, ratedTorque: { text: '1030' } },
    },
  });
  expect(readTools('number,class\nK-1,gauge', { lookup }).report.faults).toEqual([
    {
      line: 2,
      column: 'class',
      value: 'gauge',
      allowed: "cassette, as on the register: a tool can't become another kind of tool",
    },
  ]);
});

describe('a tool on the register', () => {
  const gauge = (status: 'available' | 'issued') =>
    toolData.parse({
      number: 'G-1',
      serial: 'A 77',
      status,
      place: 'shelf 2',
      properties: {
        class: 'gauge',
        scaleMax: { text: '1000', unit: 'bar' },
        graduation: { text: '10', unit: 'bar' },
        accuracy: { text: '1', unit: 'percent' },
      },
      remarks: '',
    });
  const heading = 'number,class,status,place';

  it('keeps its status: a list that says another is told to go to the custody desk, a blank cell says nothing', () => {
    const lookup = { tool: toolsByNumber(gauge('issued')) };
    expect(readTools(`${heading}\nG-1,gauge,,shelf 2`, { lookup }).report).toMatchObject({
      unchanged: 1,
      faults: [],
    });
    expect(readTools(`${heading}\nG-1,gauge,available,shelf 2`, { lookup }).report.faults).toMatchObject([
      {
        column: 'status',
        value: 'available',
        allowed: expect.stringContaining('issued, as on the register'),
      },
    ]);
  });

  it('keeps its place while it is out', () => {
    const out = { tool: toolsByNumber(gauge('issued')) };
    expect(readTools(`${heading}\nG-1,gauge,,shelf 3`, { lookup: out }).report.faults).toMatchObject([
      { column: 'place', value: 'shelf 3' },
    ]);
    const lookup = { tool: toolsByNumber(gauge('available')) };
    expect(readTools(`${heading}\nG-1,gauge,,shelf 3`, { lookup }).report).toMatchObject({
      changed: 1,
      faults: [],
    });
  });

  it('and another of its class never share a serial number, on the register or in one file', () => {
    const cells = 'gauge,1000,10,1';
    const list = 'number,serial,class,scale max,graduation,accuracy % of scale';
    const lookup = {
      toolWithSerial: (toolClass: string, serial: string) =>
        toolClass === 'gauge' && serial.toLowerCase() === 'a 77' ? onRegister(gauge('available')) : null,
    };
    expect(readTools(`${list}\nG-2,a 77,${cells}`, { lookup }).report.faults).toMatchObject([
      { line: 2, column: 'serial', value: 'a 77', allowed: expect.stringContaining('G-1') },
    ]);
    expect(
      readTools(`${list}\nG-3,B 1,${cells}\nG-4,b  1,${cells}\nG-5,,${cells}`).report.faults,
    ).toMatchObject([{ line: 3, column: 'serial', allowed: expect.stringContaining('G-3 in line 2') }]);
  });
});
