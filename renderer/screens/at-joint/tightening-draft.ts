import type { PassOutcome } from '../../../core/contract/pass.ts';
import type { RequestInput } from '../../../core/contract/requests.ts';
import { type PlannedPass, type RunStanding, runStanding, type Stint } from '../../../core/sequence/run.ts';

export interface ReadingInHand {
  readonly bolt: number;
  readonly outcome: PassOutcome;
  /** Pressure or torque as typed; empty where none was read. */
  readonly text: string;
}

/** The pass that is being gone round and is in no record yet. */
export interface PassInHand {
  readonly pass: number;
  readonly round: number;
  readonly setBy: string | null;
  readonly confirmedBy: string | null;
  /** What was set where it differs from the setting, as typed; empty where it does not. */
  readonly otherValue: string;
  /** Moment the gauge was confirmed; null until then. */
  readonly startedAt: string | null;
  readonly done: readonly number[];
  readonly leftOut: readonly number[];
  readonly readings: readonly ReadingInHand[];
}

/** A record on its way. It is sent again with the same key until it is answered, so that it is written once. */
export type Sent =
  | { readonly name: 'pass.record'; readonly input: RequestInput<'pass.record'> }
  | { readonly name: 'event.recordTightening'; readonly input: RequestInput<'event.recordTightening'> };

export type Asking = 'reading' | 'stuck' | 'stop' | 'other value' | 'begin again';

export interface TighteningDraft {
  readonly runId: string;
  readonly settingId: string;
  readonly crew: readonly string[];
  readonly crewKnown: boolean;
  readonly tagRead: boolean;
  readonly lookedOver: boolean;
  /** The crew goes on, whether the wait is over or not. */
  readonly waitCutShort: boolean;
  readonly pass: PassInHand | null;
  readonly asking: Asking | null;
  /** Bolt that is asked about. */
  readonly bolt: number | null;
  /** What is being typed on the keypad. */
  readonly text: string;
  readonly stopReason: string | null;
  readonly stopWords: string;
  readonly remarks: string;
  readonly sent: Sent | null;
}

export function freshTightening(runId: string, settingId: string): TighteningDraft {
  return {
    runId,
    settingId,
    crew: [],
    crewKnown: false,
    tagRead: false,
    lookedOver: false,
    waitCutShort: false,
    pass: null,
    asking: null,
    bolt: null,
    text: '',
    stopReason: null,
    stopWords: '',
    remarks: '',
    sent: null,
  };
}

export function passInHand({ pass, round }: Pick<PassInHand, 'pass' | 'round'>): PassInHand {
  return {
    pass,
    round,
    setBy: null,
    confirmedBy: null,
    otherValue: '',
    startedAt: null,
    done: [],
    leftOut: [],
    readings: [],
  };
}

export const stintOf = ({ pass, round, done, leftOut }: PassInHand): Stint => ({
  pass,
  round,
  boltsDone: done,
  leftOut,
  goRoundAgain: false,
});

/** Where the work stands with what is in hand. */
export function liveStanding(
  plan: readonly PlannedPass[],
  recorded: readonly Stint[],
  pass: PassInHand | null,
): RunStanding {
  return runStanding(plan, pass === null ? recorded : [...recorded, stintOf(pass)]);
}

export type View =
  | 'crew'
  | 'joint'
  | 'tools'
  | 'wait'
  | 'set'
  | 'confirm'
  | 'bolt'
  | 'pass done'
  | 'run done'
  | 'unclear'
  | Asking;

interface Standing {
  readonly live: RunStanding;
  /** The wait before the next pass is not over. */
  readonly waiting: boolean;
  /** The next pass has nothing to set. */
  readonly byHand: boolean;
}

/** The one decision that is due. */
export function viewOf(draft: TighteningDraft, { live, waiting, byHand }: Standing): View {
  const { pass } = draft;
  if (draft.asking === 'stop' || draft.asking === 'begin again') return draft.asking;
  if (!draft.crewKnown) return 'crew';
  if (!draft.tagRead) return 'joint';
  if (!draft.lookedOver) return 'tools';
  if (live.state === 'record unclear') return 'unclear';
  if (pass === null) {
    if (live.state === 'finished') return 'run done';
    if (waiting && !draft.waitCutShort) return 'wait';
    return byHand ? 'bolt' : 'set';
  }
  if (draft.asking !== null) return draft.asking;
  if (pass.startedAt === null && !byHand) return pass.setBy === null ? 'set' : 'confirm';
  return live.state === 'finished' || live.pass !== pass.pass || live.round !== pass.round
    ? 'pass done'
    : 'bolt';
}

/** Bolts that were just turned, with what was seen on each; what was typed for them before is kept. */
export function withDone(pass: PassInHand, bolts: readonly number[], outcome: PassOutcome): PassInHand {
  return {
    ...pass,
    done: [...pass.done, ...bolts],
    readings: bolts.reduce((readings, bolt) => withOutcome(readings, bolt, outcome), pass.readings),
  };
}

function withOutcome(
  readings: readonly ReadingInHand[],
  bolt: number,
  outcome: PassOutcome,
): readonly ReadingInHand[] {
  const before = readings.find((reading) => reading.bolt === bolt);
  // That a bolt is done stands in the list of those done; only what was read or seen beside that is a reading.
  if (before === undefined && outcome === 'done') return readings;
  const text = before?.text ?? '';
  return [...readings.filter((reading) => reading.bolt !== bolt), { bolt, outcome, text }];
}

export function withReading(pass: PassInHand, bolt: number, text: string): PassInHand {
  const outcome = pass.readings.find((reading) => reading.bolt === bolt)?.outcome ?? 'done';
  const others = pass.readings.filter((reading) => reading.bolt !== bolt);
  const kept = text === '' && outcome === 'done' ? others : [...others, { bolt, outcome, text }];
  return { ...pass, readings: kept };
}

export function withLeftOut(pass: PassInHand, bolt: number, outcome: 'would not turn' | 'cut'): PassInHand {
  return {
    ...pass,
    leftOut: [...pass.leftOut.filter((each) => each !== bolt), bolt],
    readings: withOutcome(pass.readings, bolt, outcome),
  };
}

/** A bolt that was left out is tried once more. */
export function withTriedAgain(pass: PassInHand, bolt: number): PassInHand {
  return {
    ...pass,
    leftOut: pass.leftOut.filter((each) => each !== bolt),
    readings: pass.readings.filter((reading) => reading.bolt !== bolt),
  };
}

/** Takes back the step done last: every bolt of it, where several tools turn together. */
export function withoutLast(pass: PassInHand, steps: PlannedPass['steps']): PassInHand {
  const last = pass.done.at(-1);
  if (last === undefined) return pass;
  const step = steps.find((bolts) => bolts.includes(last)) ?? [last];
  const done = pass.done.filter((bolt) => !step.includes(bolt));
  const taken = new Set(pass.done.filter((bolt) => step.includes(bolt)));
  return { ...pass, done, readings: pass.readings.filter(({ bolt }) => !taken.has(bolt)) };
}
