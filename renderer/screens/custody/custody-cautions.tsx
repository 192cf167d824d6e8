import type { CustodyStep } from '../../../core/contract/custody.ts';
import type { ToolClass } from '../../../core/contract/tool.ts';

/** Parts that carry the pump's pressure. */
const UNDER_PRESSURE: readonly ToolClass[] = ['drive unit', 'pump', 'gauge', 'hose', 'coupler'];

interface CautionsProps {
  readonly step: CustodyStep;
  readonly classes: readonly ToolClass[];
  readonly condition: string;
}

/** What can hurt someone at this step, in words, before the act. */
export function CustodyCautions({ step, classes, condition }: CautionsProps) {
  const cautions = cautionsOf(step, classes, condition);
  if (cautions.length === 0) return null;
  return (
    <section className="caution-list" aria-label="Cautions">
      <h2>Caution</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </section>
  );
}

export function cautionsOf(
  step: CustodyStep,
  classes: readonly ToolClass[],
  condition: string,
): readonly string[] {
  const hydraulic = classes.some((each) => UNDER_PRESSURE.includes(each));
  const cautions: string[] = [];
  if (hydraulic && (step === 'issue' || step === 'return')) {
    cautions.push(
      'Look at every hose, coupler and fitting: a cut, worn, blistered, kinked or leaking one carries no pressure at all. Set it aside and quarantine it.',
      'Never feel for a leak with the hand. Fluid under the skin is a surgical emergency, however small the mark.',
    );
  }
  if (hydraulic && (step === 'return' || step === 'send to the laboratory')) {
    cautions.push('Nothing is uncoupled or packed until the gauge stands at zero and the lines are bled.');
  }
  if (condition !== '' && condition !== 'good') {
    cautions.push(
      'What comes back in doubt is not used until it has been looked at: it is quarantined on return.',
    );
  }
  if (step === 'quarantine') {
    cautions.push('Take the tool out of reach and mark it; the register alone keeps nobody from using it.');
  }
  if (step === 'release from quarantine') {
    cautions.push(
      'Only a competent person releases a tool, by the site’s procedure and the tool’s own instructions.',
    );
  }
  if (step === 'scrap') {
    cautions.push('Make the tool unusable, so that it does not come back into use without a record.');
  }
  return cautions;
}
