import { expect, test } from 'vitest';
import {
  type JobNeeds,
  materialGaps,
  materialRows,
  materialsFinding,
} from '../../core/planning/materials.ts';

const needs = (number: string, changes: Partial<JobNeeds> = {}): JobNeeds => ({
  jobId: number,
  number,
  tag: number,
  scope: 'break and make',
  bolts: 12,
  stud: '7/8-9 UNC',
  nut: '36.5 mm',
  gasket: 'NPS 8, spiral wound',
  lubricant: 'paste',
  seized: 0.4,
  ...changes,
});
const row = (jobs: readonly JobNeeds[], kind: string) => materialRows(jobs).find((one) => one.kind === kind);

test('pieces are added up over jobs of one kind, spares rounded up once over all of them', () => {
  const jobs = [needs('N-1'), needs('N-2'), needs('N-3', { stud: '7/8-9 unc' })];
  expect(row(jobs, 'stud')).toMatchObject({ pieces: 36, spare: 2, jobs: ['N-1', 'N-2', 'N-3'] });
  expect(row(jobs, 'nut')).toMatchObject({ pieces: 72, spare: 4 });
  expect(row(jobs, 'gasket')).toMatchObject({ pieces: 3, spare: 0 });
  expect(row(jobs, 'lubricant')).toMatchObject({ pieces: 36 });
  const whole = [needs('N-1', { seized: 0.1 }), needs('N-2', { seized: 0.2 }), needs('N-3', { seized: 0.7 })];
  expect(row(whole, 'stud')?.spare).toBe(1);
});

test('a joint that is only opened needs no gasket, one that is only closed no spare studs', () => {
  const opened = [needs('N-1', { scope: 'break' })];
  expect(materialRows(opened).map(({ kind }) => kind)).toEqual(['stud', 'nut']);
  expect(row([needs('N-1', { scope: 'make' })], 'stud')).toMatchObject({ pieces: 12, spare: 0 });
});

test('what is not known is left out of the list and named with what to enter', () => {
  const blank = needs('N-1', {
    bolts: null,
    stud: null,
    nut: null,
    gasket: null,
    lubricant: null,
    seized: null,
  });
  expect(materialRows([blank])).toEqual([]);
  expect(materialGaps(blank)).toHaveLength(6);
  expect(materialGaps(blank)[0]).toBe('number of bolts: count them');
  expect(materialGaps(needs('N-2'))).toEqual([]);
  expect(materialsFinding([], 1, 1)).toContain('Of 1 something is not known');
});

test('the order of the jobs changes no number', () => {
  const jobs = [needs('N-1'), needs('N-2', { stud: 'M20' }), needs('N-3', { gasket: 'another' })];
  const plain = (list: readonly JobNeeds[]) =>
    materialRows(list).map(({ kind, what, pieces, spare }) => [kind, what, pieces, spare]);
  expect(plain(jobs.toReversed())).toEqual(plain(jobs));
});
