import { useFormContext, useWatch } from 'react-hook-form';
import { useFault } from '../../components/faults.ts';
import { SignerChoice } from '../../components/people-choice.tsx';

/** The form's `personId`, chosen from the people of the register. */
export function ChosenPerson({ label }: { readonly label: string }) {
  const { setValue } = useFormContext<{ personId: string }>();
  const chosen: string = useWatch({ name: 'personId' });
  const fault = useFault('personId');
  return (
    <SignerChoice
      name="personId"
      label={label}
      chosen={chosen}
      onChoose={(personId) => setValue('personId', personId, { shouldDirty: true })}
      fault={fault?.allowed ?? null}
    />
  );
}
