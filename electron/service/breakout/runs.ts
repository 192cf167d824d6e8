import { forecastsFinding } from '../../../core/breakout/forecast-many.ts';
import type { ForecastRow, ForecastRun } from '../../../core/contract/forecast-list.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { Log, ReadContext } from '../context.ts';
import { notFound, RequestFailure } from '../failure.ts';
import { searchText } from '../fold.ts';
import { forecastsOf, jointsToLookAt, type LookedAt } from './many.ts';

interface Options {
  readonly clock: () => Date;
  readonly newId: () => string;
  readonly log: Log;
}

/** Forecasts of many joints, one run at a time; the newest stays to be asked for until the program ends. */
export interface ForecastRuns {
  start(context: ReadContext, input: ParsedInput<'forecasts.start'>): Promise<ForecastRun>;
  get(id: string | null): ForecastRun | null;
  cancel(id: string): Promise<ForecastRun>;
  rows(input: ParsedInput<'forecasts.rows'>): { rows: ForecastRow[]; total: number };
  close(): Promise<void>;
}

interface Running {
  run: ForecastRun;
  rows: ForecastRow[];
  readonly began: number;
  /** Set when somebody cancels; the work ends at its next pause. */
  stopping: boolean;
  work: Promise<void>;
}

export function createForecastRuns({ clock, newId, log }: Options): ForecastRuns {
  let newest: Running | null = null;

  const told = ({ run, began, rows }: Running): ForecastRun =>
    run.state === 'running'
      ? { ...run, done: rows.length, seconds: (performance.now() - began) / 1000 }
      : run;

  const named = (id: string): Running => {
    if (newest === null || newest.run.id !== id) throw notFound('run of forecasts', 'id', id);
    return newest;
  };

  async function work(running: Running, context: ReadContext, looked: LookedAt): Promise<void> {
    const end = (changes: Partial<ForecastRun>) => {
      running.run = { ...told(running), ...changes };
    };
    try {
      for await (const rows of forecastsOf(context, looked)) {
        running.rows.push(...rows);
        if (running.stopping) return end({ state: 'cancelled', finding: 'Cancelled before the end.' });
      }
      const finding = forecastsFinding(running.rows, looked.drive?.number ?? null);
      end({ state: 'done', total: running.rows.length, finding });
    } catch (error) {
      const id = newId();
      log('error', `forecasts of many joints ${id}`, error);
      end({ state: 'failed', problem: `It could not be finished. The log explains it under ${id}` });
    }
  }

  return {
    async start(context, input) {
      if (newest?.run.state === 'running') {
        throw new RequestFailure('busy', 'Forecasts are being worked out; wait for them or cancel them');
      }
      const looked = await jointsToLookAt(context, input);
      const running: Running = {
        run: {
          id: newId(),
          state: 'running',
          startedAt: clock().toISOString(),
          seconds: 0,
          done: 0,
          total: looked.joints.length,
          drive: looked.drive,
          finding: '',
          problem: null,
        },
        rows: [],
        began: performance.now(),
        stopping: false,
        work: Promise.resolve(),
      };
      newest = running;
      running.work = work(running, context, looked);
      return told(running);
    },
    get: (id) => (newest !== null && (id === null || newest.run.id === id) ? told(newest) : null),
    async cancel(id) {
      const running = named(id);
      running.stopping = true;
      await running.work;
      return told(running);
    },
    rows({ id, text, sort, direction, page, pageSize }) {
      const words = searchText(text).split(/\s+/).filter(Boolean);
      const found = named(id).rows.filter((row) => {
        const told = searchText(row.tag, row.unit, row.className);
        return words.every((word) => told.includes(word));
      });
      const sign = direction === 'asc' ? 1 : -1;
      found.sort((a, b) => {
        if (sort === 'tag') return sign * byTag(a, b);
        const [x, y] = [a[sort], b[sort]];
        // What is not known stands last, whichever way it is sorted.
        if (x === null || y === null) return x === y ? byTag(a, b) : x === null ? 1 : -1;
        return x === y ? byTag(a, b) : sign * (x - y);
      });
      return { rows: found.slice((page - 1) * pageSize, page * pageSize), total: found.length };
    },
    async close() {
      if (newest === null) return;
      newest.stopping = true;
      await newest.work;
    },
  };
}

const tags = new Intl.Collator('en', { numeric: true });
const byTag = (a: ForecastRow, b: ForecastRow) => tags.compare(a.tag, b.tag) || a.boltSet - b.boltSet;
