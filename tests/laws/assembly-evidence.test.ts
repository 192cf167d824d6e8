import { expect, test } from 'vitest';
import type * as z from 'zod';
import {
  assessEvidence,
  breakEvidence,
  clearHoldEvidence,
  closeLeakEvidence,
  holdEvidence,
  inspectionEvidence,
  isolationEvidence,
  leakEvidence,
  makeUpEvidence,
  reinstateEvidence,
  relaxationEvidence,
  releaseEvidence,
  testEvidence,
  witnessEvidence,
} from '../../core/contract/assembly.ts';

const SCHEMAS = {
  assessEvidence,
  breakEvidence,
  clearHoldEvidence,
  closeLeakEvidence,
  holdEvidence,
  inspectionEvidence,
  isolationEvidence,
  leakEvidence,
  makeUpEvidence,
  reinstateEvidence,
  relaxationEvidence,
  releaseEvidence,
  testEvidence,
  witnessEvidence,
};

const ANN = '0190a000-0000-7000-8000-000000000001';
const BEN = '0190a000-0000-7000-8000-000000000002';

/** Every leaf of an answer, with the path to it. */
function leaves(value: unknown, path = ''): [string, unknown][] {
  if (typeof value !== 'object' || value === null) return [[path, value]];
  const entries = Object.entries(value);
  if (entries.length === 0) return [[path, 'empty']];
  return entries.flatMap(([key, inner]) => leaves(inner, `${path}.${key}`));
}

/** Lists that only collect; empty in them says nothing about the joint. */
const COLLECTED = /\.(notApplicable|pictures|causes|identityChecks)$/;

test.each(Object.entries(SCHEMAS))('%s: what nobody stated is not known', (_name, schema) => {
  const stated = leaves((schema as z.ZodType).parse({})).filter(
    ([path, value]) =>
      !(
        value === null ||
        value === '' ||
        value === 'not known' ||
        (value === 'empty' && COLLECTED.test(path))
      ),
  );
  expect(stated).toEqual([]);
});

test.each(Object.entries(SCHEMAS))('%s: a field it does not have is refused', (_name, schema) => {
  expect((schema as z.ZodType).safeParse({ somethingElse: 1 }).success).toBe(false);
});

test('a leak test keeps pressure and hold as typed, beside the SI number', () => {
  const kept = testEvidence.parse({
    pressure: { text: '7.0', unit: 'bar' },
    hold: { text: '10', unit: 'min' },
    rate: { text: '1e-4', unit: 'mbar.L/s' },
  });
  expect(kept.pressure).toEqual({ text: '7.0', unit: 'bar', si: 700_000 });
  expect(kept.hold).toEqual({ text: '10', unit: 'min', si: 600 });
  // 1 mbar·L = 100 Pa · 0.001 m³.
  expect(kept.rate?.si).toBeCloseTo(1e-5, 18);
  expect(kept.result).toBe('not known');
});

test('a leak rate may be a mass, a volume, a throughput or a share, never a pressure', () => {
  for (const unit of ['kg/h', 'g/h', 'mL/min', 'L/h', 'Pa.m3/s', 'mg/s.m', 'ppmv']) {
    expect(leakEvidence.safeParse({ rate: { text: '2', unit } }).success).toBe(true);
  }
  expect(leakEvidence.safeParse({ rate: { text: '2', unit: 'bar' } }).success).toBe(false);
});

test('one person cannot be both identity checks', () => {
  const twice = releaseEvidence.safeParse({ identityChecks: [{ personId: ANN }, { personId: ANN }] });
  expect(twice.error?.issues.map(({ path, message }) => [path.join('.'), message])).toEqual([
    ['identityChecks.1.personId', 'another person than the checks before it'],
  ]);
  expect(releaseEvidence.safeParse({ identityChecks: [{ personId: ANN }, { personId: BEN }] }).success).toBe(
    true,
  );
});

test('a cause stands once, with how it is known', () => {
  const row = { cause: 'load low at assembly', level: 'measured' };
  expect(leakEvidence.safeParse({ causes: [row, row] }).success).toBe(false);
  expect(leakEvidence.safeParse({ causes: [{ cause: 'load low at assembly' }] }).success).toBe(false);
  expect(leakEvidence.parse({ causes: [row] }).causes).toEqual([{ ...row, why: '' }]);
});

test('a field that does not apply needs its reason', () => {
  const field = 'guards and insulation';
  expect(reinstateEvidence.safeParse({ notApplicable: [{ field, reason: ' ' }] }).success).toBe(false);
  expect(reinstateEvidence.safeParse({ notApplicable: [{ field, reason: 'bare line' }] }).success).toBe(true);
});

test('clock positions and bolt numbers outside their range are named', () => {
  expect(leakEvidence.safeParse({ clock: 13 }).error?.issues[0]?.message).toBe('allowed 1 to 12');
  expect(leakEvidence.safeParse({ nearBolts: [0] }).error?.issues[0]?.message).toBe('allowed 1 to 400');
});
