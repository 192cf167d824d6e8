import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import type { CaseDecision } from '../../core/contract/recall.ts';
import { ask, key } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { rebuilt, rowsOf } from './rebuild.ts';
import { caseOn, FAILING, recallPlant, record, tighten } from './recall-plant.ts';
import { certify } from './records.ts';

test('a joint’s history tells every decision of a case on it, with date, person and reason, and which one stands', async () => {
  const folder = temporaryFolder();
  const plant = await recallPlant(folder);
  const { started } = plant;
  const one = await tighten(plant, { tag: 'J-1', day: '2026-02-01' });
  const again = await record(plant, one.jointId, '2026-03-01');
  const other = await tighten(plant, { tag: 'J-2', day: '2026-04-01' });
  const { id: certificateId } = await certify(started, plant, FAILING);
  const data = caseOn(plant, { kind: 'certificate', certificateId });
  const { id: caseId } = await ask(started, 'case.open', { key: key(), data });
  const decide = (eventIds: string[], decision: CaseDecision, day: string, personId = plant.personId) =>
    ask(started, 'case.decide', {
      key: key(),
      data: {
        caseId,
        eventIds,
        decision,
        reason: `${decision}: as found in the field`,
        personId,
        happenedAt: `${day}T09:00:00+02:00`,
      },
    });
  const history = async (id: string) => {
    const { rows, total } = await ask(started, 'joint.history', { id, page: 1, pageSize: 20 });
    expect(rows).toHaveLength(total);
    return rows
      .filter(({ kind }) => kind === 'case decided')
      .map(({ happenedAt, by, summary, flags, caseId: named }) => {
        expect(named).toBe(caseId);
        return [happenedAt.slice(0, 10), by, summary, flags];
      });
  };
  expect(await history(one.jointId)).toEqual([]);
  await decide([one.eventId, again], 'monitor', '2026-08-02');
  await decide([again, other.eventId], 'replace the gasket', '2026-08-03', plant.approverId);
  await decide([one.eventId], 'retighten', '2026-08-04');
  const subject = 'OT-0001, drive unit W-1';
  expect(await history(one.jointId)).toEqual([
    [
      '2026-08-04',
      'A. Person',
      `${subject}: retighten (tightening of 2026-02-01). retighten: as found in the field`,
      [],
    ],
    [
      '2026-08-03',
      'B. Engineer',
      `${subject}: replace the gasket (tightening of 2026-03-01). replace the gasket: as found in the field`,
      [],
    ],
    [
      '2026-08-02',
      'A. Person',
      `${subject}: monitor (tightening of 2026-02-01, 2026-03-01). monitor: as found in the field`,
      ['a later decision of the case stands instead'],
    ],
  ]);
  expect((await history(other.jointId)).map(([day]) => day)).toEqual(['2026-08-03']);
  expect(await history(plant.jointId)).toEqual([]);

  await started.service.close();
  const database = new Database(join(folder, 'register.sqlite'), { readonly: true });
  expect(rowsOf(await rebuilt(database), 'event_joint')).toEqual(rowsOf(database, 'event_joint'));
  database.close();
});
