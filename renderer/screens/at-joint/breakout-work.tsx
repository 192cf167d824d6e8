import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { useRegister } from '../../app/register.ts';
import { nowAtSite } from '../../app/text/time.ts';
import {
  type BreakoutDraft,
  type BrokenBolt,
  breakoutOf,
  breakoutView,
  handedOver,
  looseningOrder,
  nextToLoosen,
} from './breakout-draft.ts';
import { SentView, StoppedView, StopView } from './end-views.tsx';
import { LooseningDone, LooseningView, StoppedBefore, StuckNut } from './loosening-views.tsx';
import { AtShell, NotKept, Trouble } from './parts.tsx';
import { ConfirmView, SetView } from './pass-views.tsx';
import { usePeopleNames } from './people.tsx';
import { CrewView, JointView, ResumeView, ToolsView } from './start-views.tsx';
import { overtaken, type Start, useKeptWork, useSending } from './use-kept-work.ts';

interface BreakoutProps {
  readonly joint: JointDetail;
  readonly issued: IssuedSetting;
  readonly start: Start<BreakoutDraft>;
  readonly keptAt: string | null;
  readonly onTakeUp: () => void;
}

/** Breakout by an issued setting: every nut with the pressure or torque of its first movement. */
export function BreakoutWork({ joint, issued, start, keptAt, onTakeUp }: BreakoutProps) {
  const { card } = issued;
  const [, goTo] = useLocation();
  const { timeZone } = useRegister();
  const work = useKeptWork('breakout at the joint', joint.id, start);
  const { value: draft, change } = work;
  const sending = useSending();
  const [resumed, setResumed] = useState(keptAt === null || !start.value.crewKnown);
  const [stopped, setStopped] = useState(false);
  const crew = usePeopleNames(draft.crew);
  const setByName = usePeopleNames(draft.setBy === null ? [] : [draft.setBy]);
  const order = looseningOrder(card);
  const next = nextToLoosen(order, draft.broken);
  const view = breakoutView(draft, next);
  const row = card.passes[0];
  const set = (changes: Partial<BreakoutDraft>) => change((before) => ({ ...before, ...changes }));
  const take = (bolt: BrokenBolt) =>
    change((before) => ({ ...before, broken: [...before.broken, bolt], text: '', asking: null }));
  const where = `${draft.broken.length} of ${order.length} nuts loosened${next === null ? '' : `; next ${next}`}`;

  async function send(sent: BreakoutDraft['sent']): Promise<void> {
    if (sent === null) return;
    set({ sent });
    await work.flush();
    const outcome = await sending.record(sent);
    if (outcome.is === 'refused') set({ sent: null });
    if (outcome.is !== 'recorded') return;
    await work.drop();
    goTo(`/events/${outcome.id}`);
  }

  // What was on its way when the window closed goes out again, once.
  const first = useRef(draft.sent);
  const again = useRef(send);
  again.current = send;
  useEffect(() => {
    const sent = first.current;
    first.current = null;
    if (sent !== null) void again.current(sent);
  }, []);

  const record = () =>
    void send({
      name: 'event.recordBreakout',
      input: { key: crypto.randomUUID(), data: breakoutOf(issued, draft, nowAtSite(timeZone)) },
    });

  function draw() {
    if (stopped) {
      return (
        <StoppedView
          where={where}
          onGoOn={() => setStopped(false)}
          onLeave={() => goTo(`/joints/${joint.id}`)}
        />
      );
    }
    if (draft.sent !== null) return <SentView busy={sending.busy} onAgain={() => void send(draft.sent)} />;
    if (!resumed) {
      return (
        <ResumeView
          where={where}
          crew={crew}
          savedAt={keptAt ?? ''}
          onSame={() => setResumed(true)}
          onOther={() => {
            setResumed(true);
            change(handedOver);
          }}
        />
      );
    }
    switch (view) {
      case 'crew':
        return (
          <>
            {draft.stopReason !== null && <StoppedBefore draft={draft} where={where} />}
            <CrewView
              crew={draft.crew}
              run={null}
              onToggle={(id) =>
                set({
                  crew: draft.crew.includes(id)
                    ? draft.crew.filter((each) => each !== id)
                    : [...draft.crew, id],
                })
              }
              onKnown={() => set({ crewKnown: true })}
              onBeginAgain={null}
            />
          </>
        );
      case 'joint':
        return (
          <JointView
            joint={joint}
            kind="breakout"
            onRead={() => set({ tagRead: true })}
            onOther={() => goTo('/at')}
          />
        );
      case 'tools':
        return (
          <ToolsView
            kind="breakout"
            tools={card.set.map(({ role, number }) => `${role} ${number}`)}
            overrides={issued.overrides}
            onLookedOver={() => set({ lookedOver: true })}
          />
        );
      case 'set':
        return (
          <SetView
            card={card}
            row={row}
            crew={draft.crew}
            otherValue=""
            onSet={(setBy) => set({ setBy })}
            onOtherValue={null}
          />
        );
      case 'confirm':
        return (
          <ConfirmView
            card={card}
            row={row}
            setBy={draft.setBy}
            setByName={setByName}
            otherValue=""
            onConfirmed={(confirmedBy) => set({ confirmedBy, confirmed: true })}
            onBack={() => set({ setBy: null })}
          />
        );
      case 'bolt':
        return (
          <LooseningView
            issued={issued}
            order={order}
            next={next ?? 0}
            draft={draft}
            onText={(text) => set({ text })}
            onTake={take}
            onStuck={() => set({ asking: 'stuck' })}
            onUndo={() => set({ broken: draft.broken.slice(0, -1) })}
          />
        );
      case 'stuck':
        return (
          <StuckNut
            bolt={next ?? 0}
            text={draft.text}
            onTake={take}
            onStop={() => set({ asking: 'stop', stopReason: 'nut or stud' })}
            onBack={() => set({ asking: null })}
          />
        );
      case 'done':
        return (
          <LooseningDone
            draft={draft}
            busy={sending.busy}
            onRemarks={(remarks) => set({ remarks })}
            onRecord={record}
            onUndo={() => set({ broken: draft.broken.slice(0, -1) })}
          />
        );
      case 'stop':
        return (
          <StopView
            kind="breakout"
            where={where}
            reason={draft.stopReason}
            words={draft.stopWords}
            busy={sending.busy}
            onReason={(stopReason) => set({ stopReason })}
            onWords={(stopWords) => set({ stopWords })}
            onStop={() => {
              change(handedOver);
              setStopped(true);
            }}
            onBack={() => set({ asking: null })}
            onThrowAway={
              draft.broken.length > 0
                ? null
                : async () => {
                    await work.drop();
                    goTo(`/joints/${joint.id}`);
                  }
            }
          />
        );
    }
  }

  return (
    <AtShell
      title={joint.data.tag}
      beside={[joint.data.location, `setting ${issued.number}`].filter(Boolean).join(' · ')}
      onStop={
        resumed && draft.crewKnown && view !== 'stop' && draft.sent === null && !stopped
          ? () => set({ asking: 'stop' })
          : undefined
      }
    >
      <Trouble error={sending.error} what="It was not recorded." />
      <NotKept error={work.state.trouble} onTakeUp={onTakeUp} />
      {overtaken(work.state) ? null : order.length === 0 ? (
        <p className="at-said">
          The number of studs is not known, so there is no order to loosen by. Record the breakout on the page
          of the joint.
        </p>
      ) : (
        draw()
      )}
    </AtShell>
  );
}
