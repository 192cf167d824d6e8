import { useState } from 'react';
import type { IssuedSetting, SettingCard } from '../../../core/contract/setting.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { day, moment, span } from '../../app/text/time.ts';
import { Title } from '../../components/desk.tsx';
import { BreakoutLines } from './breakout-lines.tsx';
import type { Choosing } from './card-number.tsx';
import { CardSections } from './card-sections.tsx';
import { Cautions } from './cautions.tsx';
import { DialSection } from './dial-section.tsx';
import { OrderFigure } from './order-figure.tsx';
import { type Place, stepsOf } from './order-steps.ts';
import { PassTable } from './pass-table.tsx';
import { SetChain } from './set-chain.tsx';

interface CardPageProps extends Choosing {
  readonly card: SettingCard;
  readonly issued: IssuedSetting | null;
}

/** The setting card as it stands on screen and on paper: cautions, number, order, passes, set, deferral. */
export function CardPage({ card, issued, chosen, onChoose }: CardPageProps) {
  const [place, setPlace] = useState<Place>({ pass: 0, step: 0 });
  const register = useRegister();
  const steps = stepsOf(card);
  return (
    <>
      {register.demo && <p className="demo-mark only-print">Demo plant, invented</p>}
      <Title
        name={card.tag}
        beside={card.location}
        under={[card.description, card.service].filter(Boolean).join(' · ')}
        kind={
          <>
            {card.kind === 'tightening' ? 'Tightening' : 'Breakout'}
            {card.boltSet && <>, {card.boltSet.name}</>}
            <span className="small">
              {span(card.startsOn, card.endsOn)} · {issued ? `setting ${issued.number}` : 'not yet issued'}
            </span>
          </>
        }
      />
      <Cautions cautions={card.cautions} folded={issued === null} />
      <div className="two">
        <DialSection card={card} chosen={chosen} onChoose={onChoose} />
        <OrderFigure card={card} steps={steps} place={place} onPlace={setPlace} />
      </div>
      {card.breakout && (
        <BreakoutLines card={card} breakout={card.breakout} chosen={chosen} onChoose={onChoose} />
      )}
      <PassTable card={card} place={place} onPass={(pass) => setPlace({ pass, step: 0 })} />
      {card.method === 'hydraulic wrench' && <SetChain card={card} chosen={chosen} onChoose={onChoose} />}
      <CardSections card={card} chosen={chosen} onChoose={onChoose} frozen={issued !== null} />
      <p className="defer small">{card.deferral}</p>
      {issued && (
        <p className="small seal">
          <span>
            Setting {issued.number}, issued {moment(issued.issuedAt, register.timeZone)} by {issued.issuedBy}.
            Calculations {card.coreVersion}.
          </span>
          <span>Record {issued.hash}</span>
          {register.head && (
            <span>
              Register head on {day(register.today)} over {counted(register.events, 'record')} {register.head}
            </span>
          )}
        </p>
      )}
    </>
  );
}
