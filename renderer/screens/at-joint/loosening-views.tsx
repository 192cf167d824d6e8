import type { IssuedSetting } from '../../../core/contract/setting.ts';
import { enter } from '../../../core/units/entered.ts';
import { counted } from '../../app/text/number.ts';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import type { BreakoutDraft, BrokenBolt } from './breakout-draft.ts';
import { Keypad } from './keypad.tsx';
import { Key, Step, StepCautions } from './parts.tsx';
import { dialNumber } from './pass-record.ts';
import { usePeopleNames } from './people.tsx';

export function StoppedBefore({ draft, where }: { readonly draft: BreakoutDraft; readonly where: string }) {
  const names = usePeopleNames(draft.everybody);
  return (
    <dl className="at-handover" aria-label="What the crew before left">
      <div>
        <dt>Crew before</dt>
        <dd>{names}</dd>
      </div>
      <div>
        <dt>Stopped</dt>
        <dd>{[draft.stopReason, draft.stopWords].filter(Boolean).join(': ')}</dd>
      </div>
      <div>
        <dt>Done</dt>
        <dd>{where}</dd>
      </div>
    </dl>
  );
}

interface LooseningViewProps {
  readonly issued: IssuedSetting;
  readonly order: readonly number[];
  readonly next: number;
  readonly draft: BreakoutDraft;
  readonly onText: (text: string) => void;
  readonly onTake: (bolt: BrokenBolt) => void;
  readonly onStuck: () => void;
  readonly onUndo: () => void;
}

/** The nut that is next, where it begins and what it must not go above, and the key for what was read. */
export function LooseningView({
  issued,
  order,
  next,
  draft,
  onText,
  onTake,
  onStuck,
  onUndo,
}: LooseningViewProps) {
  const { card } = issued;
  const start = dialNumber(card, card.passes[0]);
  const highest = dialNumber(card, card.passes[1]);
  const { text, broken } = draft;
  const wrong = text !== '' && start?.readIn != null && enter(text, start.readIn) === null;
  const stuck = broken.filter(({ outcome }) => outcome !== 'turned').map(({ bolt }) => bolt);
  return (
    <div className="at-bolt">
      <StepCautions kind="breakout" step="bolt" />
      <figure className="draw">
        <BoltCircle
          count={card.boltCount ?? order.length}
          order={order.map((bolt) => [bolt])}
          at={order.indexOf(next)}
          leftOut={stuck}
        />
        <figcaption>clockwise from the mark, seen from the nut side</figcaption>
      </figure>
      <section className="at-turn loosening" aria-labelledby="turn">
        <h2 id="turn" className="which">
          First movement
          <span>
            nut {broken.length + 1} of {order.length}
          </span>
        </h2>
        <p className="next" role="status">
          Nut <b>{next}</b>
        </p>
        {start && (
          <p className="at-from">
            begin at <b>{start.value}</b> {start.unit}
            {highest && (
              <>
                , never above <b>{highest.value}</b> {highest.unit}
              </>
            )}
            <span className="at-on">on {start.on}</span>
          </p>
        )}
        <Keypad
          label={`Nut ${next} moved at`}
          unit={start?.unit ?? ''}
          text={text}
          onText={onText}
          takes={
            text.trim() === ''
              ? `Nut ${next} turned, not read`
              : `Nut ${next} turned at ${text.trim()} ${start?.unit ?? ''}`
          }
          disabled={wrong}
          fault={wrong ? `“${text}” is no number` : null}
          onTake={() => onTake({ bolt: next, outcome: 'turned', text: text.trim() })}
        />
        <div className="keys">
          <Key onClick={onStuck}>Nut won’t move</Key>
          <Key disabled={broken.length === 0} onClick={onUndo}>
            Undo last
          </Key>
        </div>
      </section>
    </div>
  );
}

interface StuckNutProps {
  readonly bolt: number;
  readonly text: string;
  readonly onTake: (bolt: BrokenBolt) => void;
  readonly onStop: () => void;
  readonly onBack: () => void;
}

/** What was tried in vain stays with the nut, as the pressure it did not move at. */
export function StuckNut({ bolt, text, onTake, onStop, onBack }: StuckNutProps) {
  const tried = text.trim();
  return (
    <Step
      asks={`Nut ${bolt} does not move`}
      keys={
        <>
          <Key main onClick={onStop}>
            Stop work here
          </Key>
          <Key onClick={() => onTake({ bolt, outcome: 'would not turn', text: tried })}>
            Leave it, it would not turn
          </Key>
          <Key onClick={() => onTake({ bolt, outcome: 'cut', text: tried })}>The stud was cut</Key>
          <Key onClick={onBack}>Back</Key>
        </>
      }
    >
      <StepCautions kind="breakout" step="stuck" />
    </Step>
  );
}

interface LooseningDoneProps {
  readonly draft: BreakoutDraft;
  readonly busy: boolean;
  readonly onRemarks: (remarks: string) => void;
  readonly onRecord: () => void;
  readonly onUndo: () => void;
}

export function LooseningDone({
  draft: { broken, remarks },
  busy,
  onRemarks,
  onRecord,
  onUndo,
}: LooseningDoneProps) {
  const of = (outcome: BrokenBolt['outcome']) => broken.filter((each) => each.outcome === outcome);
  const read = broken.filter(({ text }) => text !== '').length;
  return (
    <Step
      asks="All nuts gone through"
      keys={
        <>
          <Key main disabled={busy} onClick={onRecord}>
            Record the breakout
          </Key>
          <Key onClick={onUndo}>Undo last</Key>
        </>
      }
    >
      <p className="at-said">
        {counted(of('turned').length, 'nut')} turned, {of('would not turn').length} would not turn,{' '}
        {counted(of('cut').length, 'stud')} cut; {counted(read, 'reading')}.
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
