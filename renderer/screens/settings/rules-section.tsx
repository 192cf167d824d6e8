import type { Rule } from '../../../core/contract/card-views.ts';
import { inUnit } from '../../app/text/number.ts';
import { CardSection, type SectionProps } from './card-section.tsx';

const RULE_WORDS: Record<Rule['kind'], string> = {
  stop: 'Stop',
  dwell: 'Wait',
  'no turn': 'No-turn check',
  'plan check': 'Check of the plan',
};

/** Rules for the people at the joint, and what speaks against retightening hot; nothing here allows it. */
export function RulesSections({ card }: Pick<SectionProps, 'card'>) {
  const { rules, retightening } = card;
  return (
    <>
      {rules.length > 0 && (
        <CardSection title="Rules at the joint">
          <dl className="columns">
            {rules.map((rule) => (
              <div key={rule.text}>
                <dt>
                  <b>{RULE_WORDS[rule.kind]}</b>
                </dt>
                <dd>
                  {rule.text} <span className="faint">{rule.source}</span>
                </dd>
              </div>
            ))}
          </dl>
        </CardSection>
      )}
      {retightening && (
        <CardSection
          title="Retightening at start-up"
          finding={`stud metal ${inUnit(retightening.from, 'degC')} to ${inUnit(retightening.to, 'degC')} °C, ${retightening.source}`}
        >
          <p>{retightening.text}</p>
          {retightening.reasons.length > 0 ? (
            <>
              <p className="small">Against it:</p>
              <ul className="reasons">
                {retightening.reasons.map((reason) => (
                  <li key={reason}>{reason}</li>
                ))}
              </ul>
            </>
          ) : (
            <p className="small">No reason against it is known here. That is not an approval.</p>
          )}
          <p className="small">{retightening.deferral}</p>
        </CardSection>
      )}
    </>
  );
}
