import { describe, expect, it } from 'vitest';
import { type JointData, jointData } from '../../core/contract/joint.ts';
import { jointsByTag, readJoints, UNIT_ID } from './files.ts';
import { HEADINGS, J1, list } from './joint-list.ts';

describe('joints that are on the register', () => {
  const before: JointData = jointData.parse({
    tag: 'J-1',
    unitId: UNIT_ID,
    location: 'pump P-101',
    service: 'crude oil',
    serviceTemperature: { text: '180', unit: 'degC' },
    flange: { kind: 'standard', standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' },
    bolting: {
      count: null,
      thread: null,
      circle: null,
      grade: 'ASTM A193 B7',
      yieldStrength: null,
      yieldOrigin: '',
      studLength: { text: '5.5', unit: 'in' },
      grip: null,
      nutSeries: null,
    },
    gasket: { type: 'spiral wound', thickness: { text: '4.5', unit: 'mm' } },
    lubricant: {
      name: 'oil',
      batch: '',
      nutFactor: { text: '0.16', unit: 'one' },
      nutFactorCv: null,
      frictionThread: null,
      frictionBearing: null,
      evidence: 'measured',
      source: 'test 1',
    },
    target: {
      mode: 'percent of yield',
      percent: { text: '50', unit: 'percent' },
      area: 'root',
      basis: 'BP-04',
    },
    limits: {
      boltStressMax: null,
      boltStressMin: null,
      boltStressArea: 'root',
      flangeBoltStressMax: null,
      source: '',
    },
    space: { radialGap: null },
    remarks: 'old',
  });
  const lookup = { joint: jointsByTag(before), unitId: () => UNIT_ID };

  it('are unchanged when the file says the same', () => {
    const { report, records } = readJoints(list(HEADINGS, J1), { lookup });
    expect(report).toMatchObject({ added: 0, changed: 0, unchanged: 1, good: 1 });
    expect(records[0]).toMatchObject({ state: 'unchanged', existing: { version: 3 } });
  });

  it('keep what the file has no column for', () => {
    const { records, report } = readJoints(list(`${HEADINGS},target value,remarks`, `${J1},55,new`), {
      lookup,
    });
    expect(report).toMatchObject({ changed: 1, faultCount: 0 });
    const { unitId: _, ...kept } = before;
    expect(records[0]?.data).toEqual({
      ...kept,
      target: { ...before.target, percent: { text: '55', unit: 'percent', si: 0.55 } },
      remarks: 'new',
    });
  });

  it('lose what a column with a blank cell says is blank', () => {
    const { records } = readJoints(list(`${HEADINGS},stud grade,lubricant,target mode,gasket`, `${J1},,,,`), {
      lookup,
    });
    expect(records[0]?.data.bolting.grade).toBeNull();
    expect(records[0]?.data).toMatchObject({ lubricant: null, target: null });
  });

  it('change when they move to another plant unit', () => {
    const { records, newUnits } = readJoints(list(HEADINGS, J1), {
      lookup: { ...lookup, unitId: () => null },
    });
    expect(records[0]?.state).toBe('changed');
    expect(newUnits).toEqual(['Unit 100']);
  });
});
