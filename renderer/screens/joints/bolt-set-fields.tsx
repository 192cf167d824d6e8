import type { ReferenceChoices } from '../../../core/contract/register.ts';
import { Text } from '../../components/fields.tsx';
import { TakeSiteRow } from '../site/take-site-row.tsx';
import {
  BoltingFields,
  LimitFields,
  LubricantFields,
  StrengthFields,
  TargetFields,
} from './bolting-fields.tsx';

interface BoltSetFieldsProps {
  readonly name: string;
  readonly of: string;
  readonly choices: ReferenceChoices;
}

/** One further set of bolts; a lubricant left empty is the joint's. */
export function BoltSetFields({ name, of, choices }: BoltSetFieldsProps) {
  const under = { under: `${name}.`, of };
  return (
    <div className="stack">
      <div className="fields">
        <Text name={`${name}.name`} label={`Name${of}`} hint="As “inner circle, short studs”" />
      </div>
      <div className="fields">
        <BoltingFields {...under} space={`${name}.space.`} choices={choices} />
        <StrengthFields {...under} />
      </div>
      <p className="small lead-in">Lubricant left empty is the joint’s.</p>
      <div className="fields">
        <TakeSiteRow kind="lubricant" under={`${name}.lubricant`} of={of} />
        <LubricantFields {...under} />
      </div>
      <div className="fields">
        <TargetFields {...under} />
        <LimitFields {...under} />
      </div>
    </div>
  );
}
