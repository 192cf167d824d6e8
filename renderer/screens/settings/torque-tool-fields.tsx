import { useEffect, useRef } from 'react';
import { FormProvider, useFieldArray, useForm, useFormContext, useWatch } from 'react-hook-form';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { SettingInput } from '../../../core/contract/setting.ts';
import { useRegister } from '../../app/register.ts';
import { remembered, useRemembered } from '../../app/remember.ts';
import { Faults } from '../../components/faults.ts';
import { Choice, Quantity, Text } from '../../components/fields.tsx';
import { EMPTY_STEP, EMPTY_TORQUE_TOOL, type TorqueToolForm, torqueToolInput } from './torque-tool-form.ts';

const SETTLE_MS = 300;

interface Described {
  readonly torqueTool: TorqueToolForm;
}

const kept = remembered<Described & { readonly folder: string }>('torque-tool', {
  torqueTool: EMPTY_TORQUE_TOOL,
  folder: '',
});

interface TorqueToolFieldsProps {
  readonly faults: readonly FieldFault[];
  readonly onChange: (tool: SettingInput['torqueTool']) => void;
}

/** A tool without pressure, with the certificate that says what its setting gives. */
export function TorqueToolFields({ faults, onChange }: TorqueToolFieldsProps) {
  const { folder } = useRegister();
  const [last, keep] = useRemembered(kept);
  const torqueTool = last.folder === folder ? last.torqueTool : EMPTY_TORQUE_TOOL;
  const form = useForm<Described>({ defaultValues: { torqueTool } });
  const values = useWatch({ control: form.control }) as Described;
  const text = JSON.stringify(values.torqueTool);
  const send = useRef(onChange);
  send.current = onChange;
  useEffect(() => {
    const timer = setTimeout(() => {
      const described = JSON.parse(text) as TorqueToolForm;
      keep({ torqueTool: described, folder });
      send.current(torqueToolInput(described));
    }, SETTLE_MS);
    return () => clearTimeout(timer);
  }, [text, folder, keep]);
  return (
    <FormProvider {...form}>
      <Faults value={faults}>
        <h2>Tool</h2>
        <Text name="torqueTool.number" label="Number of the tool" />
        <Choice
          name="torqueTool.scale.by"
          label="Set by"
          options={[
            { value: 'torque', words: 'torque on a scale' },
            { value: 'step', words: 'numbered steps' },
          ]}
        />
        {values.torqueTool.scale.by === 'torque' ? (
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
      </Faults>
    </FormProvider>
  );
}

const MOST_STEPS = 60;

function StepFields() {
  const { control } = useFormContext<Described>();
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
