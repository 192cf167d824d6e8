import type { TighteningInput } from '../../../core/contract/event.ts';
import type { PassInput, StintView, Stopped } from '../../../core/contract/pass.ts';
import type { IssuedSetting, PassRow, SettingCard } from '../../../core/contract/setting.ts';
import { noTurnCheck } from '../../../core/sequence/no-turn.ts';
import { enter } from '../../../core/units/entered.ts';
import type { Unit } from '../../../core/units/units.ts';
import { exact, inUnit, unitLabel } from '../../app/text/number.ts';
import type { PassInHand, TighteningDraft } from './tightening-draft.ts';

/** The number of a pass as it is set, in the unit of what it is set on. */
export interface DialNumber {
  readonly value: string;
  readonly unit: string;
  /** "gauge G-17". */
  readonly on: string;
  /** Unit of what is read on each bolt; null where nothing is read. */
  readonly readIn: Unit | null;
}

/** Null for a pass by hand, and where the setting has no number for it. */
export function dialNumber(card: SettingCard, row: PassRow | undefined): DialNumber | null {
  if (row === undefined) return null;
  if (row.dial !== null) {
    const { value, unit } = row.dial;
    const on = `gauge ${card.gauge?.number ?? 'not named'}`;
    return { value: exact(value), unit: unitLabel(unit), on, readIn: unit };
  }
  if (row.set !== null) {
    const [value = row.set, ...rest] = row.set.split(' ');
    const step = value === 'step';
    return {
      value: step ? rest.join(' ') || row.set : value,
      unit: step ? 'step' : rest.join(' '),
      on: `${card.method} ${card.toolSetting?.tool ?? ''}`.trim(),
      readIn: 'N.m',
    };
  }
  if (card.method === 'tensioner' && row.load !== null) {
    return { value: inUnit(row.load, 'kN'), unit: 'kN', on: 'left in each stud', readIn: null };
  }
  return null;
}

/** What was set for a pass: as the setting says, or as typed where it was something else. */
export function setValue(card: SettingCard, row: PassRow | undefined, otherValue: string) {
  const dial = row?.dial ?? null;
  if (dial !== null) {
    const text = otherValue === '' ? String(dial.value) : otherValue;
    return { dialled: enter(text, dial.unit) === null ? null : { text, unit: dial.unit }, torque: null };
  }
  if (card.method === 'tensioner' || row === undefined || (row.torque === null && otherValue === '')) {
    return { dialled: null, torque: null };
  }
  const text = otherValue === '' ? String(Number((row.torque ?? 0).toPrecision(4))) : otherValue;
  return { dialled: null, torque: { text, unit: 'N.m' as const } };
}

interface About {
  readonly issued: IssuedSetting;
  readonly draft: TighteningDraft;
}

interface Ending {
  readonly now: string;
  readonly stoppedBecause: Stopped | null;
  readonly goRoundAgain: boolean;
}

export function passInput(
  { issued, draft }: About,
  pass: PassInHand,
  { now, stoppedBecause, goRoundAgain }: Ending,
): PassInput {
  const { card, input } = issued;
  const row = card.passes[pass.pass - 1];
  const unit = dialNumber(card, row)?.readIn ?? null;
  const value = (text: string) => (text === '' || unit === null ? null : { text, unit });
  const pressure = row?.dial !== null && row?.dial !== undefined;
  return {
    runId: draft.runId,
    jointId: card.jointId,
    settingId: issued.id,
    boltSet: input.boltSet,
    method: input.method,
    torqueTool: input.torqueTool,
    pass: pass.pass,
    of: card.passes.length,
    name: row?.name ?? `Pass ${pass.pass}`,
    round: pass.round,
    goRoundAgain,
    boltsDone: [...pass.done],
    leftOut: [...pass.leftOut],
    ...(setValue(card, row, pass.otherValue) as Pick<PassInput, 'dialled' | 'torque'>),
    tools: input.tools,
    personIds: [...draft.crew],
    setBy: pass.setBy,
    confirmedBy: pass.confirmedBy,
    startedAt: pass.startedAt ?? now,
    endedAt: now,
    readings: pass.readings.map(({ bolt, outcome, text }) => ({
      bolt,
      outcome,
      dialled: (pressure ? value(text) : null) as PassInput['dialled'],
      torque: (pressure ? null : value(text)) as NonNullable<PassInput['torque']> | null,
    })),
    stoppedBecause,
    remarks: '',
  };
}

/** A last round in which a nut may stand or turn; a tensioned stud's nut is not tried. */
export const triesNuts = (card: SettingCard, row: PassRow | undefined): boolean =>
  row?.order === 'circular' && card.method !== 'tensioner';

/** What the last time round the last pass says of the nuts. */
export function lastRound(card: SettingCard, stints: readonly StintView[]) {
  const last = stints.at(-1);
  const own = stints.filter(({ pass, round }) => pass === last?.pass && round === last.round);
  const tried = own.flatMap(({ readings }) =>
    readings.flatMap(({ bolt, outcome }) =>
      outcome === 'stood' || outcome === 'turned' ? [{ bolt, turned: outcome === 'turned' }] : [],
    ),
  );
  return noTurnCheck(card.boltCount ?? 0, tried);
}

/** The tightening that the finished passes make up. */
export function tighteningOfPasses(
  { issued, draft }: About,
  stints: readonly StintView[],
  leftOut: readonly number[],
  now: string,
): TighteningInput {
  const { card, input } = issued;
  const last = stints.at(-1);
  const value = (typed: { text: string; unit: Unit } | null | undefined) =>
    typed ? { text: typed.text, unit: typed.unit } : null;
  const load = card.passes.at(-1)?.load ?? card.load;
  return {
    jointId: card.jointId,
    settingId: issued.id,
    boltSet: input.boltSet,
    method: input.method,
    torqueTool: input.torqueTool,
    happenedAt: last?.endedAt ?? now,
    personIds: [...draft.crew],
    tools: input.tools,
    remarks: draft.remarks,
    dialled: value(last?.dialled) as TighteningInput['dialled'],
    torque: value(last?.torque) as TighteningInput['torque'],
    load:
      card.method === 'tensioner' && load !== null
        ? { text: String(Number((load / 1000).toPrecision(4))), unit: 'kN' }
        : null,
    boltsTightened: Math.max(0, (card.boltCount ?? 0) - leftOut.length),
    finalPassNoTurn: lastRound(card, stints)?.state === 'all stand',
    passIds: stints.map(({ eventId }) => eventId),
  };
}
