import type { CardDifference, Recomputation } from '../contract/comparison.ts';
import { jointData } from '../contract/joint.ts';
import type { SettingCard } from '../contract/setting.ts';
import { toolData } from '../contract/tool.ts';
import { NO_TOOL_ROOM } from '../tools/facts.ts';
import { freeze } from '../units/round.ts';
import { settingCard } from './card.ts';
import { type AnyTool, type CardInput, NO_SET, type ToolSet, type Wrench } from './input.ts';

/** Differences listed; the rest is counted. */
const LISTED = 100;

/**
 * Computes a frozen card again from its frozen input and lists what differs at the frozen digits. The same core version
 * has to give the same card; a newer one says where it does not.
 *
 * Equation: freeze(settingCard(input)) = card, number by number at 12 significant digits.
 * @param input input as it was frozen with the card
 * @param card card as it was frozen
 * @returns whether both are equal, and each difference with what stood there and what comes out now
 * @example recompute(input, freeze(settingCard(input))).equal // true
 * @source rule of this program
 */
export function recompute(input: CardInput, card: SettingCard): Recomputation {
  const now = freeze(settingCard(readable(input)));
  // The version itself is told beside the differences, not among them.
  const all = differences({ ...card, coreVersion: '' }, { ...now, coreVersion: '' }, []);
  const equal = all.length === 0;
  return {
    coreThen: card.coreVersion,
    coreNow: now.coreVersion,
    equal,
    differences: all.slice(0, LISTED),
    count: all.length,
    finding: findingOf(equal, all.length, card.coreVersion, now.coreVersion),
  };
}

/** Fills what later versions of the contract added to the joint with "not known", and to the tools with "none". */
function readable(frozen: CardInput): CardInput {
  const input = {
    ...frozen,
    set: readableSet(frozen.set),
    handWrench: frozen.handWrench ?? null,
    toolRoom: frozen.toolRoom ?? NO_TOOL_ROOM,
  };
  const parsed = jointData.safeParse(input.joint.data);
  return parsed.success ? { ...input, joint: { ...input.joint, data: parsed.data } } : input;
}

function readableSet(frozen: ToolSet): ToolSet {
  const set = { ...NO_SET, ...frozen };
  return {
    ...set,
    ...readableWrench(set),
    pump: readableTool(set.pump),
    gauge: readableTool(set.gauge),
    further: set.further.map(readableWrench),
  };
}

function readableWrench(wrench: Wrench): Wrench {
  const { drive, cassette, reducers, hoses } = wrench;
  return {
    drive: readableTool(drive),
    cassette: readableTool(cassette),
    reducers: reducers.map(readableTool),
    hoses: hoses.map(readableTool),
  };
}

/** What does not follow the contract at all is left as it was frozen. */
function readableTool<T extends AnyTool | null>(tool: T): T {
  if (tool === null) return tool;
  const parsed = toolData.safeParse(tool.data);
  return parsed.success ? { ...tool, data: parsed.data } : tool;
}

function findingOf(equal: boolean, count: number, then: string, now: string): string {
  if (equal && then === now) return `Computed again by core ${now}: every number is the same.`;
  if (equal) return `Computed with core ${then}; core ${now} gives the same numbers.`;
  const places = `${count} ${count === 1 ? 'place differs' : 'places differ'}`;
  return then === now
    ? `Computed again by the same core ${now}: ${places}. The record or the program has been changed.`
    : `Computed with core ${then}; with core ${now} ${places}.`;
}

function differences(frozen: unknown, now: unknown, path: readonly string[]): CardDifference[] {
  if (isParent(frozen) && isParent(now)) {
    const keys = [...new Set([...Object.keys(frozen), ...Object.keys(now)])];
    return keys.flatMap((key) =>
      differences(child(frozen, key), child(now, key), [...path, label(frozen, key)]),
    );
  }
  if (frozen === now) return [];
  return [{ place: path.join(', '), frozen: show(frozen), now: show(now) }];
}

function isParent(value: unknown): value is object {
  return value !== null && typeof value === 'object';
}

function child(parent: object, key: string): unknown {
  return (parent as Readonly<Record<string, unknown>>)[key];
}

/** Lists are counted from 1, as people count them. */
function label(parent: object, key: string): string {
  return Array.isArray(parent) ? String(Number(key) + 1) : key;
}

function show(value: unknown): string {
  if (value === undefined) return 'not there';
  if (value === null) return 'not known';
  return typeof value === 'string' ? value : (JSON.stringify(value) ?? 'not there');
}
