import { type ChildProcess, spawn } from 'node:child_process';
import { closeSync, openSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { build } from 'vite';
import { expect } from 'vitest';
import { firstBreak } from '../../core/audit/chain.ts';
import { sha256 } from '../../electron/service/chain/sha256.ts';
import { ask, createEmpty, key, startService } from '../service/ask.ts';
import { PASSES, passOf } from '../service/passes.ts';
import { projectedTables, rebuilt, rowsOf } from '../service/rebuild.ts';
import { certify, enterPlant, jointA, saveJoint, settingFor, tighteningOf } from '../service/records.ts';
import type { JointToWorkAt, SentRecord, WorkOrder } from './work-order.ts';

interface Typed {
  readonly n: number;
  readonly at: number;
}

export interface KillReport {
  readonly kills: number;
  readonly confirmed: number;
  /** Killed with a record on its way. */
  readonly onTheWay: number;
  /** Of those, how many had been written before the kill. */
  readonly written: number;
  readonly typed: number;
  /** Oldest typing that a kill lost, ms before it. */
  readonly worstLoss: number;
}

const WORK_BEGINS = '2026-03-16T06:00:00Z';
const JOINTS = 4;
const MOST_LOST_MS = 1000;

/**
 * Kills a working process again and again at moments drawn from the seed, and looks at the register after each: nothing
 * confirmed is missing, nothing is half there, the draft is at most a second old, and what was on its way is written
 * once, before the kill or after the retry.
 */
export async function killAtWork(folder: string, kills: number, seed: number): Promise<KillReport> {
  const random = xoroshiro128plus(seed);
  const draw = (low: number, high: number) => uniformInt(random, low, high);
  const clockOffset = Date.parse(WORK_BEGINS) - Date.now();
  const joints = await jointsToWorkAt(folder);
  const script = await bundledProcess(folder);
  const confirmed = new Map<string, string>();
  const sent = new Set<string>();
  let pending: SentRecord | null = null;
  let lastKept = 0;
  let typedInAll = 0;
  let onTheWay = 0;
  let written = 0;
  let worstLoss = 0;
  for (let kill = 0; kill < kills; kill++) {
    const order: WorkOrder = { folder, clockOffset, joints, turn: draw(0, JOINTS - 1), pending };
    const said = await workUntilKilled(script, order, { lines: draw(1, 60), wait: draw(0, 40) });
    for (const { word, value } of said.lines) {
      if (word === 'sent') {
        pending = value as SentRecord;
        sent.add(pending.input.key);
      }
      if (word === 'done') {
        const { key: answered, id } = value as { key: string; id: string };
        confirmed.set(answered, id);
        pending = null;
      }
      if (word === 'found')
        expect((value as Typed | null)?.n ?? 0, 'draft found at the start').toBe(lastKept);
    }
    const state = lookAt(folder, confirmed);
    const typed = said.lines.filter(({ word }) => word === 'typed').map(({ value }) => value as Typed);
    typedInAll += typed.length;
    lastKept = state.draft;
    const firstLost = typed.find(({ n }) => n > lastKept);
    const loss = firstLost === undefined ? 0 : said.killedAt - firstLost.at;
    worstLoss = Math.max(worstLoss, loss);
    expect(loss, `kill ${kill}: the draft is at most a second old`).toBeLessThanOrEqual(MOST_LOST_MS);
    if (pending !== null) {
      onTheWay += 1;
      if (state.keys.has(pending.input.key)) written += 1;
    }
  }
  rmSync(dirname(script), { recursive: true, force: true });
  if (pending !== null) await sendAgain(folder, clockOffset, pending);
  await lookAtEverything(folder, sent.size);
  return { kills, confirmed: confirmed.size, onTheWay, written, typed: typedInAll, worstLoss };
}

/** Joints with issued settings, made by a service that is closed properly. */
async function jointsToWorkAt(folder: string): Promise<JointToWorkAt[]> {
  const started = startService(folder, WORK_BEGINS);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  const data = { name: 'B. Person', role: 'technician' };
  const second = await ask(started, 'person.save', { key: key(), id: null, version: null, data });
  const joints: JointToWorkAt[] = [];
  for (let count = 0; count < JOINTS; count++) {
    const { id: jointId } = await saveJoint(started, jointA(plant.unitId, `K-${count}`));
    const own = { ...plant, jointId };
    const { id: settingId } = await ask(started, 'setting.issue', {
      key: key(),
      data: settingFor(own),
      personId: plant.personId,
    });
    const run = { plant: own, runId: '', settingId, confirmedBy: second.id };
    joints.push({
      jointId,
      passes: PASSES.map((_, index) => passOf(run, index + 1)),
      tightening: tighteningOf(own, { settingId }),
    });
  }
  await started.service.close();
  return joints;
}

/** The process in one file, so that two hundred starts of it don't read two hundred times every module. */
async function bundledProcess(folder: string): Promise<string> {
  const outDir = join(import.meta.dirname, '..', '..', 'test-results', `faults-${basename(folder)}`);
  await build({
    configFile: false,
    publicDir: false,
    logLevel: 'warn',
    ssr: { noExternal: true, external: ['better-sqlite3'] },
    build: {
      ssr: join(import.meta.dirname, 'work-process.ts'),
      outDir,
      emptyOutDir: true,
      target: 'node22',
      minify: false,
    },
  });
  return join(outDir, 'work-process.js');
}

interface Said {
  readonly lines: readonly { readonly word: string; readonly value: unknown }[];
  readonly killedAt: number;
}

/**
 * Kills the process a moment after it has said so many lines; what it had not finished saying does not count. It speaks
 * into a file, because a write to a file is done when it returns: what a pipe has no room for would die with the process.
 */
async function workUntilKilled(
  script: string,
  order: WorkOrder,
  moment: { lines: number; wait: number },
): Promise<Said> {
  const orderFile = join(order.folder, 'order.json');
  const saidFile = join(order.folder, 'said.txt');
  writeFileSync(orderFile, JSON.stringify(order));
  const said = openSync(saidFile, 'w');
  const child = spawn(process.execPath, ['--no-warnings', script, orderFile], {
    stdio: ['ignore', said, 'pipe'],
  });
  closeSync(said);
  let complaints = '';
  child.stderr?.on('data', (chunk: Buffer) => {
    complaints += chunk.toString('utf8');
  });
  const signal = ended(child);
  const finishedLines = () => readFileSync(saidFile, 'utf8').split('\n').slice(0, -1);
  while (child.exitCode === null && finishedLines().length < moment.lines) await pause(1);
  await pause(moment.wait);
  const killedAt = Date.now();
  child.kill('SIGKILL');
  expect(await signal, complaints).toBe('SIGKILL');
  expect(complaints, 'the process at work').toBe('');
  const lines = finishedLines().map((line) => {
    const blank = line.indexOf(' ');
    return { word: line.slice(0, blank), value: JSON.parse(line.slice(blank + 1)) as unknown };
  });
  return { lines, killedAt };
}

const ended = (child: ChildProcess) =>
  new Promise<NodeJS.Signals | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (_, signal) => resolve(signal));
  });

