import type { IssuedSetting, SettingCard } from '../../../core/contract/setting.ts';
import { passSteps } from '../../../core/sequence/pass-steps.ts';
import { useRegister } from '../../app/register.ts';
import { moment, span } from '../../app/text/time.ts';
import { Title } from '../../components/desk.tsx';
import { LookAlikesLine } from '../identity/look-alikes.tsx';
import { BreakoutLines } from './breakout-lines.tsx';
import type { Choosing } from './card-number.tsx';
import { CardSections } from './card-sections.tsx';
import { Cautions } from './cautions.tsx';
import { DialSection } from './dial-section.tsx';
import { OrderFigure } from './order-figure.tsx';
import type { Place } from './order-steps.ts';
import { Overridden } from './overridden.tsx';
import { PassTable } from './pass-table.tsx';
import { SetChain } from './set-chain.tsx';
import { SignatureLines } from './signature-lines.tsx';

/** Bolt and pass that the drawing shows and the table marks. */
export interface Walking {
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

export const START: Place = { pass: 0, step: 0 };

interface CardPageProps extends Choosing, Walking {
  readonly card: SettingCard;
  readonly issued: IssuedSetting | null;
}

/** What is read first, on screen and on paper: the joint, the cautions, the number, the order. */
export function CardHead({ card, issued, chosen, onChoose, place, onPlace }: CardPageProps) {
  return (
    <>
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
      {issued && <Overridden issued={issued} />}
      <Cautions cautions={card.cautions} folded={issued === null} />
      <LookAlikesLine id={card.jointId} />
      <div className="two">
        <DialSection card={card} chosen={chosen} onChoose={onChoose} />
        <OrderFigure card={card} steps={passSteps(card)} place={place} onPlace={onPlace} />
      </div>
    </>
  );
}

/** The job itself, then everything it rests on. */
export function CardBody({ card, issued, chosen, onChoose, place, onPlace }: CardPageProps) {
  return (
    <>
      <div className="job">
        {card.breakout && (
          <BreakoutLines card={card} breakout={card.breakout} chosen={chosen} onChoose={onChoose} />
        )}
        <PassTable card={card} place={place} onPass={(pass) => onPlace({ pass, step: 0 })} />
        {card.method === 'hydraulic wrench' && <SetChain card={card} chosen={chosen} onChoose={onChoose} />}
        {issued && <SignatureLines issued={issued} />}
      </div>
      <div className="rests-on">
        <CardSections card={card} chosen={chosen} onChoose={onChoose} frozen={issued !== null} />
        <p className="defer small">{card.deferral}</p>
        {issued && <Seal card={card} issued={issued} />}
      </div>
    </>
  );
}

function Seal({ card, issued }: { readonly card: SettingCard; readonly issued: IssuedSetting }) {
  const { timeZone } = useRegister();
  return (
    <p className="small seal">
      <span>
        Setting {issued.number}, issued {moment(issued.issuedAt, timeZone)} by {issued.issuedBy}. Calculations{' '}
        {card.coreVersion}.
      </span>
      {issued.issuerCompetence && (
        <span>
          Competence of {issued.issuedBy} for this method on the first day: {issued.issuerCompetence.state}.{' '}
          {issued.issuerCompetence.reason}
        </span>
      )}
      <span>Record {issued.hash}</span>
    </p>
  );
}
