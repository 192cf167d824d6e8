import { useEffect, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { OpenPasses, Stopped } from '../../../core/contract/pass.ts';
import type { IssuedSetting } from '../../../core/contract/setting.ts';
import type { RunStanding } from '../../../core/sequence/run.ts';
import { useRegister } from '../../app/register.ts';
import { atSite, nowAtSite } from '../../app/text/time.ts';
import { passInput, tighteningOfPasses } from './pass-record.ts';
import type { PassInHand, Sent, TighteningDraft } from './tightening-draft.ts';
import { type KeptWork, useSending } from './use-kept-work.ts';

interface About {
  readonly joint: JointDetail;
  readonly issued: IssuedSetting;
  readonly open: OpenPasses;
}

interface Ending {
  readonly stoppedBecause: Stopped | null;
  readonly goRoundAgain: boolean;
}

/** Sends what is in hand as records; until one is answered it stands in the draft, so that a crash does not lose it. */
export function useRecording({ joint, issued, open }: About, work: KeptWork<TighteningDraft>) {
  const { timeZone } = useRegister();
  const [, goTo] = useLocation();
  const sending = useSending();
  const [stopped, setStopped] = useState(false);
  const { value: draft, change } = work;

  async function send(sent: Sent | null): Promise<void> {
    if (sent === null) return;
    change((before) => ({ ...before, sent }));
    await work.flush();
    const outcome = await sending.record(sent);
    if (outcome.is === 'unanswered') return;
    if (outcome.is === 'refused') {
      change((before) => ({ ...before, sent: null }));
      return;
    }
    if (sent.name === 'event.recordTightening') {
      await work.drop();
      goTo(`/events/${outcome.id}`);
      return;
    }
    const stop = sent.input.data.stoppedBecause !== null;
    change((before) => ({
      ...before,
      sent: null,
      pass: null,
      asking: null,
      bolt: null,
      text: '',
      waitCutShort: false,
      stopReason: null,
      stopWords: '',
      ...(stop ? { crew: [], crewKnown: false, tagRead: false, lookedOver: false } : {}),
    }));
    if (stop) {
      setStopped(true);
      await work.drop();
    }
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

  const passSent = (pass: PassInHand, ending: Ending, now: string): Sent => ({
    name: 'pass.record',
    input: {
      key: crypto.randomUUID(),
      seen: open.seen,
      data: passInput({ issued, draft }, pass, { now, ...ending }),
    },
  });

  return {
    busy: sending.busy,
    error: sending.error,
    stopped,
    send,
    goOn: () => setStopped(false),
    pass: (pass: PassInHand, ending: Ending) => void send(passSent(pass, ending, nowAtSite(timeZone))),
    tightening: (live: RunStanding) =>
      void send({
        name: 'event.recordTightening',
        input: {
          key: crypto.randomUUID(),
          data: tighteningOfPasses(
            { issued, draft },
            open.run?.stints ?? [],
            live.leftOut,
            nowAtSite(timeZone),
          ),
        },
      }),
    /** The crew before is gone without a word: what it kept is recorded as its stop, at the moment it was kept. */
    handOver: (name: string, pass: PassInHand, keptAt: string) => {
      const { done, leftOut } = pass;
      if (done.length + leftOut.length === 0) {
        change((before) => ({
          ...before,
          crew: [],
          crewKnown: false,
          tagRead: false,
          lookedOver: false,
          pass: null,
        }));
        return;
      }
      const words = `${name} handed over without a stop`;
      const ending = { stoppedBecause: { reason: 'other' as const, words }, goRoundAgain: false };
      void send(passSent(pass, ending, atSite(keptAt, timeZone)));
    },
    throwAway: async () => {
      await work.drop();
      goTo(`/joints/${joint.id}`);
    },
  };
}
