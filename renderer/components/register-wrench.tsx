import { useEffect } from 'react';
import { useFormContext, useWatch } from 'react-hook-form';
import { useAsk } from '../app/ask.ts';
import { ToolPicker } from './tool-picker.tsx';
import { scaleOfWrench, type TorqueToolForm } from './torque-tool-form.ts';

/** A hand torque wrench of the register: scale and certificate are then the register's, not typed. */
export function RegisterWrench() {
  const { setValue } = useFormContext<{ torqueTool: TorqueToolForm }>();
  const toolId: string | null = useWatch({ name: 'torqueTool.toolId' });
  const tool = useAsk('tool.get', { id: toolId ?? '' }, { enabled: toolId !== null });
  const found = toolId === null ? undefined : tool.data?.data;
  useEffect(() => {
    if (found === undefined || found.properties.class !== 'hand torque wrench') return;
    setValue('torqueTool.number', found.number, { shouldDirty: true });
    setValue('torqueTool.scale', scaleOfWrench(found.properties), { shouldDirty: true });
  }, [found, setValue]);
  return (
    <ToolPicker
      label="Hand torque wrench of the register"
      toolClass="hand torque wrench"
      chosen={toolId}
      onChoose={(id) => setValue('torqueTool.toolId', id, { shouldDirty: true })}
    />
  );
}
