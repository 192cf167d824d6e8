import { describe, expect, test } from 'vitest';
import {
  compareSheet,
  registerReference,
  type SheetFacts,
  standardReference,
} from '../../core/setting/compare.ts';
import { workedJointA } from '../truth/worked-joint-a.ts';

const DATA = workedJointA().joint.data;
const REGISTER = registerReference(DATA, 384);
const SHEET: SheetFacts = {
  boltCount: 12,
  thread: '7/8 - 9 UNC',
  grade: 'A193 Gr. B7',
  gasket: null,
  torque: 380,
};

describe('sheet against register, standard and sister joints', () => {
  test('agrees with the register whatever the spelling, and says what it could not compare', () => {
    const { differences, agreed, notCompared } = compareSheet(SHEET, [REGISTER], 0.05);
    expect(differences).toEqual([]);
    expect(agreed).toBe(4);
    expect(notCompared.map(({ field }) => field)).toEqual(['gasket']);
  });

  test('names the wrong bolt size against register and standard', () => {
    const standard = standardReference(DATA);
    if (standard === null) throw new Error('NPS 8 Class 300 has a row');
    const sheet = { ...SHEET, thread: '1-8 UNC', boltCount: 16 };
    const { differences } = compareSheet(sheet, [REGISTER, standard], 0.05);
    expect(differences.map(({ field, against }) => `${field} ${against}`)).toEqual([
      'boltCount register',
      'thread register',
      'boltCount standard',
      'thread standard',
    ]);
    expect(differences.at(-1)?.text).toBe(
      'thread: the sheet says 1-8 UNC, standard ASME B16.5, 8, 300 says 7/8-9 UNC',
    );
  });

  test('names the sister whose torque differs', () => {
    const sister = { ...registerReference({ ...DATA, tag: 'E-101B' }, 600, 'sister joint') };
    const { differences } = compareSheet(SHEET, [REGISTER, sister], 0.05);
    expect(differences.map(({ field, name }) => `${field} ${name}`)).toEqual(['torque E-101B']);
  });

  test('1-1/8-7 and 1-1/8-8 are two threads', () => {
    const eight = { ...REGISTER, facts: { ...REGISTER.facts, thread: '1-1/8-8 8UN' } };
    const { differences } = compareSheet({ ...SHEET, thread: '1-1/8-7 UNC' }, [eight], 0.05);
    expect(differences.map(({ field }) => field)).toEqual(['thread']);
  });

  test('an empty sheet agrees with nothing', () => {
    const empty: SheetFacts = { boltCount: null, thread: ' ', grade: null, gasket: null, torque: Number.NaN };
    const { differences, agreed, notCompared } = compareSheet(empty, [REGISTER], 0.05);
    expect([differences.length, agreed, notCompared.length]).toEqual([0, 0, 5]);
  });

  test('without a tolerance torques are not compared', () => {
    const { notCompared } = compareSheet(SHEET, [REGISTER], Number.NaN);
    expect(notCompared.map(({ field }) => field)).toContain('torque');
  });

  test('a joint outside the standards has no standard to be held against', () => {
    expect(
      standardReference({ ...DATA, flange: { kind: 'custom', description: 'girth flange', siteRow: null } }),
    ).toBeNull();
  });
});
