import type { PassRow, SettingCard } from '../../../core/contract/setting.ts';
import type { PlannedPass, RunStanding } from '../../../core/sequence/run.ts';
import { boltWords } from '../../../core/text/bolts.ts';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import { BigNumber, Key, StepCautions } from './parts.tsx';
import { dialNumber, triesNuts } from './pass-record.ts';
import type { PassInHand } from './tightening-draft.ts';

interface BoltViewProps {
  readonly card: SettingCard;
  readonly row: PassRow | undefined;
  readonly planned: PlannedPass;
  readonly standing: RunStanding;
  readonly pass: PassInHand | null;
  readonly checked: string;
  readonly onDone: (bolts: readonly number[], outcome: 'done' | 'stood' | 'turned') => void;
  readonly onAsk: (asking: 'reading' | 'stuck') => void;
  readonly onUndo: () => void;
}

/** The drawing, the bolt to be turned now and the number it is turned at; everything else waits. */
export function BoltView(props: BoltViewProps) {
  const { card, row, planned, standing, pass, checked, onDone, onAsk, onUndo } = props;
  const number = dialNumber(card, row);
  const byHand = number === null;
  const { next, done, remaining } = standing;
  const total = done.length + remaining.length;
  const at = planned.steps.findIndex((step) => next.some((bolt) => step.includes(bolt)));
  return (
    <div className="at-bolt">
      <StepCautions kind={card.kind} step="bolt" />
      <figure className="draw">
        {card.boltCount !== null && (
          <BoltCircle
            count={card.boltCount}
            order={planned.steps}
            at={Math.max(0, at)}
            leftOut={standing.leftOut}
          />
        )}
        <figcaption>clockwise from the mark, seen from the nut side</figcaption>
      </figure>
      <section className="at-turn" aria-labelledby="turn">
        <h2 id="turn" className="which">
          {planned.name}
          {standing.round > 1 && `, time round ${standing.round}`}
          <span>
            bolt {Math.min(done.length + 1, total)} of {total}
          </span>
        </h2>
        <p className="next" role="status">
          {next.length > 1 ? 'Bolts ' : 'Bolt '}
          <b>{boltWords(next).replace(/^bolts? /, '')}</b>
          <Typed pass={pass} bolts={next} unit={number?.unit ?? ''} />
        </p>
        {byHand ? <p className="at-byhand">by hand</p> : <BigNumber number={number} set={checked} />}
        <p className="at-when">done when {row?.stopWhen}</p>
        <div className="keys">
          {byHand && (
            <Key main onClick={() => onDone(remaining, 'done')}>
              All {remaining.length} bolts done
            </Key>
          )}
          {triesNuts(card, row) ? (
            <>
              <Key main onClick={() => onDone(next, 'stood')}>
                {name(next)} stood
              </Key>
              <Key onClick={() => onDone(next, 'turned')}>It turned</Key>
            </>
          ) : (
            <Key main={!byHand} onClick={() => onDone(next, 'done')}>
              {name(next)} done
            </Key>
          )}
          {!byHand && <Key onClick={() => onAsk('stuck')}>Nut won’t move</Key>}
          {number?.readIn != null && <Key onClick={() => onAsk('reading')}>Reading…</Key>}
          <Key disabled={done.length === 0 || (pass?.done.length ?? 0) === 0} onClick={onUndo}>
            Undo last
          </Key>
        </div>
      </section>
    </div>
  );
}

const name = (bolts: readonly number[]) => boltWords(bolts).replace(/^b/, 'B');

interface TypedProps {
  readonly pass: PassInHand | null;
  readonly bolts: readonly number[];
  readonly unit: string;
}

function Typed({ pass, bolts, unit }: TypedProps) {
  const read = (pass?.readings ?? []).filter(({ bolt, text }) => bolts.includes(bolt) && text !== '');
  if (read.length === 0) return null;
  return <span className="read"> read {read.map(({ text }) => `${text} ${unit}`).join(', ')}</span>;
}
