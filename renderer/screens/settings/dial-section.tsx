import type { SettingCard } from '../../../core/contract/setting.ts';
import type { Unit } from '../../../core/units/units.ts';
import { exact, inUnit, unitLabel } from '../../app/text/number.ts';
import { Measure, Unknown } from '../../components/number.tsx';
import { CardNumber, type Choosing } from './card-number.tsx';
import type { NumberName } from './use-working.ts';

interface DialSectionProps extends Choosing {
  readonly card: SettingCard;
}

/** The number to be dialled, alone in its gauge's unit, and what it gives. */
export function DialSection({ card, chosen, onChoose }: DialSectionProps) {
  const tensioned = card.method === 'tensioner';
  const line = (name: string, of: NumberName, si: number | null, unit: Unit) => (
    <div>
      <dt>{name}</dt>
      <dd>
        <CardNumber card={card} of={of} chosen={chosen} onChoose={onChoose}>
          <Measure si={si} unit={unit} />
        </CardNumber>
      </dd>
    </div>
  );
  return (
    <section className="dial" aria-label="Setting">
      {!card.issuable ? (
        <RefusedNumber card={card} chosen={chosen} onChoose={onChoose} />
      ) : card.method === 'hydraulic wrench' ? (
        <DialNumber card={card} chosen={chosen} onChoose={onChoose} />
      ) : (
        <ToolNumber card={card} chosen={chosen} onChoose={onChoose} />
      )}
      <dl className="lines">
        {tensioned ? (
          <div>
            <dt>Torque</dt>
            <dd>none, the stud is tensioned</dd>
          </div>
        ) : (
          line('Torque', 'torque', card.torque, 'N.m')
        )}
        {card.kind === 'tightening' && (
          <>
            {line('Load per stud', 'load', card.load, 'kN')}
            {line('Stress, tensile area', 'stressTensile', card.stressTensile, 'MPa')}
            {line('Stress, root area', 'stressRoot', card.stressRoot, 'MPa')}
            <div>
              <dt>{tensioned ? 'Of yield, axial' : 'Of yield, axial / combined'}</dt>
              <dd>
                {card.axialOfYield === null && card.combinedOfYield === null ? (
                  <Unknown />
                ) : (
                  <>
                    <Share
                      card={card}
                      of="axialOfYield"
                      si={card.axialOfYield}
                      chosen={chosen}
                      onChoose={onChoose}
                    />
                    {!tensioned && (
                      <>
                        {' / '}
                        <Share
                          card={card}
                          of="combinedOfYield"
                          si={card.combinedOfYield}
                          chosen={chosen}
                          onChoose={onChoose}
                        />
                      </>
                    )}{' '}
                    <span className="unit">%</span>
                  </>
                )}
              </dd>
            </div>
          </>
        )}
      </dl>
      {card.assumed && (
        <p className="small">
          <span className="assumed">Underlined so</span>: rests on an assumed value.
        </p>
      )}
    </section>
  );
}

/** While a refusal stands nothing on the page may look like a number to be dialled. */
function RefusedNumber({ card, chosen, onChoose }: DialSectionProps) {
  const first = card.findings.find((finding) => finding.severity === 'refusal');
  return (
    <>
      <p className="lead">{first?.title}</p>
      <p className="big">
        <span className="refused">refused</span>
      </p>
      {card.dial !== null && (
        <p className="small">
          Worked out as{' '}
          <CardNumber card={card} of="dial" chosen={chosen} onChoose={onChoose}>
            {exact(card.dial.value)} <span className="unit">{unitLabel(card.dial.unit)}</span>
          </CardNumber>
          ; not to be dialled while a refusal stands.
        </p>
      )}
    </>
  );
}

function DialNumber({ card, chosen, onChoose }: DialSectionProps) {
  return (
    <>
      <p className="lead">
        {card.gauge === null ? (
          'No gauge is chosen'
        ) : (
          <>
            {card.kind === 'tightening' ? 'Dial on gauge' : 'Begin on gauge'} <b>{card.gauge.number}</b>
          </>
        )}
      </p>
      <p className="big">
        {card.dial === null ? (
          <span className="unknown">not known</span>
        ) : (
          <CardNumber card={card} of="dial" chosen={chosen} onChoose={onChoose}>
            {exact(card.dial.value)}
            <span className="unit">{unitLabel(card.dial.unit)}</span>
          </CardNumber>
        )}
      </p>
    </>
  );
}

/** A tool without pressure is set to a torque or a step; a tensioned stud is brought to a load. */
function ToolNumber({ card, chosen, onChoose }: DialSectionProps) {
  const { toolSetting, method } = card;
  const tensioned = method === 'tensioner';
  return (
    <>
      <p className="lead">
        {tensioned ? (
          'Load to be left in each stud'
        ) : toolSetting === null ? (
          `No ${method} is described`
        ) : (
          <>
            Set on {toolSetting.kind} <b>{toolSetting.tool}</b>
          </>
        )}
      </p>
      <p className="big">
        {tensioned ? (
          card.targetLoad === null ? (
            <span className="unknown">not known</span>
          ) : (
            <CardNumber card={card} of="targetLoad" chosen={chosen} onChoose={onChoose}>
              {inUnit(card.targetLoad, 'kN')}
              <span className="unit">kN</span>
            </CardNumber>
          )
        ) : toolSetting === null ? (
          <span className="unknown">not known</span>
        ) : (
          <CardNumber card={card} of="toolSetting" chosen={chosen} onChoose={onChoose}>
            {toolSetting.text}
          </CardNumber>
        )}
      </p>
      {!tensioned && toolSetting && <p className="small">{toolSetting.basis}</p>}
    </>
  );
}

interface ShareProps extends DialSectionProps {
  readonly of: NumberName;
  readonly si: number | null;
}

function Share({ si, ...rest }: ShareProps) {
  return <CardNumber {...rest}>{si === null ? <Unknown /> : inUnit(si, 'percent')}</CardNumber>;
}
