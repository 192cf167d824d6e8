import type { PassData } from '../../../core/contract/pass.ts';
import { dwellState } from '../../../core/sequence/dwell.ts';
import { outOfOrder, runStanding } from '../../../core/sequence/run.ts';
import { append } from '../chain/append.ts';
import type { WriteContext } from '../context.ts';
import { invalidField } from '../failure.ts';
import { lifeOfPass } from '../life/events.ts';
import { orderFlagsOf, toolsOfPass } from '../life/work.ts';
import {
  issuedBody,
  type PlannedAndWait,
  passesOfRun,
  plannedPasses,
  type RecordedPass,
} from '../repositories/pass.ts';
import { toUtc } from '../time.ts';
import { competencesOf } from './competence.ts';
import { checkDistinct } from './distinct.ts';
import { overloadsOf } from './overload.ts';
import { dialFlag, type Facts, flagsOf, gatherFacts, kept } from './record.ts';
import { checkNotLater, checkPerson } from './who-and-when.ts';

/** Records what one crew did of one pass. Nothing that stands against it blocks it: it is kept and flagged. */
export async function recordPass(context: WriteContext, data: PassData): Promise<string> {
  checkTold(context, data);
  for (const [field, personId] of [
    ['data.setBy', data.setBy],
    ['data.confirmedBy', data.confirmedBy],
  ] as const) {
    if (personId !== null) await checkPerson(context, field, personId);
  }
  const before = await passesOfRun(context.db, data.runId);
  if (before.some((pass) => pass.data.jointId !== data.jointId)) {
    throw invalidField('data.runId', data.runId, 'an id that no other joint uses');
  }
  const facts = await gatherFacts(context, 'tightening', { ...data, happenedAt: data.endedAt });
  const issued = data.settingId === null ? null : await issuedBody(context.db, data.settingId);
  const overloads = overloadsOf(facts.cardInput, {
    dialled: [data.dialled, ...data.readings.map((reading) => reading.dialled)],
    torques: [data.torque, ...data.readings.map((reading) => reading.torque)],
  });
  const people = await competencesOf(context, data.personIds, data.method, facts.date);
  const id = context.newId();
  const lastBolt = data.boltsDone.at(-1) ?? null;
  const told = lifeOfPass(id, data.endedAt, { data, lastBolt });
  await append(context, [
    {
      kind: 'pass recorded',
      id,
      happenedAt: data.endedAt,
      data: {
        ...facts.frozen,
        data,
        lastBolt,
        calibration: toolsOfPass(data, facts),
        flags: [
          ...flagsOf(facts, null),
          ...settingFlags(facts, data),
          ...boltFlags(facts, data),
          ...(issued === null ? [] : orderFlags(plannedPasses(issued), before, data)),
          ...(await orderFlagsOf(context, data.jointId, told)),
          ...people.flags,
          ...overloads.map(({ flag }) => flag),
        ],
        overloads: overloads.map(kept),
        competences: people.competences,
      },
    },
  ]);
  return id;
}

function checkTold(context: WriteContext, data: PassData): void {
  checkNotLater(context, data.endedAt, 'data.endedAt');
  if (toUtc(data.startedAt) > toUtc(data.endedAt)) {
    throw invalidField('data.startedAt', data.startedAt, `not after the end, ${data.endedAt}`);
  }
  if (data.pass > data.of) throw invalidField('data.pass', String(data.pass), `at most ${data.of}`);
  if (data.boltsDone.length === 0 && data.leftOut.length === 0 && data.stoppedBecause === null) {
    throw invalidField('data.boltsDone', '', 'at least one bolt, or why the work stopped');
  }
  checkDistinct('data.boltsDone', data.boltsDone);
  checkDistinct('data.leftOut', data.leftOut);
  checkDistinct(
    'data.readings',
    data.readings.map(({ bolt }) => bolt),
  );
}

function settingFlags({ setting }: Facts, data: PassData): string[] {
  const row = setting?.card.passes[data.pass - 1] ?? null;
  const byHand = row !== null && row.dial === null && row.set === null && row.torque === null;
  return [
    ...(row === null ? [] : dialFlag(setting, data.dialled, row.dial)),
    ...(setting !== null && setting.card.passes.length !== data.of
      ? [
          `recorded as pass ${data.pass} of ${data.of}; setting ${setting.number} has ${setting.card.passes.length}`,
        ]
      : []),
    ...(data.confirmedBy === null && !byHand ? ['setting not confirmed by a second person'] : []),
    ...(data.confirmedBy !== null && data.confirmedBy === data.setBy
      ? ['setting confirmed by the person who set it']
      : []),
  ];
}

function boltFlags({ boltCount }: Facts, { boltsDone, leftOut, readings }: PassData): string[] {
  const outcome = (bolt: number) => readings.find((reading) => reading.bolt === bolt)?.outcome;
  const beyond = [...boltsDone, ...leftOut].filter((bolt) => boltCount !== null && bolt > boltCount);
  return [
    ...[...new Set(beyond)].map((bolt) => `stud ${bolt} recorded; the joint has ${boltCount}`),
    ...leftOut.map((bolt) => `stud ${bolt} left out: ${outcome(bolt) ?? 'no reason recorded'}`),
  ];
}

function orderFlags(
  plan: readonly PlannedAndWait[],
  before: readonly RecordedPass[],
  data: PassData,
): string[] {
  const planned = plan[data.pass - 1];
  if (planned === undefined) return [];
  const stints = before.map((pass) => pass.data);
  const after = runStanding(plan, [...stints, data]);
  const late = outOfOrder(planned.steps, data.boltsDone);
  const open =
    after.state === 'go on' && after.pass === data.pass && !data.goRoundAgain ? after.remaining : [];
  return [
    ...after.problems.map((problem) => `order not kept: ${problem}`),
    ...(late.length === 0 ? [] : [`turned out of order: ${late.join(', ')}`]),
    ...(data.stoppedBecause === null && open.length > 0
      ? [`pass not complete: ${open.join(', ')} open`]
      : []),
    ...dwellFlags(planned, before, data),
  ];
}

/** The wait counts from the end of the pass before. */
function dwellFlags({ wait }: PlannedAndWait, before: readonly RecordedPass[], data: PassData): string[] {
  if (wait === null) return [];
  const last = before.findLast((pass) => pass.data.pass < data.pass)?.data.endedAt ?? null;
  const { state, remaining, reason } = dwellState(last, data.startedAt, wait);
  if (state === 'due') return [];
  return state === 'not known'
    ? [`wait before this pass not known: ${reason}`]
    : [`begun ${Math.ceil((remaining ?? 0) / 60)} min before the wait of ${wait / 3600} h was over`];
}
