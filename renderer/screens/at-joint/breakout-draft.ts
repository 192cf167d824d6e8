import type { BreakoutInput } from '../../../core/contract/event.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import type { IssuedSetting, SettingCard } from '../../../core/contract/setting.ts';
import { passSteps } from '../../../core/sequence/pass-steps.ts';
import { dialNumber } from './pass-record.ts';

type Outcome = BreakoutInput['readings'][number]['outcome'];

export interface BrokenBolt {
  readonly bolt: number;
  readonly outcome: Outcome;
  /** First movement as typed; empty where it was not read. */
  readonly text: string;
}

export interface BreakoutDraft {
  readonly settingId: string;
  readonly crew: readonly string[];
  /** Everybody who had a part so far, crews before included. */
  readonly everybody: readonly string[];
  readonly crewKnown: boolean;
  readonly tagRead: boolean;
  readonly lookedOver: boolean;
  readonly setBy: string | null;
  readonly confirmed: boolean;
  readonly confirmedBy: string | null;
  readonly broken: readonly BrokenBolt[];
  readonly asking: 'stop' | 'stuck' | null;
  readonly text: string;
  readonly stopReason: string | null;
  readonly stopWords: string;
  readonly remarks: string;
  readonly sent: {
    readonly name: 'event.recordBreakout';
    readonly input: RequestInput<'event.recordBreakout'>;
  } | null;
}

export function freshBreakout(settingId: string): BreakoutDraft {
  return {
    settingId,
    crew: [],
    everybody: [],
    crewKnown: false,
    tagRead: false,
    lookedOver: false,
    setBy: null,
    confirmed: false,
    confirmedBy: null,
    broken: [],
    asking: null,
    text: '',
    stopReason: null,
    stopWords: '',
    remarks: '',
    sent: null,
  };
}

/** Order in which the nuts are loosened; empty while the number of studs is not known. */
export function looseningOrder(card: SettingCard): readonly number[] {
  const [first] = passSteps(card);
  return (first ?? []).flat().filter((bolt) => bolt !== null);
}

export const nextToLoosen = (order: readonly number[], broken: readonly BrokenBolt[]): number | null =>
  order.find((bolt) => !broken.some((each) => each.bolt === bolt)) ?? null;

export type BreakoutView =
  | 'crew'
  | 'joint'
  | 'tools'
  | 'set'
  | 'confirm'
  | 'bolt'
  | 'done'
  | 'stuck'
  | 'stop';

export function breakoutView(draft: BreakoutDraft, next: number | null): BreakoutView {
  if (draft.asking === 'stop') return 'stop';
  if (!draft.crewKnown) return 'crew';
  if (!draft.tagRead) return 'joint';
  if (!draft.lookedOver) return 'tools';
  if (draft.setBy === null) return 'set';
  if (!draft.confirmed) return 'confirm';
  if (next === null) return 'done';
  return draft.asking ?? 'bolt';
}

/** The same work in other hands: who, which joint, tools and gauge are gone through anew. */
export function handedOver(draft: BreakoutDraft): BreakoutDraft {
  return {
    ...draft,
    everybody: together(draft),
    crew: [],
    crewKnown: false,
    tagRead: false,
    lookedOver: false,
    setBy: null,
    confirmed: false,
    confirmedBy: null,
    asking: null,
    text: '',
  };
}

const together = ({ everybody, crew }: BreakoutDraft) => [...new Set([...everybody, ...crew])];

export function breakoutOf(issued: IssuedSetting, draft: BreakoutDraft, now: string): BreakoutInput {
  const { card, input } = issued;
  const [first] = card.passes;
  const unit = dialNumber(card, first)?.readIn ?? 'N.m';
  const pressure = first?.dial != null;
  return {
    jointId: card.jointId,
    settingId: issued.id,
    happenedAt: now,
    personIds: together(draft).slice(0, 12),
    tools: input.tools,
    method: input.method,
    torqueTool: input.torqueTool,
    boltSet: input.boltSet,
    remarks: draft.remarks,
    readings: draft.broken.map(({ bolt, outcome, text }) => {
      const value = text === '' ? null : ({ text, unit } as never);
      return { bolt, outcome, dialled: pressure ? value : null, torque: pressure ? null : value };
    }),
  };
}
