import type { PassRow, SettingCard } from '../../../core/contract/setting.ts';
import { dwellState } from '../../../core/sequence/dwell.ts';
import { NO_TURN_MEANING, noTurnCheck } from '../../../core/sequence/no-turn.ts';
import type { RunStanding } from '../../../core/sequence/run.ts';
import { COMMON_STOP, stopVerdict } from '../../../core/sequence/stop-rule.ts';
import { boltWords } from '../../../core/text/bolts.ts';
import { enter } from '../../../core/units/entered.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Keypad } from './keypad.tsx';
import { BigNumber, Key, Step, StepCautions } from './parts.tsx';
import { type DialNumber, dialNumber, triesNuts } from './pass-record.ts';
import { PersonKeys } from './people.tsx';
import type { PassInHand } from './tightening-draft.ts';
import { useNow } from './use-kept-work.ts';

interface PassProps {
  readonly card: SettingCard;
  readonly row: PassRow | undefined;
}

interface SetViewProps extends PassProps {
  readonly crew: readonly string[];
  readonly otherValue: string;
  readonly onSet: (personId: string) => void;
  /** Null where what was set shows in what is read on each nut. */
  readonly onOtherValue: (() => void) | null;
}

export function SetView({ card, row, crew, otherValue, onSet, onOtherValue }: SetViewProps) {
  const number = dialNumber(card, row);
  return (
    <Step
      asks={`${row?.name ?? 'Pass'}: set by`}
      keys={onOtherValue && <Key onClick={onOtherValue}>Another value was set</Key>}
    >
      <StepCautions kind={card.kind} step="setting" />
      {number === null ? (
        <NoNumber />
      ) : (
        <BigNumber number={number} set={<Other text={otherValue} number={number} />} />
      )}
      <PersonKeys among={crew} onChoose={onSet} />
    </Step>
  );
}

const NoNumber = () => <p className="at-said">The setting has no number for this pass. Stop and ask.</p>;

function Other({ text, number }: { readonly text: string; readonly number: DialNumber }) {
  return text === '' ? null : (
    <b className="at-differs">
      {' '}
      but set to {text} {number.unit}
    </b>
  );
}

interface ConfirmViewProps extends PassProps {
  readonly setBy: string | null;
  readonly setByName: string;
  readonly otherValue: string;
  readonly onConfirmed: (personId: string | null) => void;
  readonly onBack: () => void;
}

/** A second person reads the gauge; where nobody is there, that is recorded as it is. */
export function ConfirmView({
  card,
  row,
  setBy,
  setByName,
  otherValue,
  onConfirmed,
  onBack,
}: ConfirmViewProps) {
  const number = dialNumber(card, row);
  return (
    <Step
      asks={`${row?.name ?? 'Pass'}: read by a second person`}
      keys={
        <>
          <Key onClick={() => onConfirmed(null)}>No second person is here</Key>
          <Key onClick={onBack}>Back</Key>
        </>
      }
    >
      <StepCautions kind={card.kind} step="setting" />
      {number !== null && (
        <BigNumber
          number={number}
          set={
            <>
              , set by {setByName}
              <Other text={otherValue} number={number} />
            </>
          }
        />
      )}
      <PersonKeys without={setBy} onChoose={onConfirmed} />
    </Step>
  );
}

interface OtherValueProps extends PassProps {
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly onTake: (text: string) => void;
  readonly onBack: () => void;
}

/** What was really set is recorded as it was, and flagged where it differs. */
export function OtherValueView({ card, row, text, onText, onTake, onBack }: OtherValueProps) {
  const unit = dialNumber(card, row)?.readIn ?? 'bar';
  const wrong = text !== '' && enter(text, unit) === null;
  return (
    <Step asks="What was set instead" keys={<Key onClick={onBack}>Back, nothing else was set</Key>}>
      <StepCautions kind={card.kind} step="setting" />
      <Keypad
        label={`Set for ${row?.name ?? 'this pass'}`}
        unit={dialNumber(card, row)?.unit ?? ''}
        text={text}
        onText={onText}
        takes="This was set"
        disabled={text === '' || wrong}
        onTake={() => onTake(text.trim())}
        fault={wrong ? `“${text}” is no number` : null}
      />
    </Step>
  );
}

