import { useFieldArray, useFormContext, useWatch } from 'react-hook-form';
import type { Method } from '../../core/contract/setting.ts';
import { Choice, Quantity, Text } from './fields.tsx';
import { RegisterWrench } from './register-wrench.tsx';
import { EMPTY_STEP, type TorqueToolForm } from './torque-tool-form.ts';
import { standsOnRegister } from './work-method.ts';

/** The tool without pressure in the form's part `torqueTool`: one of the register, or as it is typed. */
export function TorqueToolInputs({ method }: { readonly method: Method }) {
  const toolId: string | null = useWatch({ name: 'torqueTool.toolId' });
  const kept = standsOnRegister(method);
  return (
    <>
      {kept && <RegisterWrench />}
      {!(kept && toolId !== null) && <TypedTool />}
    </>
  );
}

function TypedTool() {
  const by: TorqueToolForm['scale']['by'] = useWatch({ name: 'torqueTool.scale.by' });
  return (
    <>
      <Text name="torqueTool.number" label="Number of the tool" />
      <Choice
        name="torqueTool.scale.by"
        label="Set by"
        options={[
          { value: 'torque', words: 'torque on a scale' },
          { value: 'step', words: 'numbered steps' },
        ]}
      />
      {by === 'torque' ? (
        <>
          <Quantity name="torqueTool.scale.least" label="Least setting" quantity="torque" />
          <Quantity name="torqueTool.scale.most" label="Highest setting" quantity="torque" />
          <Quantity name="torqueTool.scale.graduation" label="Graduation" quantity="torque" />
        </>
      ) : (
        <StepFields />
      )}
      <Text name="torqueTool.certificate" label="Certificate" />
      <Text name="torqueTool.validUntil" label="Certificate valid until" type="date" />
    </>
  );
}

const MOST_STEPS = 60;

function StepFields() {
  const { control } = useFormContext<{ torqueTool: TorqueToolForm }>();
  const rows = useFieldArray({ control, name: 'torqueTool.scale.steps' });
  return (
    <>
      {rows.fields.map((row, at) => (
        <div key={row.id} className="stack tight">
          <Text name={`torqueTool.scale.steps.${at}.label`} label={`Step ${at + 1}, as marked`} />
          <Quantity
            name={`torqueTool.scale.steps.${at}.torque`}
            label={`Torque of step ${at + 1}`}
            quantity="torque"
          />
          {rows.fields.length > 1 && (
            <button type="button" className="link small" onClick={() => rows.remove(at)}>
              Take step {at + 1} away
            </button>
          )}
        </div>
      ))}
      {rows.fields.length < MOST_STEPS && (
        <button type="button" className="quiet" onClick={() => rows.append(EMPTY_STEP)}>
          Add a step
        </button>
      )}
    </>
  );
}
