import type { SetPart, SettingCard } from '../../../core/contract/setting.ts';
import { roundly } from '../../app/text/number.ts';
import { Measure } from '../../components/number.tsx';
import { CardNumber, type Choosing } from './card-number.tsx';
import { ReactionLines } from './reaction-lines.tsx';

interface SetChainProps extends Choosing {
  readonly card: SettingCard;
}

/** The set as a chain of parts; the weakest link has a heavy line and its word. */
export function SetChain({ card, chosen, onChoose }: SetChainProps) {
  return (
    <section aria-labelledby="set">
      <h2 id="set">Tool set</h2>
      {card.set.length === 0 ? (
        <p className="small">No part of the set is chosen yet.</p>
      ) : (
        <ul className="chain">
          {card.set.map((part) => (
            <li key={part.toolId} className={part.weakest ? 'weakest' : undefined}>
              <b>{part.number}</b>
              <span className="small">{part.role}</span>
              {ratings(part).map((rating) => (
                <span className="small" key={rating}>
                  {rating}
                </span>
              ))}
              {part.weakest && <span className="small weakest-word">weakest part</span>}
            </li>
          ))}
        </ul>
      )}
      {card.capacity !== null && (
        <p className="small after">
          This set reaches{' '}
          <CardNumber card={card} of="capacity" chosen={chosen} onChoose={onChoose}>
            <Measure si={card.capacity} unit="N.m" />
          </CardNumber>
          .
        </p>
      )}
      {/* A card issued before the force was worked out has none. */}
      {card.reaction && (
        <ReactionLines card={card} reaction={card.reaction} chosen={chosen} onChoose={onChoose} />
      )}
    </section>
  );
}

function ratings(part: SetPart): string[] {
  const known = [
    part.ratedPressure === null ? [] : [roundly(part.ratedPressure, 'bar')],
    part.ratedTorque === null ? [] : [roundly(part.ratedTorque, 'N.m')],
  ].flat();
  return known.length > 0 ? known : [part.description];
}