interface ReadingProps extends PassProps {
  readonly bolts: readonly number[];
  readonly bolt: number;
  readonly text: string;
  readonly onBolt: (bolt: number) => void;
  readonly onText: (text: string) => void;
  readonly onTake: (text: string) => void;
  readonly onBack: () => void;
}

export function ReadingView({ card, row, bolts, bolt, text, onBolt, onText, onTake, onBack }: ReadingProps) {
  const number = dialNumber(card, row);
  const wrong = text !== '' && number?.readIn != null && enter(text, number.readIn) === null;
  return (
    <Step asks={`Bolt ${bolt}: what was read`} keys={<Key onClick={onBack}>Back without a reading</Key>}>
      <StepCautions kind={card.kind} step="bolt" />
      {bolts.length > 1 && (
        <div className="keys people">
          {bolts.map((each) => (
            <Key key={each} pressed={each === bolt} onClick={() => onBolt(each)}>
              Bolt {each}
            </Key>
          ))}
        </div>
      )}
      <Keypad
        label={`Reading on bolt ${bolt}`}
        unit={number?.unit ?? ''}
        text={text}
        onText={onText}
        takes="Keep this reading"
        disabled={wrong}
        onTake={() => onTake(text.trim())}
        fault={wrong ? `“${text}” is no number` : null}
      />
    </Step>
  );
}

interface StuckProps extends PassProps {
  readonly bolts: readonly number[];
  readonly bolt: number;
  /** In the first pass that is dialled every nut has to turn. */
  readonly firstPass: boolean;
  /** "yes" when the gauge reached the set value, "no" when the tool stalled below it; empty until it is said. */
  readonly reached: string;
  readonly onBolt: (bolt: number) => void;
  readonly onReached: (reached: string) => void;
  readonly onDone: () => void;
  readonly onLeaveOut: (outcome: 'would not turn' | 'cut') => void;
  readonly onStop: () => void;
  readonly onBack: () => void;
}

/** A nut that will not move: first what the gauge showed, then what the stop rule says of it. */
export function StuckView(props: StuckProps) {
  const { card, row, bolts, bolt, firstPass, reached } = props;
  const number = dialNumber(card, row);
  if (reached === '') {
    return (
      <Step
        asks={`Bolt ${bolt} does not move. Was ${number === null ? 'the set value' : `${number.value} ${number.unit}`} reached`}
        keys={
          <>
            <Key onClick={() => props.onReached('yes')}>It was reached, and the nut stood still</Key>
            <Key onClick={() => props.onReached('no')}>The tool stalled below it</Key>
            <Key onClick={props.onBack}>Back</Key>
          </>
        }
      >
        <StepCautions kind={card.kind} step="stuck" />
        {bolts.length > 1 && (
          <div className="keys people">
            {bolts.map((each) => (
              <Key key={each} pressed={each === bolt} onClick={() => props.onBolt(each)}>
                Bolt {each}
              </Key>
            ))}
          </div>
        )}
      </Step>
    );
  }
  const stroke = { reached: reached === 'yes' ? 1 : 0, rotation: 0 };
  const { verdict, reason } = stopVerdict([stroke], firstPass, COMMON_STOP);
  return (
    <Step
      asks={verdict === 'bolt done' ? `Bolt ${bolt} is done in this pass` : 'Stop and ask'}
      keys={
        <>
          {verdict === 'bolt done' ? (
            <Key main onClick={props.onDone}>
              Bolt {bolt} done
            </Key>
          ) : (
            <>
              <Key main onClick={props.onStop}>
                Stop work here
              </Key>
              <Key onClick={() => props.onLeaveOut('would not turn')}>
                Leave bolt {bolt} out, it would not turn
              </Key>
              <Key onClick={() => props.onLeaveOut('cut')}>Leave bolt {bolt} out, the stud was cut</Key>
            </>
          )}
          <Key onClick={props.onBack}>Back</Key>
        </>
      }
    >
      <StepCautions kind={card.kind} step="stuck" />
      <p className="at-said">
        Bolt {bolt}: {reason}.
      </p>
    </Step>
  );
}

