import type { Board, BoardGroup, BoardJob, JobStage } from '../contract/board.ts';
import type { JobScope } from '../contract/campaign.ts';
import type { JointState } from '../contract/life.ts';

/** What records since the campaign's start say of a joint. */
export interface WorkSince {
  /** Newest breakout or break step, ISO 8601; null for none. */
  readonly brokenAt: string | null;
  /** Newest tightening that was complete; null for none. */
  readonly tightenedAt: string | null;
  /** A pass of a tightening that is not finished. */
  readonly half: boolean;
}

const BY_STATE: Readonly<Partial<Record<JointState, JobStage>>> = {
  broken: 'opened',
  inspected: 'opened',
  held: 'held',
  'made up': 'closing',
  tightening: 'closing',
  tightened: 'made',
  witnessed: 'witnessed',
  tested: 'tested',
  'test failed': 'test failed',
  reinstated: 'back',
};

/**
 * How far the work of a job has come. A joint whose state is followed tells it by its state; of one that nobody has
 * assessed, the records since the campaign's start do.
 *
 * @param state state of the joint
 * @param work records since the campaign's start
 * @returns stage; "to do" where nothing says that anything was done
 * @example jobStageOf('unassessed', { brokenAt: '2026-04-02T08:00:00Z', tightenedAt: null, half: false }) // 'opened'
 * @source rule of this program; states as docs/joint-states.md has them
 */
export function jobStageOf(state: JointState, { brokenAt, tightenedAt, half }: WorkSince): JobStage {
  const byState = BY_STATE[state];
  if (byState !== undefined) return byState;
  const made = tightenedAt !== null && (brokenAt === null || Date.parse(tightenedAt) >= Date.parse(brokenAt));
  if (state === 'in service' || state === 'leak watch') return made ? 'back' : 'to do';
  if (made) return 'made';
  if (half) return 'closing';
  return brokenAt === null ? 'to do' : 'opened';
}

const MADE: readonly JobStage[] = ['made', 'witnessed', 'tested', 'back'];

/**
 * Whether a job's scope is done.
 *
 * @param scope break, make, or both
 * @param stage how far it has come
 * @returns true when nothing of the scope is left; a failed test is not done
 * @example isClosed('break', 'opened') // true
 * @source rule of this program
 */
export function isClosed(scope: JobScope, stage: JobStage): boolean {
  if (stage === 'test failed') return false;
  return scope === 'break' ? stage !== 'to do' : MADE.includes(stage);
}

/**
 * Jobs counted by system or by test pack, with whether the leak test of a pack can begin.
 *
 * @param jobs jobs on the board
 * @param nameOf what they are put together by; jobs without a name form a group of their own
 * @param order names in the order they are wanted in, the rest behind them by name
 * @returns one group per name
 * @example boardGroups([], () => '', []) // []
 * @source rule of this program: a pack is ready when every job that closes a joint is made up, nothing unsafe is open and every joint’s state is followed
 */
export function boardGroups(
  jobs: readonly BoardJob[],
  nameOf: (job: BoardJob) => string,
  order: readonly string[],
): BoardGroup[] {
  const keys = order.map((name) => name.toLowerCase());
  const place = (name: string) => {
    const at = keys.indexOf(name.toLowerCase());
    return name === '' ? keys.length + 1 : at < 0 ? keys.length : at;
  };
  return [...Map.groupBy(jobs, (job) => nameOf(job).toLowerCase()).values()]
    .map((own) => groupOf(own[0] === undefined ? '' : nameOf(own[0]), own))
    .sort((a, b) => place(a.name) - place(b.name) || (a.name < b.name ? -1 : 1));
}

function groupOf(name: string, jobs: readonly BoardJob[]): BoardGroup {
  const count = (wanted: (job: BoardJob) => boolean) => jobs.filter(wanted).length;
  const has = (job: BoardJob, kind: string) => job.blockers.some((blocker) => blocker.kind === kind);
  const open = jobs.filter(({ closed }) => !closed);
  const unsafe = jobs.filter((job) => has(job, 'unsafe'));
  const failed = jobs.filter(({ stage }) => stage === 'test failed');
  // A joint that stays open is not under the test.
  const blind = jobs.filter(({ state, scope }) => state === 'unassessed' && scope !== 'break');
  const against = [
    ...named(open, 'not closed yet'),
    ...named(unsafe, 'not safe'),
    ...named(failed, 'test failed'),
    ...named(blind, 'state not followed'),
  ];
  return {
    name,
    jobs: jobs.length,
    closed: jobs.length - open.length,
    held: count(({ stage }) => stage === 'held'),
    unsafe: unsafe.length,
    notKnown: count((job) => has(job, 'not known')),
    late: count((job) => has(job, 'late')),
    temporary: count(({ temporary }) => temporary),
    ready: open.length + unsafe.length + failed.length > 0 ? 'no' : blind.length > 0 ? 'not known' : 'yes',
    against,
  };
}

const SHOWN = 6;

function named(jobs: readonly BoardJob[], words: string): string[] {
  if (jobs.length === 0) return [];
  const shown = jobs.slice(0, SHOWN).map(({ number }) => number);
  const more = jobs.length > SHOWN ? ` and ${jobs.length - SHOWN} more` : '';
  return [`${words}: ${shown.join(', ')}${more}`];
}

const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;

/**
 * The board in one sentence.
 *
 * @param board jobs and test packs
 * @returns a sentence
 * @example boardFinding({ jobs: [], testPacks: [] }) // 'No job is on the list yet.'
 * @source rule of this program
 */
export function boardFinding({ jobs, testPacks }: Pick<Board, 'jobs' | 'testPacks'>): string {
  if (jobs.length === 0) return 'No job is on the list yet.';
  const closed = jobs.filter((job) => job.closed).length;
  const joints = (kind: string) =>
    new Set(jobs.filter((job) => job.blockers.some((one) => one.kind === kind)).map(({ jointId }) => jointId))
      .size;
  const unsafe = joints('unsafe');
  const late = joints('late');
  const ready = testPacks.filter((pack) => pack.name !== '' && pack.ready === 'yes').map(({ name }) => name);
  return [
    `${closed} of ${many(jobs.length, 'job')} closed.`,
    ...(unsafe === 0 ? [] : [`${many(unsafe, 'joint')} not safe.`]),
    ...(late === 0 ? [] : [`${many(late, 'joint')} late.`]),
    ready.length === 0
      ? 'No test pack is ready for its leak test.'
      : `Ready for the leak test as far as the records tell: ${ready.join(', ')}.`,
  ].join(' ');
}
