import { useState } from 'react';
import { useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { OpenPasses, Stopped } from '../../../core/contract/pass.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { dwellState } from '../../../core/sequence/dwell.ts';
import type { RunStanding } from '../../../core/sequence/run.ts';
import { useRegister } from '../../app/register.ts';
import { nowAtSite } from '../../app/text/time.ts';
import { BoltView } from './bolt-view.tsx';
import { AskTwice, RunDoneView, SentView, StoppedView, StopView, UnclearView } from './end-views.tsx';
import { AtShell, NotKept, Trouble } from './parts.tsx';
import { dialNumber } from './pass-record.ts';
import {
  ConfirmView,
  OtherValueView,
  PassDoneView,
  ReadingView,
  SetView,
  StuckView,
  WaitView,
} from './pass-views.tsx';
import { usePeopleNames } from './people.tsx';
import { CrewView, JointView, ResumeView, ToolsView } from './start-views.tsx';
import {
  liveStanding,
  type PassInHand,
  passInHand,
  type TighteningDraft,
  viewOf,
  withDone,
  withLeftOut,
  withoutLast,
  withReading,
  withTriedAgain,
} from './tightening-draft.ts';
import { overtaken, type Start, useKeptWork } from './use-kept-work.ts';
import { useRecording } from './use-recording.ts';

export interface TighteningProps {
  readonly joint: JointDetail;
  readonly issued: IssuedSetting;
  readonly open: OpenPasses;
  readonly start: Start<TighteningDraft>;
  /** Moment the draft was kept; null for work that begins now. */
  readonly keptAt: string | null;
  readonly onBeginAgain: () => void;
  readonly onTakeUp: () => void;
}

/** Tightening by an issued setting, one decision after the other. */
export function TighteningWork(props: TighteningProps) {
  const { joint, issued, open, start, keptAt, onBeginAgain, onTakeUp } = props;
  const { card } = issued;
  const [, goTo] = useLocation();
  const { timeZone } = useRegister();
  const work = useKeptWork('tightening at the joint', joint.id, start);
  const { value: draft, change } = work;
  const recording = useRecording(props, work);
  const [resumed, setResumed] = useState(keptAt === null || !start.value.crewKnown);
  const crew = usePeopleNames(draft.crew);
  const setByName = usePeopleNames(draft.pass?.setBy ? [draft.pass.setBy] : []);
  const confirmedByName = usePeopleNames(draft.pass?.confirmedBy ? [draft.pass.confirmedBy] : []);

  const { plan, stints, live, current, waiting, since } = standingOf(props, draft, nowAtSite(timeZone));
  const number = current?.number ?? card.passes.length;
  const row = card.passes[number - 1];
  const planned = plan[number - 1];
  const byHand = dialNumber(card, row) === null;
  const view = viewOf(draft, { live, waiting, byHand });
  const inHand = draft.pass ?? passInHand({ pass: number, round: live.round });
  const edit = (update: (pass: PassInHand) => PassInHand, rest: Partial<TighteningDraft> = {}) =>
    change((before) => ({ ...before, ...rest, pass: update(before.pass ?? inHand) }));
  const set = (changes: Partial<TighteningDraft>) => change((before) => ({ ...before, ...changes }));
  const answered = { asking: null, bolt: null, text: '' };
  const bolt = draft.bolt ?? live.next[0] ?? 1;
  const where = whereWords(live, draft, planned?.name ?? '');
  const row_ = { card, row };

  function draw() {
    if (recording.stopped) {
      return (
        <StoppedView
          where={where}
          onGoOn={() => {
            setResumed(true);
            recording.goOn();
          }}
          onLeave={() => goTo(`/joints/${joint.id}`)}
        />
      );
    }
    if (draft.sent !== null) {
      return <SentView busy={recording.busy} onAgain={() => void recording.send(draft.sent)} />;
    }
    if (!resumed) {
      return (
        <ResumeView
          where={where}
          crew={crew}
          savedAt={keptAt ?? ''}
          onSame={() => setResumed(true)}
          onOther={() => {
            setResumed(true);
            recording.handOver(planned?.name ?? 'the pass', inHand, keptAt ?? '');
          }}
        />
      );
    }
    switch (view) {
      case 'crew':
        return (
          <CrewView
            crew={draft.crew}
            run={open.run?.runId === draft.runId ? open.run : null}
            onToggle={(id) =>
              change((before) => ({
                ...before,
                crew: before.crew.includes(id)
                  ? before.crew.filter((each) => each !== id)
                  : [...before.crew, id],
              }))
            }
            onKnown={() => set({ crewKnown: true })}
            onBeginAgain={() => set({ asking: 'begin again' })}
          />
        );
      case 'joint':
        return (
          <JointView
            joint={joint}
            kind="tightening"
            onRead={() => set({ tagRead: true })}
            onOther={() => goTo('/at')}
          />
        );
      case 'tools':
        return (
          <ToolsView
            kind="tightening"
            tools={card.set.map(({ role, number: name }) => `${role} ${name}`)}
            overrides={issued.overrides}
            onLookedOver={() => set({ lookedOver: true })}
          />
        );
      case 'wait':
        return (
          <WaitView
            name={planned?.name ?? ''}
            since={since}
            wait={planned?.wait ?? 0}
            onGoOn={() => set({ waitCutShort: true })}
          />
        );
      case 'set':
        return (
          <SetView
            {...row_}
            crew={draft.crew}
            otherValue={inHand.otherValue}
            onSet={(setBy) => edit((pass) => ({ ...pass, setBy }))}
            onOtherValue={() => edit((pass) => pass, { asking: 'other value', text: inHand.otherValue })}
          />
        );
      case 'other value':
        return (
          <OtherValueView
            {...row_}
            text={draft.text}
            onText={(text) => set({ text })}
            onTake={(otherValue) => edit((pass) => ({ ...pass, otherValue }), answered)}
            onBack={() => edit((pass) => ({ ...pass, otherValue: '' }), answered)}
          />
        );
      case 'confirm':
        return (
          <ConfirmView
            {...row_}
            setBy={inHand.setBy}
            setByName={setByName}
            otherValue={inHand.otherValue}
            onConfirmed={(confirmedBy) =>
              edit((pass) => ({ ...pass, confirmedBy, startedAt: nowAtSite(timeZone) }))
            }
            onBack={() => edit((pass) => ({ ...pass, setBy: null }))}
          />
        );
      case 'reading':
        return (
          <ReadingView
            {...row_}
            bolts={live.next}
            bolt={bolt}
            text={draft.text}
            onBolt={(next) => set({ bolt: next, text: textOf(inHand, next) })}
            onText={(text) => set({ text })}
            onTake={(text) => edit((pass) => withReading(pass, bolt, text), answered)}
            onBack={() => set(answered)}
          />
        );
      case 'stuck':
        return (
          <StuckView
            {...row_}
            bolts={live.next}
            bolt={bolt}
            firstPass={card.passes.findIndex((each) => dialNumber(card, each) !== null) === number - 1}
            reached={draft.text}
            onBolt={(next) => set({ bolt: next })}
            onReached={(text) => set({ text })}
            onDone={() => edit((pass) => withDone(pass, [bolt], 'done'), answered)}
            onLeaveOut={(outcome) => edit((pass) => withLeftOut(pass, bolt, outcome), answered)}
            onStop={() => set({ ...answered, asking: 'stop', stopReason: 'nut or stud' })}
            onBack={() => set(answered)}
          />
        );
      case 'bolt':
        return (
          planned && (
            <BoltView
              {...row_}
              planned={planned}
              standing={live}
              pass={draft.pass}
              checked={checkedWords(inHand, setByName, confirmedByName)}
              onDone={(bolts, outcome) =>
                edit((pass) => ({
                  ...withDone(pass, bolts, outcome),
                  startedAt: pass.startedAt ?? nowAtSite(timeZone),
                }))
              }
              onAsk={(asking) =>
                set({ asking, bolt, text: asking === 'reading' ? textOf(inHand, bolt) : '' })
              }
              onUndo={() => edit((pass) => withoutLast(pass, planned.steps))}
            />
          )
        );
      case 'pass done':
        return (
          <PassDoneView
            {...row_}
            pass={inHand}
            standing={live}
            busy={recording.busy}
            onRecord={(goRoundAgain) => recording.pass(inHand, { stoppedBecause: null, goRoundAgain })}
            onUndo={() => edit((pass) => withoutLast(pass, planned?.steps ?? []))}
            onTryAgain={(each) => edit((pass) => withTriedAgain(pass, each))}
          />
        );
      case 'run done':
        return (
          <RunDoneView
            card={card}
            stints={stints}
            standing={live}
            remarks={draft.remarks}
            busy={recording.busy}
            onRemarks={(remarks) => set({ remarks })}
            onRecord={() => recording.tightening(live)}
          />
        );
      case 'stop':
        return (
          <StopView
            kind="tightening"
            where={where}
            reason={draft.stopReason}
            words={draft.stopWords}
            busy={recording.busy}
            onReason={(stopReason) => set({ stopReason })}
            onWords={(stopWords) => set({ stopWords })}
            onStop={() =>
              recording.pass(inHand, {
                stoppedBecause: { reason: draft.stopReason, words: draft.stopWords } as Stopped,
                goRoundAgain: false,
              })
            }
            onBack={() => set({ asking: null })}
            onThrowAway={nothingDone(draft, stints.length) ? () => recording.throwAway() : null}
          />
        );
      case 'unclear':
        return (
          <UnclearView
            problems={live.problems}
            onRecord={
              draft.pass === null
                ? null
                : () => recording.pass(inHand, { stoppedBecause: null, goRoundAgain: false })
            }
            onThrowAway={draft.pass === null ? onBeginAgain : () => set({ pass: null, ...answered })}
          />
        );
      case 'begin again':
        return (
          <AskTwice
            asks={`Begin ${joint.data.tag} again from the first pass`}
            words="The passes recorded so far stay in the history. They will not count towards the tightening that begins now."
            yes="Begin again"
            onYes={async () => {
              await work.drop();
              onBeginAgain();
            }}
            onBack={() => set({ asking: null })}
          />
        );
    }
  }

  return (
    <AtShell
      title={joint.data.tag}
      beside={[joint.data.location, `setting ${issued.number}`].filter(Boolean).join(' · ')}
      onStop={
        resumed && draft.crewKnown && view !== 'stop' && draft.sent === null && !recording.stopped
          ? () => set({ asking: 'stop' })
          : undefined
      }
    >
      <Trouble error={recording.error} what="It was not recorded." />
      <NotKept error={work.state.trouble} onTakeUp={onTakeUp} />
      {overtaken(work.state) ? null : draw()}
    </AtShell>
  );
}

const textOf = (pass: PassInHand, bolt: number) =>
  pass.readings.find((reading) => reading.bolt === bolt)?.text ?? '';

const nothingDone = (draft: TighteningDraft, recorded: number) =>
  recorded === 0 && (draft.pass === null || draft.pass.done.length + draft.pass.leftOut.length === 0);

function checkedWords(
  { setBy, confirmedBy }: PassInHand,
  setByName: string,
  confirmedByName: string,
): string {
  if (setBy === null) return '';
  if (confirmedBy === null) return `, set by ${setByName}, read by nobody else`;
  return `, set by ${setByName}, read by ${confirmedByName}`;
}

function whereWords(live: RunStanding, { pass }: TighteningDraft, name: string): string {
  const inHand = pass !== null && pass.done.length + pass.leftOut.length > 0;
  if (inHand && live.pass !== pass.pass && live.state !== 'record unclear') {
    return `${name}: all bolts gone through, not recorded yet`;
  }
  if (live.state === 'finished') return 'All passes are gone through';
  if (live.state === 'record unclear') return 'The records do not fit together';
  const total = live.done.length + live.remaining.length;
  const last = pass?.done.at(-1) ?? live.done.at(-1);
  return `${live.passName}: ${live.done.length} of ${total} bolts${
    last === undefined ? '' : `, last bolt ${last}`
  }; next ${live.next.join(' and ')}`;
}

/** Where the work stands with what is in hand, and which pass that is. */
function standingOf({ open }: TighteningProps, draft: TighteningDraft, now: string) {
  const plan = open.plan ?? [];
  const stints = open.run?.runId === draft.runId ? open.run.stints : [];
  const live = liveStanding(plan, stints, draft.pass);
  const number = draft.pass?.pass ?? live.pass;
  const wait = plan[(live.pass ?? 0) - 1]?.wait ?? null;
  const since = stints.findLast(({ pass }) => pass < (live.pass ?? 0))?.endedAt ?? null;
  const waiting = draft.pass === null && wait !== null && dwellState(since, now, wait).state === 'waiting';
  return { plan, stints, live, current: number === null ? null : { number }, waiting, since };
}
