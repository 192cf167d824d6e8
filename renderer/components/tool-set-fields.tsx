import type { ToolSetData, ToolSetInput } from '../../core/contract/setting.ts';
import { SuitsProvider } from './suits.ts';
import { ToolPicker } from './tool-picker.tsx';
import { ToolsPicker } from './tools-picker.tsx';

type Wrench = ToolSetData['further'][number];

const EMPTY_WRENCH: Wrench = { driveId: null, cassetteId: null, reducerIds: [], hoseIds: [] };
const MOST_FURTHER = 3;

interface ToolSetFieldsProps {
  readonly tools: ToolSetInput;
  readonly onChange: (tools: ToolSetInput) => void;
}

/** The parts put together for a job, each searched for on the register. */
export function ToolSetFields({ tools, onChange }: ToolSetFieldsProps) {
  const { couplerIds = [], counterholdId = null, further = [] } = tools;
  const set = (part: Partial<ToolSetInput>) => onChange({ ...tools, ...part });
  const taken = [tools, ...further].flatMap(partsOf);
  const put = (at: number, wrench: Wrench) =>
    set({ further: further.map((each, index) => (index === at ? wrench : each)) });
  return (
    <>
      <HeadFields wrench={tools} taken={taken} onChange={set} />
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
      <ToolsPicker
        label="Coupler"
        classes={['coupler']}
        chosen={couplerIds}
        onChange={(ids) => set({ couplerIds: ids })}
        most={8}
      />
      <ToolPicker
        id="counterholdId"
        label="Counterhold wrench"
        toolClass="counterhold wrench"
        chosen={counterholdId}
        onChoose={(id) => set({ counterholdId: id })}
      />
      {/* What suits is asked for the first wrench; another one has its own head and drive unit. */}
      <SuitsProvider value={null}>
        {further.map((wrench, at) => (
          <FurtherWrench
            // biome-ignore lint/suspicious/noArrayIndexKey: a wrench is known by its place alone
            key={at}
            number={at + 2}
            wrench={wrench}
            taken={taken}
            onChange={(next) => put(at, next)}
            onRemove={() => set({ further: further.filter((_, index) => index !== at) })}
          />
        ))}
      </SuitsProvider>
      {further.length < MOST_FURTHER && (
        <button type="button" className="quiet" onClick={() => set({ further: [...further, EMPTY_WRENCH] })}>
          Add a wrench on this pump
        </button>
      )}
    </>
  );
}

const partsOf = ({ driveId, cassetteId, reducerIds, hoseIds }: Wrench): string[] =>
  [driveId, cassetteId, ...reducerIds, ...hoseIds].filter((id) => id !== null);

interface HeadFieldsProps {
  readonly wrench: Wrench;
  /** Parts of any wrench of the set: a part is in one place only. */
  readonly taken: readonly string[];
  readonly onChange: (part: Partial<Wrench>) => void;
  readonly of?: string;
  readonly under?: string;
}

/** Drive unit, what turns the nut, and the reducers between. */
function HeadFields({ wrench, taken, onChange, of = '', under = '' }: HeadFieldsProps) {
  return (
    <>
      <ToolPicker
        id={`${under}driveId`}
        label={`Drive unit${of}`}
        toolClass="drive unit"
        chosen={wrench.driveId}
        onChoose={(driveId) => onChange({ driveId })}
        without={taken}
      />
      <ToolPicker
        id={`${under}cassetteId`}
        label={`Cassette${of}`}
        toolClass="cassette"
        chosen={wrench.cassetteId}
        onChoose={(cassetteId) => onChange({ cassetteId })}
        without={taken}
      />
      {wrench.cassetteId === null && (
        <ToolPicker
          label={`Square-drive head${of}, instead`}
          toolClass="square-drive head"
          chosen={null}
          onChoose={(cassetteId) => onChange({ cassetteId })}
          without={taken}
        />
      )}
      <ToolsPicker
        label={`Reducer${of}`}
        classes={['reducer']}
        chosen={wrench.reducerIds}
        onChange={(reducerIds) => onChange({ reducerIds })}
        most={3}
      />
    </>
  );
}

interface FurtherWrenchProps {
  readonly number: number;
  readonly wrench: Wrench;
  readonly taken: readonly string[];
  readonly onChange: (wrench: Wrench) => void;
  readonly onRemove: () => void;
}

/** One more wrench on the same pump and gauge. */
function FurtherWrench({ number, wrench, taken, onChange, onRemove }: FurtherWrenchProps) {
  const of = ` of wrench ${number}`;
  const set = (part: Partial<Wrench>) => onChange({ ...wrench, ...part });
  return (
    <div className="stack tight">
      <HeadFields wrench={wrench} taken={taken} onChange={set} of={of} under={`further.${number - 2}.`} />
      <ToolsPicker
        label={`Hose${of}`}
        classes={['hose']}
        chosen={wrench.hoseIds}
        onChange={(hoseIds) => set({ hoseIds })}
        most={8}
      />
      <button type="button" className="link small" onClick={onRemove}>
        Take wrench {number} away
      </button>
    </div>
  );
}
