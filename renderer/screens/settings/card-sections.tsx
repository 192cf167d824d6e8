import { AllWorkings } from './all-workings.tsx';
import type { SectionProps } from './card-section.tsx';
import { GasketSections } from './gasket-section.tsx';
import { LimitsSection } from './limits-section.tsx';
import { RatingSection } from './rating-section.tsx';
import { RulesSections } from './rules-section.tsx';
import { SelectionSection } from './selection-section.tsx';
import { SimulationSection } from './simulation-section.tsx';
import { StudSection } from './stud-section.tsx';
import { TorqueSplit } from './torque-split.tsx';
import { UnknownSection } from './unknown-section.tsx';

interface CardSectionsProps extends SectionProps {
  readonly frozen: boolean;
}

/** Everything under the passes, in the order a person asks: rules, limits, then where each comes from. */
export function CardSections({ frozen, ...props }: CardSectionsProps) {
  return (
    <div className="card-sections">
      <RulesSections card={props.card} />
      <SelectionSection {...props} />
      <LimitsSection {...props} />
      <GasketSections {...props} />
      <TorqueSplit {...props} />
      <StudSection {...props} />
      <RatingSection {...props} />
      <SimulationSection {...props} />
      <UnknownSection card={props.card} frozen={frozen} />
      <AllWorkings card={props.card} />
    </div>
  );
}
