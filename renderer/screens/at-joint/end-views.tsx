import { STOP_REASONS, type StintView } from '../../../core/contract/pass.ts';
import type { SettingCard, WorkKind } from '../../../core/contract/setting.ts';
import { NO_TURN_MEANING } from '../../../core/sequence/no-turn.ts';
import type { RunStanding } from '../../../core/sequence/run.ts';
import { boltWords } from '../../../core/text/bolts.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Key, Step, StepCautions } from './parts.tsx';
import { lastRound } from './pass-record.ts';

interface StopViewProps {
  readonly kind: WorkKind;
  readonly where: string;
  readonly reason: string | null;
  readonly words: string;
  readonly busy: boolean;
  readonly onReason: (reason: string) => void;
  readonly onWords: (words: string) => void;
  readonly onStop: () => void;
  readonly onBack: () => void;
  /** Where nothing has been done there is nothing to record. */
  readonly onThrowAway: (() => void) | null;
}

export function StopView(props: StopViewProps) {
  const { kind, where, reason, words, busy, onReason, onWords, onStop, onBack, onThrowAway } = props;
  return (
    <Step
      asks={onThrowAway ? 'Nothing has been done yet' : 'Why does the work stop'}
      keys={
        <>
          {onThrowAway ? (
            <Key main onClick={onThrowAway}>
              Leave, there is nothing to record
            </Key>
          ) : (
            <Key main disabled={reason === null || busy} onClick={onStop}>
              Record the stop
            </Key>
          )}
          <Key onClick={onBack}>Back to the work</Key>
        </>
      }
    >
      <StepCautions kind={kind} step="stop" />
      <p className="at-said">{where}.</p>
      {onThrowAway === null && (
        <>
          <div className="keys people">
            {STOP_REASONS.map((each) => (
              <Key key={each} pressed={reason === each} onClick={() => onReason(each)}>
                {each}
              </Key>
            ))}
          </div>
          <label className="at-words">
            What the next crew has to know
            <textarea
              rows={2}
              maxLength={500}
              value={words}
              onChange={(event) => onWords(event.target.value)}
            />
          </label>
        </>
      )}
    </Step>
  );
}

interface StoppedViewProps {
  readonly where: string;
  readonly onGoOn: () => void;
  readonly onLeave: () => void;
}

export function StoppedView({ where, onGoOn, onLeave }: StoppedViewProps) {
  return (
    <Step
      asks="The stop is recorded"
      keys={
        <>
          <Key main onClick={onGoOn}>
            The next crew goes on
          </Key>
          <Key onClick={onLeave}>To the page of the joint</Key>
        </>
      }
    >
      <StepCautions kind="tightening" step="stop" />
      <p className="at-said">{where}.</p>
    </Step>
  );
}

interface RunDoneProps {
  readonly card: SettingCard;
  readonly stints: readonly StintView[];
  readonly standing: RunStanding;
  readonly remarks: string;
  readonly busy: boolean;
  readonly onRemarks: (remarks: string) => void;
  readonly onRecord: () => void;
}

/** All passes are recorded; what they make up is looked at once and recorded as the tightening. */
export function RunDoneView({ card, stints, standing, remarks, busy, onRemarks, onRecord }: RunDoneProps) {
  const { timeZone } = useRegister();
  const check = lastRound(card, stints);
  return (
    <Step
      asks="All passes are done"
      keys={
        <Key main disabled={busy} onClick={onRecord}>
          Record the tightening
        </Key>
      }
    >
      <ul className="at-list">
        {stints.map((stint) => (
          <li key={stint.eventId}>
            <b>{stint.name}</b>
            {stint.round > 1 && `, time round ${stint.round}`}: {counted(stint.boltsDone.length, 'bolt')},{' '}
            {stint.people.join(' and ')}, {moment(stint.endedAt, timeZone)}
            {stint.flags.map((flag) => (
              <span className="at-flag" key={flag}>
                {flag}
              </span>
            ))}
          </li>
        ))}
      </ul>
      <p className="at-said">
        {standing.leftOut.length > 0 &&
          `${boltWords(standing.leftOut).replace(/^b/, 'B')} left out: the tightening is recorded as unfinished. `}
        {check?.state === 'all stand' && `No nut turned in the last round. ${NO_TURN_MEANING}`}
        {check?.state === 'some turned' &&
          `${boltWords(check.turned).replace(/^b/, 'B')} still turned in the last round.`}
        {check?.state === 'incomplete' &&
          'That no nut turned in the last round is not recorded for every bolt.'}
      </p>
      <label className="at-words">
        Problems met, and advice for the next assembly
        <textarea
          rows={2}
          maxLength={2000}
          value={remarks}
          onChange={(event) => onRemarks(event.target.value)}
        />
      </label>
    </Step>
  );
}

interface SentViewProps {
  readonly busy: boolean;
  readonly onAgain: () => void;
}

/** A record whose answer has not come: it goes out again with the same key, so that it is written once. */
export function SentView({ busy, onAgain }: SentViewProps) {
  return (
    <Step
      asks={busy ? 'Recording' : 'The record has not been answered yet'}
      keys={
        !busy && (
          <Key main onClick={onAgain}>
            Send it again
          </Key>
        )
      }
    >
      <p className="at-said">What was done is kept here until it is in the register.</p>
    </Step>
  );
}

interface UnclearProps {
  readonly problems: readonly string[];
  readonly onRecord: (() => void) | null;
  readonly onThrowAway: () => void;
}

/** Another window was faster, or the record contradicts the plan: a person says which is true. */
export function UnclearView({ problems, onRecord, onThrowAway }: UnclearProps) {
  return (
    <Step
      asks="The records do not fit together"
      keys={
        <>
          <Key main onClick={onThrowAway}>
            Forget what this window holds
          </Key>
          {onRecord && <Key onClick={onRecord}>Record it all the same, flagged</Key>}
        </>
      }
    >
      <ul className="at-list">
        {problems.map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
    </Step>
  );
}

interface AskTwiceProps {
  readonly asks: string;
  readonly words: string;
  readonly yes: string;
  readonly onYes: () => void;
  readonly onBack: () => void;
}

export function AskTwice({ asks, words, yes, onYes, onBack }: AskTwiceProps) {
  return (
    <Step
      asks={asks}
      keys={
        <>
          <Key onClick={onYes}>{yes}</Key>
          <Key main onClick={onBack}>
            Back
          </Key>
        </>
      }
    >
      <p className="at-said">{words}</p>
    </Step>
  );
}
