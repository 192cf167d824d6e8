import { describe, expect, it } from 'vitest';
import { JOINT_COLUMNS } from '../../electron/service/import/joint-columns.ts';
import { METRIC, readJoints, UNIT_ID } from './files.ts';
import { HEADINGS, J1, J2, list } from './joint-list.ts';

/** One joint with one more column. */
function withCell(heading: string, cell: string, file = {}) {
  return readJoints(list(`${HEADINGS},${heading}`, `${J1},${cell}`), file);
}

function faultAt(heading: string, cell: string, file = {}) {
  const { report, records } = withCell(heading, cell, file);
  expect(records).toEqual([]);
  return report.faults.find((fault) => fault.column === heading);
}

describe('a joint list', () => {
  it('is read with every column, in the units chosen for the file', () => {
    const cells: Record<string, string> = {
      tag: 'J-1',
      unit: 'Unit 100',
      location: 'pump P-101',
      service: 'crude oil',
      'service temperature': '180.5',
      'flange standard': 'ASME B16.5',
      size: '8',
      class: '300',
      facing: 'raised face',
      'stud count': '12',
      thread: '7/8-9 UNC',
      'bolt circle': '330.2',
      'stud grade': 'ASTM A193 B7',
      'yield strength': '720',
      'yield source': 'mill certificate',
      'stud length': '139.7',
      grip: '86.6',
      'nut series': 'ASME B18.2.2 heavy hex',
      gasket: 'spiral wound',
      'gasket thickness': '4.5',
      lubricant: 'nickel-based anti-seize',
      'lubricant batch': 'N-1',
      'nut factor': '0.16',
      'nut factor scatter %': '10',
      'friction evidence': 'measured',
      'friction source': 'site test 12',
      'target mode': 'percent of yield',
      'target value': '50',
      'target area': 'tensile',
      'target basis': 'BP-04 rev 3',
      'bolt stress max': '480',
      'bolt stress min': '200',
      'limit area': 'root',
      'flange bolt stress max': '520',
      'limit source': 'DS-118',
      'radial gap': '42',
      remarks: 'insulated',
    };
    const { report, records, newUnits } = readJoints(
      list(Object.keys(cells).join(','), Object.values(cells).join(',')),
    );
    expect(report).toMatchObject({
      fileFault: null,
      faults: [],
      rows: 1,
      good: 1,
      added: 1,
      unknownColumns: [],
    });
    expect(newUnits).toEqual(['Unit 100']);
    expect(records[0]).toMatchObject({ line: 2, state: 'added', existing: null, unitName: 'Unit 100' });
    expect(records[0]?.data).toMatchObject({
      tag: 'J-1',
      location: 'pump P-101',
      service: 'crude oil',
      serviceTemperature: { text: '180.5', unit: 'degC', si: 180.5 },
      flange: { kind: 'standard', standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' },
      bolting: {
        count: 12,
        thread: '7/8-9 UNC',
        circle: { text: '330.2', unit: 'mm', si: 330.2 * 0.001 },
        grade: 'ASTM A193 B7',
        yieldStrength: { text: '720', unit: 'MPa', si: 720e6 },
        yieldOrigin: 'mill certificate',
        studLength: { text: '139.7', unit: 'mm', si: 139.7 * 0.001 },
        grip: { text: '86.6', unit: 'mm', si: 86.6 * 0.001 },
        nutSeries: 'ASME B18.2.2 heavy hex',
      },
      gasket: { type: 'spiral wound', thickness: { text: '4.5', unit: 'mm', si: 4.5 * 0.001 } },
      lubricant: {
        name: 'nickel-based anti-seize',
        batch: 'N-1',
        nutFactor: { text: '0.16', unit: 'one', si: 0.16 },
        nutFactorCv: { text: '10', unit: 'percent', si: 0.1 },
        frictionThread: null,
        frictionBearing: null,
        evidence: 'measured',
        source: 'site test 12',
      },
      target: {
        mode: 'percent of yield',
        percent: { text: '50', unit: 'percent', si: 0.5 },
        area: 'tensile',
        basis: 'BP-04 rev 3',
      },
      limits: {
        boltStressMax: { text: '480', unit: 'MPa', si: 480e6 },
        boltStressMin: { text: '200', unit: 'MPa', si: 200e6 },
        boltStressArea: 'root',
        flangeBoltStressMax: { text: '520', unit: 'MPa', si: 520e6 },
        source: 'DS-118',
      },
      space: { radialGap: { text: '42', unit: 'mm', si: 0.042 } },
      remarks: 'insulated',
    });
    expect(report.sample[0]).toMatchObject({
      tag: 'J-1',
      'service temperature': '180.5 °C',
      grip: '86.6 mm',
      'target value': '50 %',
      'nut factor': '0.16',
    });
  });

  it('takes inch fractions, other units and a decimal comma as chosen', () => {
    const { records } = readJoints(
      list(
        'tag;unit;flange standard;size;class;facing;stud length;service temperature;nut factor;lubricant',
        `${J1.replaceAll(',', ';')};5 1/2;356,5;0,16;oil`,
      ),
      {
        options: {
          delimiter: ';',
          decimalSign: ',',
          units: { ...METRIC.units, length: 'in', temperature: 'degF' },
        },
      },
    );
    expect(records[0]?.data.bolting.studLength).toEqual({ text: '5 1/2', unit: 'in', si: 5.5 * 0.0254 });
    expect(records[0]?.data.serviceTemperature?.text).toBe('356.5');
    expect(records[0]?.data.serviceTemperature?.si).toBeCloseTo((356.5 - 32) / 1.8, 9);
    expect(records[0]?.data.lubricant).toMatchObject({
      nutFactor: { text: '0.16', unit: 'one', si: 0.16 },
      evidence: 'assumed',
    });
  });

  it('finds its headings whatever their case, spaces and order', () => {
    const { report } = readJoints(
      list('Facing, CLASS ,size,Flange  Standard,UNIT,Tag', 'RAISED FACE,300,8,asme b16.5,U,J-1'),
    );
    expect(report).toMatchObject({ fileFault: null, faults: [], good: 1 });
  });

  it('takes a flange of its own by description, in place of a standard', () => {
    const { records } = readJoints(list('tag,unit,flange description', 'J-1,U,Manway C-101'));
    expect(records[0]?.data.flange).toEqual({
      kind: 'custom',
      description: 'Manway C-101',
      siteRow: null,
    });
  });

  it('takes a bolt load in the unit its heading names', () => {
    const { records } = readJoints(
      list(`${HEADINGS},target mode,target load kN,target basis`, `${J1},bolt load,107.8,BP-04`),
    );
    expect(records[0]?.data.target).toEqual({
      mode: 'bolt load',
      load: { text: '107.8', unit: 'kN', si: 107800 },
      basis: 'BP-04',
    });
  });

  it('keeps cells that look like a formula as text', () => {
    const { records } = withCell('location', '=cmd|calc');
    expect(records[0]?.data.location).toBe('=cmd|calc');
  });

  it('has a sample no longer than ten rows and lists what it does not know', () => {
    const rows = Array.from({ length: 30 }, (_, index) => `J-${index},U,ASME B16.5,8,300,raised face,x`);
    const { report } = readJoints(list(`${HEADINGS},colour`, ...rows));
    expect(report.sample).toHaveLength(10);
    expect(report.unknownColumns).toEqual(['colour']);
    expect(report.columns).toEqual([...HEADINGS.split(','), 'colour']);
  });
});

describe('columns that are needed', () => {
  it('hold back the file when the heading line lacks them, without a fault for every row', () => {
    const { report, records } = readJoints(list('joint,area', 'J-1,U'));
    expect(report).toMatchObject({
      missingColumns: ['tag', 'unit', 'flange standard or flange description'],
      unknownColumns: ['joint', 'area'],
      faultCount: 0,
      good: 0,
    });
    expect(report.fileFault).toBe(
      'The heading line lacks "tag", "unit", "flange standard or flange description": every row needs them',
    );
    expect(records).toEqual([]);
  });

  it('are named at the row when only the cell is blank', () => {
    const { report, records } = readJoints(list(HEADINGS, J1, ',Unit 100,,6,150,raised face'));
    expect(records.map(({ data }) => data.tag)).toEqual(['J-1']);
    expect(report.faults).toEqual([
      { line: 3, column: 'tag', value: '', allowed: 'needed' },
      { line: 3, column: 'flange standard', value: '', allowed: 'needed' },
    ]);
  });
});

describe('numbers', () => {
  it('with the other decimal sign are faults, not other numbers', () => {
    expect(faultAt('grip', '"86,6"')).toEqual({
      line: 2,
      column: 'grip',
      value: '86,6',
      allowed:
        'a number alone; this column is in mm, with a point as the decimal sign chosen for the file and no thousands separators',
    });
    const { report } = readJoints(
      list(`${HEADINGS},grip`.replaceAll(',', ';'), `${J1},1.250`.replaceAll(',', ';')),
      {
        options: { delimiter: ';', decimalSign: ',' },
      },
    );
    expect(report.faults[0]?.allowed).toMatch(/with a comma as the decimal sign chosen for the file/);
  });

  it.each(['12 mm', '12mm', '5.5"', '180 °C', '1-7/16 in'])(
    'with a unit in the cell (%s) are faults',
    (cell) => {
      expect(faultAt('grip', `"${cell.replaceAll('"', '""')}"`)).toEqual({
        line: 2,
        column: 'grip',
        value: cell,
        allowed: 'a number alone; this column is in mm, as chosen for the file',
      });
    },
  );

  it.each(['abc', '1/0', '--5', '=86.6', 'NaN', '1e999'])('that are none (%s) are faults', (cell) => {
    expect(faultAt('grip', cell)?.allowed).toMatch(/^a number alone; this column is in mm/);
  });

  it('out of range say the range in the unit of the file, which shows a wrong unit', () => {
    expect(
      faultAt('stud length', '139.7', { options: { units: { ...METRIC.units, length: 'm' } } })?.allowed,
    ).toBe('139.7 m: allowed 0.02 m to 5 m');
    expect(faultAt('nut factor', '16')?.allowed).toBe('16: allowed 0.03 to 0.8');
  });

  it('of studs are whole', () => {
    expect(faultAt('stud count', '12.5')?.allowed).toBe('a whole number');
  });
});

describe('cells that depend on each other', () => {
  const target = (cells: string) =>
    readJoints(
      list(
        `${HEADINGS},target mode,target value,target load kN,target load lbf,target area,target basis`,
        `${J1},${cells}`,
      ),
    ).report.faults.map(({ column, allowed }) => `${column}: ${allowed}`);

  it('of a target are all asked for', () => {
    expect(target('percent of yield,50,,,,')).toEqual(['target area: needed', 'target basis: needed']);
    expect(target(',50,,,,BP-04')).toEqual([
      'target mode: needed when a target is given; one of: percent of yield, bolt stress, bolt load, torque, gasket stress, component limits',
    ]);
    expect(target('percent of yield,,,,tensile,BP-04')).toEqual(['target value: needed']);
    expect(target('bolt load,,,,,BP-04')).toEqual(['target load kN: needed']);
    expect(target(',,,,,')).toEqual([]);
  });

  it('of a target contradict each other', () => {
    expect(target('bolt load,50,108,,,BP-04')).toEqual([
      'target value: blank with target mode "bolt load": fill "target load kN" or "target load lbf"',
    ]);
    expect(target('bolt load,,108,24300,,BP-04')).toEqual([
      'target load lbf: blank beside "target load kN": one of the two',
    ]);
    expect(target('torque,380,108,,,BP-04')).toEqual(['target load kN: blank with target mode "torque"']);
    expect(target('torque,380,,,root,BP-04')).toEqual(['target area: blank with target mode "torque"']);
  });

  it('of a flange are either a standard or a description', () => {
    const { report } = readJoints(list(`${HEADINGS},flange description`, `${J1},Manway`));
    expect(report.faults).toEqual([
      {
        line: 2,
        column: 'flange description',
        value: 'Manway',
        allowed: 'blank beside a flange standard, size, class or facing: a flange has one or the other',
      },
    ]);
  });

  it('ask for the area of a stress limit, for a lubricant and for a gasket', () => {
    expect(faultAt('bolt stress max', '480')).toBeUndefined();
    expect(withCell('bolt stress max', '480').report.faults.map(({ column }) => column)).toEqual([
      'limit area',
    ]);
    expect(withCell('nut factor', '0.16').report.faults.map(({ column }) => column)).toEqual(['lubricant']);
    expect(withCell('gasket thickness', '4.5').report.faults.map(({ column }) => column)).toEqual(['gasket']);
  });

  it.each([
    ['stud length', '5.5 in'],
    ['service temperature', '356 °F'],
    ['bolt stress max', '70 ksi'],
  ])('hold no unit of their own beside the one chosen for the file: %s, %s', (heading, cell) => {
    expect(faultAt(heading, cell)).toMatchObject({ value: cell, allowed: expect.stringMatching(/number/) });
    // What one cell means is never carried over to the next.
    const mixed = readJoints(list(`${HEADINGS},stud length`, `${J1},139.7`, `${J2},5.5 in`));
    expect(mixed.records.map(({ data }) => data.bolting.studLength?.si)).toEqual([0.1397]);
    expect(mixed.report.faults).toMatchObject([{ line: 3, column: 'stud length', value: '5.5 in' }]);
  });

  it('hold one of a list of words, which the fault names', () => {
    expect(faultAt('nut series', 'heavy')?.allowed).toBe(
      'one of: ASME B18.2.2 heavy hex, ASME B18.2.4.6M heavy hex, ISO 4032, DIN 934',
    );
  });
});

describe('rows', () => {
  it('with too few or too many cells are faults of their own; the rows beside them are read', () => {
    const { report, records } = readJoints(
      list(HEADINGS, J1, 'J-3,Unit 100,ASME B16.5', `${J2},surplus`, `${J2},,`),
    );
    expect(report.faults).toEqual([
      { line: 3, column: '(whole row)', value: '3 cells', allowed: '6 cells, as many as there are headings' },
      { line: 4, column: '(whole row)', value: '7 cells', allowed: '6 cells, as many as there are headings' },
    ]);
    expect(records.map(({ line, data }) => [line, data.tag])).toEqual([
      [2, 'J-1'],
      [5, 'J-2'],
    ]);
    expect(report).toMatchObject({ rows: 4, good: 2, faultyRows: 2, faultCount: 2, added: 2 });
  });

  it('with the same tag are all faulty and name each other, also when only case or the width of a letter differs', () => {
    const { report, records } = readJoints(
      list(HEADINGS, J1, J2, J1.replace('J-1', 'j－1'), J2.replace('J-2', 'J-3')),
    );
    expect(report.faults).toEqual([
      { line: 2, column: 'tag', value: 'J-1', allowed: 'each tag once; also in line 4' },
      { line: 4, column: 'tag', value: 'j－1', allowed: 'each tag once; also in line 2' },
    ]);
    expect(records.map(({ data }) => data.tag)).toEqual(['J-2', 'J-3']);
  });

  it('with a letter that was lost before are faults', () => {
    expect(faultAt('location', 'K\uFFFDhler')?.allowed).toMatch(/already lost when the file was written/);
  });

  it('report each cell once and name the field over the longest text allowed', () => {
    const { report } = withCell('location', 'x'.repeat(301));
    expect(report.faults).toEqual([
      { line: 2, column: 'location', value: 'x'.repeat(301), allowed: 'at most 300 characters' },
    ]);
  });

  it('name plant units to be created once, in the first spelling, and not for faulty rows', () => {
    const { newUnits, records } = readJoints(
      list(
        HEADINGS,
        J1,
        J2.replace('Unit 100', 'UNIT 100'),
        'J-4,Unit 900,ASME B16.5,8,300,?',
        'J-5,Old,ASME B16.5,8,300,other',
      ),
      { lookup: { unitId: (name) => (name === 'Old' ? UNIT_ID : null) } },
    );
    expect(newUnits).toEqual(['Unit 100']);
    expect(records.map(({ unitName }) => unitName)).toEqual(['Unit 100', 'Unit 100', 'Old']);
  });
});

it('every column says what it means and gives an example that the import itself takes', () => {
  expect(new Set(JOINT_COLUMNS.map(({ heading }) => heading)).size).toBe(JOINT_COLUMNS.length);
  const example = (heading: string) =>
    JOINT_COLUMNS.find((column) => column.heading === heading)?.example ?? '';
  const apart = [
    'flange description',
    'target load kN',
    'target load lbf',
    'thread friction',
    'bearing friction',
  ];
  const together = JOINT_COLUMNS.map(({ heading }) => heading).filter((heading) => !apart.includes(heading));
  const { report } = readJoints(
    list(together.join(','), together.map((heading) => `"${example(heading)}"`).join(',')),
  );
  expect(report).toMatchObject({ faults: [], unknownColumns: [], good: 1 });
  for (const { meaning } of JOINT_COLUMNS) expect(meaning.length).toBeGreaterThan(3);
});

it('a size or class its standard does not have is a fault that lists what it has', () => {
  const { report } = readJoints(
    `${HEADINGS}\nJ-1,Unit 100,ASME B16.5,8,350,raised face\nJ-2,Unit 100,ASME B16.5,"5,5",300,raised face\nJ-3,Unit 100,ASME B16.5,NPS 1-1/2,Class 300,raised face\n`,
  );
  expect(report.faults.map(({ line, column, value }) => [line, column, value])).toEqual([
    [2, 'class', '350'],
    [3, 'size', '5,5'],
  ]);
  expect(report.faults[0]?.allowed).toBe('a class of ASME B16.5: 150, 300, 400, 600, 900, 1500, 2500');
  expect(report.good).toBe(1);
});
