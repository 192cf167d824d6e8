import { useFormContext } from 'react-hook-form';
import { LongText, Text } from '../../components/fields.tsx';
import { PeopleChoice } from '../../components/people-choice.tsx';
import type { CommonForm } from './record-form-values.ts';

export function WhenAndWho() {
  const form = useFormContext<CommonForm>();
  return (
    <>
      <div className="fields">
        <Text
          name="happenedAt"
          label="When it was done"
          type="datetime-local"
          hint="In the site's time zone"
        />
      </div>
      <PeopleChoice
        label="Done by"
        chosen={form.watch('personIds')}
        onChange={(ids) => form.setValue('personIds', ids, { shouldDirty: true })}
      />
    </>
  );
}

export const Remarks = () => <LongText name="remarks" label="Remarks" />;
