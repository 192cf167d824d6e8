import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PassInput } from '../../core/contract/pass.ts';
import { ask, askBadly, createEmpty, key, startService, type TestService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { PASSES, passOf, type Run, STAR } from './passes.ts';
import { projectedTables, rebuilt, rowsOf } from './rebuild.ts';
import {
  breakoutOf,
  certify,
  enterPlant,
  jointA,
  saveJoint,
  settingFor,
  type TestPlant,
  tighteningOf,
} from './records.ts';

const folder = temporaryFolder();
let started: TestService;
let plant: TestPlant;
let second: string;

beforeAll(async () => {
  started = startService(folder);
  await createEmpty(started);
  plant = await enterPlant(started);
  await certify(started, plant);
  const data = { name: 'B. Person', role: 'technician' };
  second = (await ask(started, 'person.save', { key: key(), id: null, version: null, data })).id;
});
afterAll(() => started.service.close());

let joints = 1;

/** A joint of its own with an issued setting, so that the tests don't stand in each other's way. */
async function freshRun(planId = 'staged-thirds'): Promise<Run> {
  joints += 1;
  const { id: jointId } = await saveJoint(
    started,
    jointA(plant.unitId, `J-${String(joints).padStart(4, '0')}`),
  );
  const own = { ...plant, jointId };
  const issued = await ask(started, 'setting.issue', {
    key: key(),
    data: settingFor(own, { planId }),
    personId: plant.personId,
  });
  return { plant: own, runId: randomUUID(), settingId: issued.id, confirmedBy: second };
}

const open = ({ plant: { jointId } }: Run, settingId: string | null = null) =>
  ask(started, 'pass.open', { jointId, settingId });

async function record(run: Run, data: PassInput): Promise<string> {
  const { seen } = await open(run);
  return (await ask(started, 'pass.record', { key: key(), seen, data })).id;
}

const flagsOf = async (run: Run, id: string) =>
  (await open(run)).run?.stints.find(({ eventId }) => eventId === id)?.flags;

describe('a tightening in passes', () => {
  test('is stopped, resumed by another crew, recorded with its passes, and then nothing is open', async () => {
    const run = await freshRun();
    expect(await open(run)).toMatchObject({ run: null, plan: null });
    expect((await open(run, run.settingId)).plan?.map(({ name }) => name)).toEqual(
      PASSES.map(({ name }) => name),
    );
    const ids = [await record(run, passOf(run, 1)), await record(run, passOf(run, 2))];
    ids.push(
      await record(
        run,
        passOf(run, 3, {
          boltsDone: STAR.slice(0, 5),
          endedAt: '2026-03-16T10:02:30+01:00',
          stoppedBecause: { reason: 'shift change', words: 'pump left at the joint' },
        }),
      ),
    );

    const handed = await open(run);
    expect(handed.run).toMatchObject({
      settingNumber: expect.stringMatching(/^S-/),
      lastBolt: 2,
      standing: { state: 'go on', pass: 3, passName: 'Second third', next: [8], finishedPasses: [1, 2] },
    });
    expect(handed.run?.stints.at(-1)).toMatchObject({
      people: ['A. Person'],
      confirmedBy: 'B. Person',
      dialled: { text: '170', unit: 'bar' },
      stoppedBecause: { reason: 'shift change', words: 'pump left at the joint' },
      flags: [],
    });
    expect(handed.plan?.[2]?.steps.flat()).toEqual(STAR);

    const nextCrew = { personIds: [second], setBy: second, confirmedBy: plant.personId };
    ids.push(await record(run, passOf(run, 3, { ...nextCrew, boltsDone: STAR.slice(5) })));
    ids.push(await record(run, passOf(run, 4, nextCrew)));
    expect((await open(run)).run?.standing).toMatchObject({ pass: 5, next: [1] });
    ids.push(await record(run, passOf(run, 5, nextCrew)));
    const finished = await open(run);
    expect(finished.run?.standing).toMatchObject({ state: 'finished', finishedPasses: [1, 2, 3, 4, 5] });
    expect(finished.run?.stints.flatMap(({ flags }) => flags)).toEqual([]);

    const tightening = await ask(started, 'event.recordTightening', {
      key: key(),
      data: tighteningOf(run.plant, {
        settingId: run.settingId,
        happenedAt: '2026-03-16T10:06:00+01:00',
        personIds: [second],
        passIds: ids,
      }),
    });
    const event = await ask(started, 'event.get', { id: tightening.id });
    expect(event.flags).toEqual([]);
    expect(event.passes.map(({ eventId, name }) => [eventId, name])).toEqual(
      ids.map((id, at) => [id, PASSES[[0, 1, 2, 2, 3, 4][at] ?? 0]?.name]),
    );
    expect(await open(run)).toMatchObject({ run: null, seen: tightening.id });
    const history = await ask(started, 'joint.history', { id: run.plant.jointId, page: 1, pageSize: 20 });
    const passes = history.rows.filter(({ kind }) => kind === 'pass');
    expect(passes).toHaveLength(6);
    expect(passes.find(({ eventId }) => eventId === ids[2])).toMatchObject({
      by: 'A. Person, B. Person',
      summary:
        'Second third, pass 3 of 5: 5 studs, last 2, 170 bar, stopped: shift change, pump left at the joint',
    });
  });

  test('is over when the joint was broken out or tightened in another way since', async () => {
    const run = await freshRun();
    await record(run, passOf(run, 1, { endedAt: '2026-03-16T09:30:00+01:00' }));
    expect((await open(run)).run?.runId).toBe(run.runId);
    await ask(started, 'event.recordBreakout', {
      key: key(),
      data: breakoutOf(run.plant, { happenedAt: '2026-03-16T10:30:00+01:00' }),
    });
    expect((await open(run)).run).toBeNull();
    const again = { ...run, runId: randomUUID() };
    await record(again, passOf(again, 1, { endedAt: '2026-03-16T10:40:00+01:00' }));
    expect((await open(run)).run).toMatchObject({ runId: again.runId, stints: [{ pass: 1 }] });
    const data = tighteningOf(run.plant, { happenedAt: '2026-03-16T11:00:00+01:00' });
    await ask(started, 'event.recordTightening', { key: key(), data });
    expect((await open(run)).run).toBeNull();
  });

  test('a last pass is gone round again, and only its last time round counts', async () => {
    const run = await freshRun();
    for (const pass of [1, 2, 3, 4]) await record(run, passOf(run, pass));
    const readings = [{ bolt: 3, outcome: 'turned' as const }];
    const id = await record(run, passOf(run, 5, { readings, goRoundAgain: true }));
    expect(await flagsOf(run, id)).toEqual([]);
    expect((await open(run)).run?.standing).toMatchObject({ pass: 5, round: 2, done: [], next: [1] });
    await record(run, passOf(run, 5, { round: 2, endedAt: '2026-03-16T10:09:00+01:00' }));
    expect((await open(run)).run?.standing?.state).toBe('finished');
  });

  test('a wrench that only an earlier pass was done with is found by its uses', async () => {
    const run = await freshRun();
    const tool = await ask(started, 'tool.get', { id: plant.tools.driveId ?? '' });
    const other = await ask(started, 'tool.save', {
      key: key(),
      id: null,
      version: null,
      data: { ...tool.data, number: 'W-2', serial: 'other' },
    });
    const ids = [
      await record(run, passOf(run, 1, { tools: { ...plant.tools, driveId: other.id } })),
      await record(run, passOf(run, 2)),
    ];
    const before = await ask(started, 'tool.uses', { id: other.id, page: 1, pageSize: 10 });
    expect(before.total).toBe(0);
    const data = tighteningOf(run.plant, { settingId: run.settingId, passIds: ids });
    const tightening = await ask(started, 'event.recordTightening', { key: key(), data });
    const uses = await ask(started, 'tool.uses', { id: other.id, page: 1, pageSize: 10 });
    expect(uses.rows).toEqual([
      expect.objectContaining({ eventId: tightening.id, kind: 'tightening', role: 'drive unit' }),
    ]);
    const { flags } = await ask(started, 'event.get', { id: tightening.id });
    expect(flags).toEqual(['passes not complete: Second third lacks 12 studs']);
  });
});

describe('what stands against a pass is kept with it and never refuses it', () => {
  test.each<[string, Partial<PassInput>, string]>([
    ['no second person', { confirmedBy: null }, 'setting not confirmed by a second person'],
    ['a setting seen by whoever set it', { setBy: null }, ''],
    ['another pressure', { dialled: { text: '120', unit: 'bar' } }, 'dialled 120 bar; setting S-'],
    ['no setting', { settingId: null }, 'recorded without an issued setting'],
    ['out of order', { boltsDone: [7, 1, ...STAR.slice(2)] }, 'turned out of order: 1'],
    ['bolts left open', { boltsDone: STAR.slice(0, 10) }, 'pass not complete: 6, 12 open'],
    ['a stud the joint does not have', { boltsDone: [...STAR, 13] }, 'stud 13 recorded; the joint has 12'],
    [
      'a stud that would not turn',
      { boltsDone: STAR.slice(1), leftOut: [1], readings: [{ bolt: 1, outcome: 'would not turn' }] },
      'stud 1 left out: would not turn',
    ],
    ['another number of passes', { of: 4 }, 'recorded as pass 2 of 4; setting S-'],
    [
      'a pass before its turn',
      { pass: 4, name: 'Full' },
      'order not kept: Full: bolts recorded although Snug',
    ],
    [
      'other tools',
      {
        tools: { driveId: null, cassetteId: null, reducerIds: [], pumpId: null, gaugeId: null, hoseIds: [] },
      },
      'other tools than setting S-',
    ],
  ])('%s', async (_name, changes, flag) => {
    const run = await freshRun();
    if (changes.pass === undefined) await record(run, passOf(run, 1));
    const id = await record(run, passOf(run, 2, changes));
    const flags = (await open(run)).run?.stints.find(({ eventId }) => eventId === id)?.flags;
    if (flag === '') expect(flags).toEqual([]);
    else expect(flags).toContainEqual(expect.stringContaining(flag));
  });

  test('a setting confirmed by the person who set it', async () => {
    const run = await freshRun();
    await record(run, passOf(run, 1));
    const id = await record(run, passOf(run, 2, { setBy: second, confirmedBy: second }));
    expect(await flagsOf(run, id)).toEqual(['setting confirmed by the person who set it']);
  });

  test('a wait that was not kept, and none where it was', async () => {
    const run = await freshRun('pcc-1-legacy');
    const names = (await open(run, run.settingId)).plan?.map(({ name, wait }) => ({ name, wait })) ?? [];
    expect(names.map(({ wait }) => wait)).toEqual([null, null, null, null, null, 4 * 3600]);
    const at = (pass: number, changes: Partial<PassInput>) =>
      passOf(run, Math.min(pass, 5), { pass, of: 6, name: names[pass - 1]?.name ?? '', ...changes });
    for (const pass of [1, 2, 3, 4, 5]) {
      const dialled =
        pass === 1 ? null : { text: pass === 2 ? '80' : pass === 3 ? '180' : '260', unit: 'bar' as const };
      await record(
        run,
        at(pass, {
          dialled,
          startedAt: '2026-03-16T06:00:00+01:00',
          endedAt: `2026-03-16T07:0${pass}:00+01:00`,
        }),
      );
    }
    const early = await record(
      run,
      at(6, {
        startedAt: '2026-03-16T10:35:00+01:00',
        endedAt: '2026-03-16T10:50:00+01:00',
        goRoundAgain: true,
      }),
    );
    expect(await flagsOf(run, early)).toEqual(['begun 30 min before the wait of 4 h was over']);
    const due = await record(
      run,
      at(6, { round: 2, startedAt: '2026-03-16T11:05:00+01:00', endedAt: '2026-03-16T11:30:00+01:00' }),
    );
    expect(await flagsOf(run, due)).toEqual([]);
  });
});

describe('faults of the input are refused, naming the field, and change nothing', () => {
  let run: Run;
  beforeAll(async () => {
    run = await freshRun();
  });
  test.each<[string, () => Partial<PassInput>, string]>([
    ['an end before the start', () => ({ endedAt: '2026-03-16T08:00:00+01:00' }), 'data.startedAt'],
    ['an end later than now', () => ({ endedAt: '2026-03-16T18:00:00+01:00' }), 'data.endedAt'],
    ['a pass beyond the last', () => ({ pass: 6 }), 'data.pass'],
    ['a bolt named twice', () => ({ boltsDone: [1, 1] }), 'data.boltsDone'],
    [
      'two readings of one bolt',
      () => ({
        readings: [
          { bolt: 1, outcome: 'done' },
          { bolt: 1, outcome: 'done' },
        ],
      }),
      'data.readings',
    ],
    ['nothing done and nothing stopped', () => ({ boltsDone: [] }), 'data.boltsDone'],
    ['a bolt that can not be', () => ({ boltsDone: [0] }), 'data.boltsDone.0'],
    ['nobody', () => ({ personIds: [] }), 'data.personIds'],
    ['somebody who is not on the register', () => ({ confirmedBy: randomUUID() }), 'data.confirmedBy'],
    ['a setting that is not on the register', () => ({ settingId: randomUUID() }), 'data.settingId'],
    ['a pressure that is no number', () => ({ dialled: { text: 'lots', unit: 'bar' } }), 'data.dialled'],
  ])('%s', async (_name, changes, field) => {
    const before = await open(run);
    const data = passOf(run, 2, changes());
    const error = await askBadly(started, 'pass.record', { key: key(), seen: before.seen, data });
    expect(['invalid_input', 'not_found']).toContain(error.code);
    expect(error.details.map((fault) => fault.field)).toContain(field);
    expect(await open(run)).toEqual(before);
  });

  test('an id of a tightening that another joint uses', async () => {
    await record(run, passOf(run, 1));
    const other = await freshRun();
    const { seen } = await open(other);
    const data = passOf({ ...other, runId: run.runId }, 1);
    const error = await askBadly(started, 'pass.record', { key: key(), seen, data });
    expect(error.details.map(({ field }) => field)).toEqual(['data.runId']);
  });

  test('a tightening of passes that are none of this joint’s', async () => {
    const other = await freshRun();
    const passId = await record(other, passOf(other, 1));
    const data = tighteningOf(run.plant, { passIds: [passId] });
    const error = await askBadly(started, 'event.recordTightening', { key: key(), data });
    expect(error).toMatchObject({ code: 'not_found', details: [{ field: 'data.passIds', value: passId }] });
  });
});

describe('two windows on one joint', () => {
  test('of two passes sent at once one is recorded, the other is told what happened, and nothing is lost', async () => {
    const run = await freshRun();
    const { seen } = await open(run);
    const send = (personIds: string[]) =>
      started.service.handle('pass.record', { key: key(), seen, data: passOf(run, 1, { personIds }) });
    const answers = await Promise.all([send([plant.personId]), send([second])]);
    expect(answers.map(({ ok }) => ok).toSorted()).toEqual([false, true]);
    const refused = answers.find(({ ok }) => !ok);
    expect(refused).toMatchObject({
      error: {
        code: 'conflict',
        message: expect.stringMatching(
          /recorded on this joint in the meantime: pass recorded, .* Nothing was written$/,
        ),
        details: [
          {
            field: 'seen',
            allowed: expect.stringMatching(/^pass recorded, 2026-03-16T10:01.*, [AB]\. Person$/),
          },
        ],
      },
    });
    expect((await open(run)).run?.stints).toHaveLength(1);
  });

  test('the same one sent again after its answer was lost is answered as recorded', async () => {
    const run = await freshRun();
    const { seen } = await open(run);
    const input = { key: key(), seen, data: passOf(run, 1) };
    const first = await ask(started, 'pass.record', input);
    const again = await ask(started, 'pass.record', input);
    expect(again).toEqual({ ...first, alreadyRecorded: true });
    expect((await open(run)).run?.stints).toHaveLength(1);
  });
});

describe('drafts', () => {
  const kind = 'tightening at the joint';
  const about = () => ({ kind, subjectId: randomUUID() }) as const;
  const text = (bolt: number) => JSON.stringify({ bolt });

  test('are written over, read back as they were, and leave no event and no receipt', async () => {
    const subject = about();
    const writer = randomUUID();
    const before = await ask(started, 'register.state', {});
    expect(await ask(started, 'draft.get', subject)).toEqual({ draft: null });
    let version: number | null = null;
    for (const bolt of [1, 2, 3]) {
      const saved: { version: number } = await ask(started, 'draft.save', {
        ...subject,
        writer,
        version,
        data: text(bolt),
      });
      expect(saved.version).toBeGreaterThan(version ?? 0);
      version = saved.version;
    }
    expect(await ask(started, 'draft.get', subject)).toEqual({
      draft: { data: text(3), version, writer, savedAt: '2026-03-16T12:00:00.000Z' },
    });
    expect(await ask(started, 'register.state', {})).toEqual(before);
    await ask(started, 'draft.drop', { ...subject, writer, version });
    expect(await ask(started, 'draft.get', subject)).toEqual({ draft: null });
  });

  test('one window does not write over what another wrote; having read it, it may', async () => {
    const subject = about();
    const [mine, theirs] = [randomUUID(), randomUUID()];
    const first = await ask(started, 'draft.save', {
      ...subject,
      writer: mine,
      version: null,
      data: text(1),
    });
    const refused = await askBadly(started, 'draft.save', {
      ...subject,
      writer: theirs,
      version: null,
      data: text(9),
    });
    expect(refused).toMatchObject({ code: 'conflict', details: [{ field: 'version', value: 'none' }] });
    expect((await ask(started, 'draft.get', subject)).draft?.data).toBe(text(1));
    const taken = await ask(started, 'draft.save', {
      ...subject,
      writer: theirs,
      version: first.version,
      data: text(2),
    });
    const late = { ...subject, writer: mine, version: first.version };
    expect(await askBadly(started, 'draft.save', { ...late, data: text(3) })).toMatchObject({
      code: 'conflict',
    });
    expect(await askBadly(started, 'draft.drop', late)).toMatchObject({ code: 'conflict' });
    await ask(started, 'draft.drop', { ...subject, writer: theirs, version: taken.version });
    const gone = await askBadly(started, 'draft.save', { ...late, data: text(4) });
    expect(gone.details[0]?.allowed).toBe('none: it was recorded or dropped');
    expect((await ask(started, 'draft.get', subject)).draft).toBeNull();
  });

  test('a save whose answer was lost does not shut its own window out', async () => {
    const subject = about();
    const writer = randomUUID();
    await ask(started, 'draft.save', { ...subject, writer, version: null, data: text(1) });
    await ask(started, 'draft.save', { ...subject, writer, version: null, data: text(2) });
    expect((await ask(started, 'draft.get', subject)).draft?.data).toBe(text(2));
  });

  test.each([
    ['no JSON', '{', 'text in JSON'],
    ['too long', JSON.stringify('x'.repeat(65_536)), 'at most 65536 characters'],
  ])('%s is refused', async (_name, data, allowed) => {
    const input = { ...about(), writer: randomUUID(), version: null, data };
    const error = await askBadly(started, 'draft.save', input);
    expect(error).toMatchObject({ code: 'invalid_input', details: [{ field: 'data', allowed }] });
  });
});

test('rebuilt from the bodies alone, every column is as it was', async () => {
  const source = new Database(join(folder, 'register.sqlite'), { readonly: true });
  const target = await rebuilt(source);
  const tables = projectedTables(source);
  expect(tables).toEqual(expect.arrayContaining(['pass_record', 'tightening_pass', 'event_tool', 'tool']));
  expect(rowsOf(source, 'pass_record').length).toBeGreaterThan(20);
  for (const table of tables) expect(rowsOf(target, table), table).toEqual(rowsOf(source, table));
  source.close();
});
