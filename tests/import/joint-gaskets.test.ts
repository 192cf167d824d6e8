import { describe, expect, it } from 'vitest';
import { jointsByTag, readJoints, UNIT_ID } from './files.ts';
import { HEADINGS, J1, list } from './joint-list.ts';

describe('gasket and pressure cases', () => {
  const columns =
    'gasket,gasket kind,gasket inside,gasket outside,gasket seating stress,gasket retained %,gasket batch,design pressure,design temperature,test pressure,flange material,nut grade';
  const cells = 'spiral wound,spiral wound,233.4,263.7,60,70,G-1,40,200,60,1.1,ASTM A194 2H';
  const row = (extra = columns, values = cells) =>
    readJoints(list(`${HEADINGS},${extra}`, `${J1},${values}`));

  it('are read in the units chosen for the file', () => {
    const { report, records } = row();
    expect(report.faults).toEqual([]);
    expect(records[0]?.data).toMatchObject({
      flangeMaterial: '1.1',
      bolting: { nutGrade: 'ASTM A194 2H' },
      gasket: {
        type: 'spiral wound',
        kind: 'spiral wound',
        contactInside: { text: '233.4', unit: 'mm' },
        contactOutside: { text: '263.7', unit: 'mm' },
        seatingStress: { text: '60', unit: 'MPa', si: 60e6 },
        retainedOperating: { text: '70', unit: 'percent' },
        operatingStress: null,
        batch: 'G-1',
      },
      pressures: {
        design: {
          pressure: { text: '40', unit: 'bar', si: 4e6 },
          temperature: { text: '200', unit: 'degC' },
        },
        operating: { pressure: null, temperature: null },
        test: { pressure: { text: '60', unit: 'bar' } },
      },
    });
  });

  it('name the column and what is allowed when out of range', () => {
    const { report, records } = row('gasket,gasket retained %,test pressure', 'flat,130,-5');
    expect(records).toEqual([]);
    expect(report.faults.map(({ column, allowed }) => [column, allowed])).toEqual([
      ['gasket retained %', '130 %: allowed 0 % to 100 %'],
      ['test pressure', '-5 bar: allowed 0 bar to 10000 bar'],
    ]);
  });

  it('ask for the gasket whose value is given', () => {
    const { report } = row('gasket seating stress', '60');
    expect(report.faults.map(({ column, allowed }) => [column, allowed])).toEqual([
      ['gasket', 'needed when "gasket seating stress" is given'],
    ]);
  });

  it('stay on the register where a later list has no such columns', () => {
    const [first] = row().records;
    const data = first?.data;
    if (data === undefined) expect.fail('the first list was not read');
    const held = { ...data, unitId: UNIT_ID };
    const later = readJoints(list('tag,unit,flange standard,size,class,facing,service', `${J1},steam`), {
      lookup: { joint: jointsByTag(held), unitId: () => UNIT_ID },
    });
    expect(later.records[0]?.state).toBe('changed');
    expect(later.records[0]?.data.gasket).toEqual(data.gasket);
    expect(later.records[0]?.data.pressures).toEqual(data.pressures);
  });
});
