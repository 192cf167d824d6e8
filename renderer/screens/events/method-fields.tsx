import { useFormContext, useWatch } from 'react-hook-form';
import type { JointDetail } from '../../../core/contract/joint.ts';
import { Choice, same } from '../../components/fields.tsx';
import { ToolSetFields } from '../../components/tool-set-fields.tsx';
import { TorqueToolInputs } from '../../components/torque-tool-inputs.tsx';
import { boltSetOptions, METHODS, takesToolSet, takesTorqueTool } from '../../components/work-method.ts';
import type { CommonForm } from './record-form-values.ts';

/** With what, and on which of the joint's bolts. */
export function MethodFields({ joint }: { readonly joint: JointDetail }) {
  const { boltSets } = joint.data;
  return (
    <>
      <Choice name="method" label="Done with" options={same(METHODS)} />
      {boltSets.length > 0 && <Choice name="boltSet" label="Bolt set" options={boltSetOptions(boltSets)} />}
    </>
  );
}

/** The tools that the chosen method takes; a tensioning record names its own. */
export function UsedTools() {
  const form = useFormContext<CommonForm>();
  const method = useWatch({ control: form.control, name: 'method' });
  if (takesTorqueTool(method)) {
    return (
      <fieldset>
        <legend>Tool really used</legend>
        <p className="small lead-in">
          Left empty, the record is kept and flagged. What is known of the tool otherwise stands under
          Remarks.
        </p>
        <div className="fields">
          <TorqueToolInputs method={method} />
        </div>
      </fieldset>
    );
  }
  if (!takesToolSet(method)) {
    return (
      <p className="small">
        Tensioner, pump and gauge are named in the tensioning record; its number stands under Remarks.
      </p>
    );
  }
  return (
    <fieldset>
      <legend>Tools really used</legend>
      <div className="fields">
        <ToolSetFields
          tools={form.watch('tools')}
          onChange={(tools) => form.setValue('tools', tools, { shouldDirty: true })}
        />
      </div>
    </fieldset>
  );
}
