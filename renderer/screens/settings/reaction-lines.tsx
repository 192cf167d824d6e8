import type { ReactionView } from '../../../core/contract/card-views.ts';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { Measure } from '../../components/number.tsx';
import { CardNumber, type Choosing } from './card-number.tsx';

interface ReactionLinesProps extends Choosing {
  readonly card: SettingCard;
  readonly reaction: ReactionView;
}

/** Force where the reaction member bears, with the cautions of that place beside it. */
export function ReactionLines({ card, reaction, chosen, onChoose }: ReactionLinesProps) {
  const { force, arm, torque, needs } = reaction;
  return (
    <div className="after">
      <p className="small">
        {force === null || arm === null || torque === null ? (
          <>Force at the reaction point not known{needs !== null && <>: {needs}</>}.</>
        ) : (
          <>
            The reaction member pushes with{' '}
            <CardNumber card={card} of="reaction" chosen={chosen} onChoose={onChoose}>
              <Measure si={force} unit="kN" />
            </CardNumber>{' '}
            at <Measure si={arm} unit="mm" /> from the nut’s axis, at <Measure si={torque} unit="N.m" />.
          </>
        )}
      </p>
      {reaction.cautions.map(({ text }) => (
        <p key={text} className="small">
          {text}
        </p>
      ))}
    </div>
  );
}
