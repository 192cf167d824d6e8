import { Measure, Plain, Unknown } from '../../components/number.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { CardNumber } from './card-number.tsx';
import { CardSection, type SectionProps } from './card-section.tsx';

/** How a target from the gasket came to a bolt stress, step by step, with the limit that holds it. */
export function SelectionSection({ card, chosen, onChoose }: SectionProps) {
  const { selection } = card;
  if (selection === null) return null;
  return (
    <CardSection
      title="How the bolt stress was chosen"
      finding={
        selection.targetReached === null
          ? 'not known'
          : selection.targetReached
            ? 'the gasket’s target is reached'
            : 'the gasket’s target is not reached'
      }
    >
      <dl className="lines narrow">
        <div>
          <dt>Asked for by {selection.gasket}</dt>
          <dd>
            <Measure si={selection.asked} unit="MPa" />
          </dd>
        </div>
        <div>
          <dt>Chosen, root area</dt>
          <dd>
            <CardNumber card={card} of="selection" chosen={chosen} onChoose={onChoose}>
              <Measure si={selection.selected} unit="MPa" />
            </CardNumber>
          </dd>
        </div>
        <div>
          <dt>Governed by</dt>
          <dd>{selection.governing ?? <Unknown />}</dd>
        </div>
      </dl>
      <SideScroll>
        <table className="tab">
          <thead>
            <tr>
              <th scope="col">Step</th>
              <th scope="col">Relation</th>
              <th scope="col" className="num">
                Limit <span className="unit">MPa</span>
              </th>
              <th scope="col" className="num">
                Bolt stress after it <span className="unit">MPa</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {selection.steps.map((step) => (
              <tr key={`${step.step} ${step.relation}`}>
                <th scope="row">{step.step}</th>
                <td>{step.relation}</td>
                <td className="num">
                  <Plain si={step.limit} unit="MPa" />
                </td>
                <td className="num">
                  <Plain si={step.selected} unit="MPa" />
                  {step.changed && <div className="small">changed here</div>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </SideScroll>
    </CardSection>
  );
}
