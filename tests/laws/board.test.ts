import { describe, expect, test } from 'vitest';
import type { BoardJob } from '../../core/contract/board.ts';
import { jobScope } from '../../core/contract/campaign.ts';
import { jointState } from '../../core/contract/life.ts';
import { boardFinding, boardGroups, isClosed, jobStageOf } from '../../core/planning/board.ts';

const NOTHING = { brokenAt: null, tightenedAt: null, half: false };
const EARLY = '2026-04-02T08:00:00Z';
const LATE = '2026-04-03T08:00:00Z';

describe('how far a job has come', () => {
  test.each([
    ['unassessed', NOTHING, 'to do'],
    ['unassessed', { ...NOTHING, brokenAt: EARLY }, 'opened'],
    ['unassessed', { brokenAt: EARLY, tightenedAt: LATE, half: false }, 'made'],
    ['unassessed', { brokenAt: LATE, tightenedAt: EARLY, half: false }, 'opened'],
    ['unassessed', { brokenAt: EARLY, tightenedAt: null, half: true }, 'closing'],
    ['in service', NOTHING, 'to do'],
    ['in service', { brokenAt: EARLY, tightenedAt: LATE, half: false }, 'back'],
    ['scheduled', NOTHING, 'to do'],
    ['broken', NOTHING, 'opened'],
    ['held', { brokenAt: EARLY, tightenedAt: LATE, half: false }, 'held'],
    ['test failed', { brokenAt: EARLY, tightenedAt: LATE, half: false }, 'test failed'],
    ['reinstated', NOTHING, 'back'],
  ] as const)('%s with %o is %s', (state, work, stage) => {
    expect(jobStageOf(state, work)).toBe(stage);
  });

  test('every state has a stage, and nothing is closed that is only to do, held or failed its test', () => {
    for (const state of jointState.options) {
      const stage = jobStageOf(state, NOTHING);
      for (const scope of jobScope.options) {
        if (['to do', 'test failed'].includes(stage)) expect(isClosed(scope, stage), state).toBe(false);
        if (stage === 'held' && scope !== 'break') expect(isClosed(scope, stage)).toBe(false);
      }
    }
    expect(isClosed('break', 'opened')).toBe(true);
    expect(isClosed('break and make', 'opened')).toBe(false);
    expect(isClosed('make', 'made')).toBe(true);
  });
});

const job = (number: string, changes: Partial<BoardJob> = {}): BoardJob => ({
  jobId: number,
  number,
  jointId: number,
  tag: number,
  location: '',
  scope: 'break and make',
  temporary: false,
  system: 'steam',
  testPack: 'TP-1',
  criticality: 'mild',
  state: 'tightened',
  stage: 'made',
  closed: true,
  blockers: [],
  latest: null,
  ...changes,
});
const pack = ({ testPack }: BoardJob) => testPack;

describe('a test pack', () => {
  test('is ready when every job of it is closed, safe and followed', () => {
    const [group] = boardGroups([job('N-1'), job('N-2')], pack, []);
    expect(group).toMatchObject({ name: 'TP-1', jobs: 2, closed: 2, ready: 'yes', against: [] });
  });

  test.each([
    ['an open job', { closed: false, stage: 'opened' as const }, 'no', 'not closed yet: N-2'],
    [
      'an unsafe joint',
      { blockers: [{ kind: 'unsafe' as const, words: 'it leaks' }] },
      'no',
      'not safe: N-2',
    ],
    ['a failed test', { closed: false, stage: 'test failed' as const }, 'no', 'test failed: N-2'],
    ['a joint nobody follows', { state: 'unassessed' as const }, 'not known', 'state not followed: N-2'],
  ])('with %s is not', (_, changes, ready, words) => {
    const [group] = boardGroups([job('N-1'), job('N-2', changes)], pack, []);
    expect(group?.ready).toBe(ready);
    expect(group?.against).toContain(words);
  });

  test('stands in the order it was given, names by spelling last, none named at the end', () => {
    const jobs = ['b', '', 'TP-2', 'a', 'tp-1'].map((testPack, index) => job(`N-${index}`, { testPack }));
    const names = boardGroups(jobs, pack, ['TP-1', 'TP-2']).map(({ name }) => name);
    expect(names).toEqual(['tp-1', 'TP-2', 'a', 'b', '']);
  });
});

test('the sentence counts joints once and names the packs that are ready', () => {
  const jobs = [
    job('N-1'),
    job('N-2', {
      jointId: 'j',
      closed: false,
      testPack: 'TP-2',
      blockers: [{ kind: 'late', words: 'late' }],
    }),
    job('N-3', {
      jointId: 'j',
      closed: false,
      testPack: 'TP-2',
      blockers: [{ kind: 'late', words: 'late' }],
    }),
  ];
  expect(boardFinding({ jobs, testPacks: boardGroups(jobs, pack, []) })).toBe(
    '1 of 3 jobs closed. 1 joint late. Ready for the leak test as far as the records tell: TP-1.',
  );
});
