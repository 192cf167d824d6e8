import type { ToolSetInput } from '../../core/contract/setting.ts';
import { ToolPicker } from './tool-picker.tsx';
import { ToolsPicker } from './tools-picker.tsx';

interface ToolSetFieldsProps {
  readonly tools: ToolSetInput;
  readonly onChange: (tools: ToolSetInput) => void;
}

/** The parts put together for a job, each searched for on the register. */
export function ToolSetFields({ tools, onChange }: ToolSetFieldsProps) {
  const set = (part: Partial<ToolSetInput>) => onChange({ ...tools, ...part });
  return (
    <>
      <ToolPicker
        id="driveId"
        label="Drive unit"
        toolClass="drive unit"
        chosen={tools.driveId}
        onChoose={(driveId) => set({ driveId })}
      />
      <ToolPicker
        id="cassetteId"
        label="Cassette"
        toolClass="cassette"
        chosen={tools.cassetteId}
        onChoose={(cassetteId) => set({ cassetteId })}
      />
      <ToolsPicker
        label="Reducer"
        classes={['reducer']}
        chosen={tools.reducerIds}
        onChange={(reducerIds) => set({ reducerIds })}
        most={3}
      />
      <ToolPicker
        id="pumpId"
        label="Pump"
        toolClass="pump"
        chosen={tools.pumpId}
        onChoose={(pumpId) => set({ pumpId })}
      />
      <ToolPicker
        id="gaugeId"
        label="Gauge"
        toolClass="gauge"
        chosen={tools.gaugeId}
        onChoose={(gaugeId) => set({ gaugeId })}
      />
      <ToolsPicker
        label="Hose"
        classes={['hose']}
        chosen={tools.hoseIds}
        onChange={(hoseIds) => set({ hoseIds })}
        most={8}
      />
    </>
  );
}
