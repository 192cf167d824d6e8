import { existsSync, rmSync, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { HistoryJob } from '../../../core/contract/history.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { Log } from '../context.ts';
import { notFound, RequestFailure } from '../failure.ts';
import { APP_VERSION } from '../version.ts';
import { type Crew, startCrew } from './crew.ts';
import type { Place } from './tasks.ts';
import { type Progress, verifyHistory } from './verify.ts';
import { exportFolder } from './write-export.ts';

/** More threads than this wait for the disk; a small register is read before a second one has started. */
const MOST_THREADS = 4;
const SMALL_BYTES = 50_000_000;

interface Options extends Place {
  readonly clock: () => Date;
  readonly newId: () => string;
  readonly log: Log;
}

type Result = Partial<Pick<HistoryJob, 'verification' | 'exported'>>;

/** Work on the history that takes its time, one at a time, in threads of its own. The newest stays to be asked for. */
export interface HistoryJobs {
  verify(input: ParsedInput<'history.verify'>): HistoryJob;
  exportAll(): HistoryJob;
  /** Null for the newest; null when there was none. */
  get(id: string | null): HistoryJob | null;
  cancel(id: string): Promise<HistoryJob>;
  close(): Promise<void>;
}

interface Running {
  job: HistoryJob;
  readonly began: number;
  readonly crew: Crew;
  /** Takes away what a stopped job leaves unfinished. */
  readonly clear: () => void;
}

export function createHistoryJobs({ clock, newId, log, ...place }: Options): HistoryJobs {
  let newest: Running | null = null;

  function start(
    task: HistoryJob['task'],
    threads: number,
    work: (crew: Crew, progress: Progress) => Promise<Result>,
    clear: () => void = () => undefined,
  ): HistoryJob {
    if (newest?.job.state === 'running') {
      const doing = newest.job.task === 'verify' ? 'a verification' : 'an export';
      throw new RequestFailure('busy', `There is ${doing} running; wait for it or cancel it`);
    }
    const running: Running = {
      job: {
        id: newId(),
        task,
        state: 'running',
        startedAt: clock().toISOString(),
        seconds: 0,
        done: 0,
        total: 0,
        verification: null,
        exported: null,
        problem: null,
      },
      began: performance.now(),
      crew: startCrew(place, threads),
      clear,
    };
    newest = running;
    const update = (changes: Partial<HistoryJob>) => {
      running.job = { ...running.job, ...changes };
    };
    const progress: Progress = {
      total: (total) => update({ total }),
      done: (amount) => update({ done: running.job.done + amount }),
    };
    work(running.crew, progress)
      .then(
        (result) => end(running, { state: 'done', done: running.job.total, ...result }),
        (error: unknown) => {
          const id = newId();
          log('error', `${task} of the history ${id}`, error);
          const problem = `It could not be finished. The log explains it under ${id}`;
          return end(running, { state: 'failed', problem });
        },
      )
      .catch((error: unknown) => log('error', `the threads of ${running.job.id} did not end`, error));
    return told(running);
  }

  async function end(running: Running, changes: Partial<HistoryJob>): Promise<void> {
    if (running.job.state !== 'running') return;
    running.job = { ...told(running), ...changes };
    await running.crew.stop();
    if (changes.state !== 'done') running.clear();
  }

  const told = ({ job, began }: Running): HistoryJob =>
    job.state === 'running' ? { ...job, seconds: (performance.now() - began) / 1000 } : job;

  return {
    verify(input) {
      const small = statSync(place.file).size < SMALL_BYTES;
      const threads = small ? 1 : Math.min(MOST_THREADS, availableParallelism());
      return start('verify', threads, async (crew, progress) => ({
        verification: await verifyHistory(crew, input, progress),
      }));
    },
    exportAll() {
      const exportedAt = clock().toISOString();
      const name = unusedName(exportFolder(place.folder), exportedAt);
      const work = async (crew: Crew, progress: Progress) => {
        const plan = await crew.run<'plan'>({ kind: 'plan' });
        progress.total(plan.events);
        const task = { kind: 'export', name, exportedAt, appVersion: APP_VERSION } as const;
        return { exported: await crew.run<'export'>(task, progress.done) };
      };
      const unfinished = join(exportFolder(place.folder), `${name}.unfinished`);
      return start('export', 1, work, () => rmSync(unfinished, { force: true }));
    },
    get: (id) => (newest !== null && (id === null || newest.job.id === id) ? told(newest) : null),
    async cancel(id) {
      if (newest === null || newest.job.id !== id) throw notFound('verification or export', 'id', id);
      await end(newest, { state: 'cancelled' });
      return told(newest);
    },
    async close() {
      if (newest !== null) await end(newest, { state: 'cancelled' });
    },
  };
}

/** An export is never written over another: two in one second get a number. */
function unusedName(folder: string, moment: string): string {
  const stem = `history-${moment.replace(/[-:]|\.\d+/g, '')}`;
  for (let number = 1; ; number += 1) {
    const name = `${stem}${number === 1 ? '' : `-${number}`}.jsonl`;
    if (!existsSync(join(folder, name))) return name;
  }
}