const register = (folder: string) => join(folder, 'register.sqlite');

/** The register as the killed process left it, read by a program that knows nothing of the service. */
function lookAt(folder: string, confirmed: ReadonlyMap<string, string>) {
  const database = new Database(register(folder));
  try {
    expect(database.pragma('quick_check', { simple: true })).toBe('ok');
    const receipts = database
      .prepare<[], { key: string; answer: string }>('select key, answer from request_receipt')
      .all();
    const answers = new Map(
      receipts.map(({ key: of, answer }) => [of, (JSON.parse(answer) as { id: string }).id]),
    );
    for (const [of, id] of confirmed) expect(answers.get(of), 'a confirmed record').toBe(id);
    const events = new Set(database.prepare<[], string>('select id from event').pluck().all());
    const lost = [...confirmed.values()].filter((id) => !events.has(id));
    expect(lost, 'confirmed records without their event').toEqual([]);
    expect(halfWritten(database)).toEqual([]);
    const draft = database.prepare<[], string>('select data from draft').pluck().get();
    return {
      keys: new Set(answers.keys()),
      draft: draft === undefined ? 0 : (JSON.parse(draft) as Typed).n,
    };
  } finally {
    database.close();
  }
}

/** Events without their row, rows without their event, tightenings without all of their passes, signatures on nothing. */
function halfWritten(database: Database.Database): unknown[] {
  return database
    .prepare(
      `select event.id, event.kind from event
         left join pass_record on pass_record.id = event.id
         left join tightening on tightening.id = event.id
         left join signature on signature.id = event.id
         left join event as signed on signed.id = signature.event_id
         left join request_receipt on json_extract(request_receipt.answer, '$.id') = event.id
        where event.kind in ('pass recorded', 'tightening recorded', 'record signed')
          and (coalesce(pass_record.id, tightening.id, signature.id) is null
            or signature.hash <> signed.hash or request_receipt.key is null
            or not exists (select 1 from event_joint where event_id = event.id)
            or json_array_length(event.body, '$.data.data.passIds')
               <> (select count(*) from tightening_pass where tightening_id = event.id))`,
    )
    .all();
}

async function sendAgain(folder: string, clockOffset: number, { name, input }: SentRecord): Promise<void> {
  const started = startService(folder, new Date(Date.now() + clockOffset).toISOString());
  await ask(started, name, input as never);
  await started.service.close();
}

/** Whole file, whole chain, and every column rebuilt from the bodies alone. */
async function lookAtEverything(folder: string, records: number): Promise<void> {
  const database = new Database(register(folder), { readonly: true });
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(database.pragma('foreign_key_check')).toEqual([]);
  const links = database
    .prepare<[], { sequence: number; previousHash: string; hash: string; body: string }>(
      'select sequence, previous_hash as previousHash, hash, body from event order by sequence',
    )
    .all();
  expect(firstBreak(sha256, links)).toBeNull();
  const kinds = database
    .prepare<[], number>(
      `select count(*) from event where kind in ('pass recorded', 'tightening recorded', 'record signed')`,
    )
    .pluck()
    .get();
  expect(kinds, 'every record once').toBe(records);
  const target = await rebuilt(database);
  for (const table of projectedTables(database)) {
    expect(rowsOf(target, table), table).toEqual(rowsOf(database, table));
  }
  target.close();
  database.close();
}
