import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { HistoryJob } from '../../core/contract/history.ts';
import { queryBuilder } from '../../electron/service/register/dialect.ts';
import { migrate } from '../../electron/service/register/migrate.ts';
import { createService, type Service } from '../../electron/service/service.ts';
import { askService } from './ask.ts';
import { fillWithHistory, jointOf, RECORDS } from './hashed-events.ts';
import { below, type Measured, measure, onTheClock } from './measure.ts';

const MS = 1000;
const ROUNDS = 3;

/** A joint's history and the verification of the whole chain, on a million records hashed as the program does it. */
export async function historyBenches(): Promise<Measured[]> {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-history-'));
  try {
    const file = join(folder, 'register.sqlite');
    await generate(file);
    const service = createService({
      folder,
      clock: () => new Date('2026-11-25T12:00:00Z'),
      log: (level, message, error) => {
        if (level === 'error') throw new Error(message, { cause: error });
      },
    });
    try {
      return [await jointBench(service), ...(await verifyBenches(service, statSync(file).size))];
    } finally {
      await service.close();
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function generate(file: string): Promise<void> {
  const database = new Database(file);
  database.pragma('journal_mode = WAL');
  await migrate(database, queryBuilder(database));
  // Nobody reads it meanwhile, and a half-made one is thrown away.
  database.pragma('synchronous = OFF');
  database.pragma('cache_size = -400000');
  fillWithHistory(database);
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
}

function jointBench(service: Service): Promise<Measured> {
  let turn = 0;
  return measure(
    {
      name: 'History of a joint',
      what: `joint.history through the service, another joint each time; ${RECORDS.toLocaleString('en')} records`,
      unit: 'ms',
      rounds: 30,
      figure: (seconds) => seconds * MS,
      better: 'less',
      goal: below(50, 'below 50'),
    },
    async () => {
      turn += 1;
      const page = { page: 1, pageSize: 15 };
      const { rows, total } = await askService(service, 'joint.history', {
        id: jointOf(turn * 131),
        ...page,
      });
      if (rows.length !== page.pageSize || total < 100) throw new Error(`only ${total} records of the joint`);
    },
  );
}

/** In seconds on the clock, not of the processor: threads share the work out, and a person waits for it. */
async function verifyBenches(service: Service, bytes: number): Promise<Measured[]> {
  const size = `${RECORDS.toLocaleString('en')} records, file of ${(bytes / 1e9).toFixed(1)} GB`;
  const seconds: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) seconds.push(await verifyOnce(service));
  const cancelled: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) cancelled.push(await cancelOnce(service));
  return [
    onTheClock('Verification of the chain', `history.verify of ${size}, time on the clock`, 's', seconds, 15),
    onTheClock(
      'Verification cancelled',
      'from the request to its answer, with every thread through the query it was in, time on the clock',
      's',
      cancelled,
      3,
    ),
  ];
}

async function verifyOnce(service: Service): Promise<number> {
  const start = performance.now();
  let job: HistoryJob | null = await askService(service, 'history.verify', {});
  const seen = new Set<number>();
  while (job?.state === 'running') {
    await new Promise((resolve) => setTimeout(resolve, 50));
    job = await askService(service, 'history.progress', { id: job.id });
    seen.add(job?.done ?? 0);
  }
  const seconds = (performance.now() - start) / 1000;
  if (job?.verification?.sound !== true || job.verification.events !== RECORDS) {
    throw new Error(
      `the verification ${job?.state}: ${JSON.stringify(job?.verification?.findings.slice(0, 3))}`,
    );
  }
  if (seen.size < 10) throw new Error(`progress was told ${seen.size} times only`);
  return seconds;
}

async function cancelOnce(service: Service): Promise<number> {
  const { id } = await askService(service, 'history.verify', {});
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const start = performance.now();
  const { state } = await askService(service, 'history.cancel', { id });
  if (state !== 'cancelled') throw new Error(`it was ${state}, not cancelled`);
  return (performance.now() - start) / 1000;
}