interface PassDoneProps extends PassProps {
  readonly pass: PassInHand;
  readonly standing: RunStanding;
  readonly busy: boolean;
  readonly onRecord: (goRoundAgain: boolean) => void;
  readonly onUndo: () => void;
  readonly onTryAgain: (bolt: number) => void;
}

export function PassDoneView({ card, row, pass, busy, onRecord, onUndo, onTryAgain }: PassDoneProps) {
  const tried = triesNuts(card, row);
  const check = tried
    ? noTurnCheck(
        card.boltCount ?? 0,
        pass.readings.flatMap(({ bolt, outcome }) =>
          outcome === 'stood' || outcome === 'turned' ? [{ bolt, turned: outcome === 'turned' }] : [],
        ),
      )
    : null;
  const turned = check?.turned ?? [];
  return (
    <Step
      asks={`${row?.name ?? 'Pass'}: all bolts gone through`}
      keys={
        <>
          {turned.length > 0 && (
            <Key main disabled={busy} onClick={() => onRecord(true)}>
              Record it and go round again
            </Key>
          )}
          <Key main={turned.length === 0} disabled={busy} onClick={() => onRecord(false)}>
            {turned.length > 0 ? 'Record it as it is' : 'Record this pass'}
          </Key>
          {pass.leftOut.map((bolt) => (
            <Key key={bolt} onClick={() => onTryAgain(bolt)}>
              Try bolt {bolt} again
            </Key>
          ))}
          <Key disabled={pass.done.length === 0} onClick={onUndo}>
            Undo last bolt
          </Key>
        </>
      }
    >
      <p className="at-said">
        {tried ? `${counted(pass.done.length, 'nut')} tried` : `${counted(pass.done.length, 'bolt')} turned`}
        {pass.leftOut.length > 0 && `, left out: ${pass.leftOut.join(', ')}`}.
        {turned.length > 0 && ` ${boltWords(turned).replace(/^b/, 'B')} still turned.`}
        {check?.state === 'all stand' && ' No nut turned.'}
      </p>
      {check !== null && <p className="at-said">{NO_TURN_MEANING}</p>}
    </Step>
  );
}

interface WaitViewProps {
  readonly name: string;
  readonly since: string | null;
  readonly wait: number;
  readonly onGoOn: () => void;
}

export function WaitView({ name, since, wait, onGoOn }: WaitViewProps) {
  const { timeZone } = useRegister();
  const { state, remaining, dueAt, reason } = dwellState(since, useNow().toISOString(), wait);
  return (
    <Step
      asks={`${name}: wait before it`}
      keys={
        state === 'waiting' ? (
          <Key onClick={onGoOn}>Begin before the wait is over, which is recorded</Key>
        ) : (
          <Key main onClick={onGoOn}>
            Go on
          </Key>
        )
      }
    >
      <p className="at-number" role="timer">
        {state === 'not known' ? 'not known' : <Remaining seconds={remaining ?? 0} />}
      </p>
      <p className="at-said">
        {state === 'not known' ? reason : `${reason}; due ${moment(dueAt ?? '', timeZone)}`}
      </p>
    </Step>
  );
}

function Remaining({ seconds }: { readonly seconds: number }) {
  const minutes = Math.ceil(seconds / 60);
  return (
    <>
      {Math.floor(minutes / 60)} <span>h</span> {minutes % 60} <span>min</span>
    </>
  );
}
