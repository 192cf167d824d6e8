import { useEffect, useRef } from 'react';
import { FormProvider, useForm, useWatch } from 'react-hook-form';
import type { FieldFault } from '../../../core/contract/errors.ts';
import type { Method, SettingInput } from '../../../core/contract/setting.ts';
import { useRegister } from '../../app/register.ts';
import { remembered, useRemembered } from '../../app/remember.ts';
import { Faults } from '../../components/faults.ts';
import {
  EMPTY_TORQUE_TOOL,
  type TorqueToolForm,
  torqueToolInput,
} from '../../components/torque-tool-form.ts';
import { TorqueToolInputs } from '../../components/torque-tool-inputs.tsx';

const SETTLE_MS = 300;

interface Described {
  readonly torqueTool: TorqueToolForm;
}

const kept = remembered<Described & { readonly folder: string }>('torque-tool', {
  torqueTool: EMPTY_TORQUE_TOOL,
  folder: '',
});

interface TorqueToolFieldsProps {
  readonly method: Method;
  readonly faults: readonly FieldFault[];
  readonly onChange: (tool: SettingInput['torqueTool']) => void;
}

/** A tool without pressure, with the certificate that says what its setting gives. */
export function TorqueToolFields({ method, faults, onChange }: TorqueToolFieldsProps) {
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
        <TorqueToolInputs method={method} />
      </Faults>
    </FormProvider>
  );
}
