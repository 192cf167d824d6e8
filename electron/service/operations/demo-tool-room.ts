import { attachmentData } from '../../../core/contract/attachment.ts';
import { checkData, checklistData, toolRuleData } from '../../../core/contract/check.ts';
import { kitData, moveData } from '../../../core/contract/custody.ts';
import { caseData, closeData, decisionData } from '../../../core/contract/recall.ts';
import type { DemoAttachment, DemoCase, DemoCheck, DemoMove, DemoRoom } from '../../../seed/types.ts';
import type { WriteContext } from '../context.ts';
import { addAttachment } from '../requests/attachment.ts';
import { closeCase, decideCase, getCase, openCase } from '../requests/case.ts';
import { saveChecklist, saveToolRule } from '../requests/check.ts';
import { saveKit } from '../requests/kit.ts';
import { recordCheck } from './check.ts';
import { moveTools } from './custody.ts';
import { type DemoStep, idOf, type Keys } from './demo-keys.ts';

/** Everything the invented tool room does beside the work, each on the day it speaks of. */
export function roomSteps(room: DemoRoom): DemoStep[] {
  return [
    { at: Date.parse(room.rulesAt), replay: (context, keys) => replayRules(context, keys, room) },
    ...room.checks.map(
      (check): DemoStep => ({
        at: Date.parse(check.happenedAt),
        replay: (context, keys) => replayCheck(context, keys, check),
      }),
    ),
    ...room.moves.map(
      (move): DemoStep => ({
        at: Date.parse(move.happenedAt),
        replay: (context, keys) => replayMove(context, keys, move),
      }),
    ),
    ...room.cases.flatMap(caseSteps),
    {
      at: Date.parse(room.kitsAt),
      replay: async (context, keys) => {
        await replayKits(context, keys, room);
        for (const attachment of room.attachments) await replayAttachment(context, keys, attachment);
      },
    },
  ];
}

const newRecord = (context: WriteContext) => ({ key: context.newId(), id: null, version: null });

async function replayRules(context: WriteContext, keys: Keys, room: DemoRoom): Promise<void> {
  for (const rule of room.rules) {
    await saveToolRule(context, { ...newRecord(context), data: toolRuleData.parse(rule) });
  }
  for (const list of room.checklists) {
    const { id } = await saveChecklist(context, { ...newRecord(context), data: checklistData.parse(list) });
    keys.records.set(list.name, id);
  }
}

async function replayCheck(context: WriteContext, keys: Keys, check: DemoCheck): Promise<void> {
  const { tool, person, checklist, name, ...rest } = check;
  const { id } = await recordCheck(
    context,
    checkData.parse({
      ...rest,
      toolId: idOf(keys.tools, tool),
      personId: idOf(keys.people, person),
      checklist: checklist === null ? null : { id: idOf(keys.records, checklist), version: 1 },
    }),
  );
  if (name !== null) keys.records.set(name, id);
}

async function replayMove(context: WriteContext, keys: Keys, move: DemoMove): Promise<void> {
  const { tools, person, holder, ...rest } = move;
  await moveTools(
    context,
    moveData.parse({
      ...rest,
      toolIds: tools.map((number) => idOf(keys.tools, number)),
      personId: idOf(keys.people, person),
      holderId: holder === null ? null : idOf(keys.people, holder),
    }),
  );
}

async function replayKits(context: WriteContext, keys: Keys, { kits }: DemoRoom): Promise<void> {
  for (const { tools, joints, ...rest } of kits) {
    const data = kitData.parse({
      ...rest,
      toolIds: tools.map((number) => idOf(keys.tools, number)),
      jointIds: joints.map((tag) => idOf(keys.joints, tag)),
    });
    await saveKit(context, { ...newRecord(context), data });
  }
}

async function replayAttachment(
  context: WriteContext,
  keys: Keys,
  { certificate, person, text, ...rest }: DemoAttachment,
): Promise<void> {
  const data = attachmentData.parse({
    ...rest,
    owner: { kind: 'event', id: idOf(keys.records, certificate) },
    content: Buffer.from(text, 'utf8').toString('base64'),
    personId: idOf(keys.people, person),
  });
  await addAttachment(context, { key: context.newId(), data });
}

function caseSteps(one: DemoCase): DemoStep[] {
  const { opened, decided, closed } = one;
  const caseId = (keys: Keys) => idOf(keys.records, caseKey(one));
  return [
    {
      at: Date.parse(opened.at),
      replay: async (context, keys) => {
        const data = caseData.parse({
          subject: { kind: 'tool', toolId: idOf(keys.tools, one.tool) },
          basis: { kind: 'check', checkId: idOf(keys.records, one.check) },
          happenedAt: opened.at,
          personId: idOf(keys.people, opened.person),
          remarks: opened.remarks,
        });
        const { id } = await openCase(context, { key: context.newId(), data });
        keys.records.set(caseKey(one), id);
      },
    },
    {
      at: Date.parse(decided.at),
      replay: async (context, keys) => {
        const { recall } = await getCase(context, { id: caseId(keys) });
        const eventIds = recall.affected.map(({ eventId }) => eventId);
        if (eventIds.length === 0) return;
        const data = decisionData.parse({
          caseId: caseId(keys),
          eventIds,
          decision: decided.decision,
          reason: decided.reason,
          personId: idOf(keys.people, decided.person),
          happenedAt: decided.at,
        });
        await decideCase(context, { key: context.newId(), data });
      },
    },
    {
      at: Date.parse(closed.at),
      replay: async (context, keys) => {
        const data = closeData.parse({
          caseId: caseId(keys),
          personId: idOf(keys.people, closed.person),
          happenedAt: closed.at,
          conclusion: closed.conclusion,
          measures: closed.measures,
        });
        await closeCase(context, { key: context.newId(), data });
      },
    },
  ];
}

const caseKey = ({ check }: DemoCase) => `case: ${check}`;
