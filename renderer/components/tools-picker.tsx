import type { ToolClass } from '../../core/contract/tool.ts';
import { ToolPicker } from './tool-picker.tsx';

interface ToolsPickerProps {
  readonly label: string;
  readonly classes: readonly ToolClass[];
  readonly chosen: readonly string[];
  readonly onChange: (ids: string[]) => void;
  readonly most: number;
}

/** Several tools in order: the chosen ones, and one empty field for the next. */
export function ToolsPicker({ label, classes, chosen, onChange, most }: ToolsPickerProps) {
  const put = (at: number, id: string | null) => {
    const next = [...chosen];
    if (id === null) next.splice(at, 1);
    else next[at] = id;
    onChange(next);
  };
  const [first] = classes;
  if (first === undefined) return null;
  const fields = chosen.length < most ? [...chosen, null] : [...chosen];
  return (
    <div className={classes.length > 1 ? 'fields' : 'stack tight'}>
      {fields.map((id, at) =>
        id === null ? (
          classes.map((toolClass) => (
            <ToolPicker
              key={`next ${toolClass}`}
              label={nextLabel(label, toolClass, classes.length > 1, at)}
              hideLabel={at > 0 && classes.length === 1}
              toolClass={toolClass}
              chosen={null}
              onChoose={(next) => put(at, next)}
              without={chosen}
            />
          ))
        ) : (
          <ToolPicker
            key={id}
            label={at === 0 ? label : `${label} ${at + 1}`}
            hideLabel={at > 0}
            toolClass={first}
            chosen={id}
            onChoose={(next) => put(at, next)}
            without={chosen}
          />
        ),
      )}
    </div>
  );
}

function nextLabel(label: string, toolClass: ToolClass, several: boolean, at: number): string {
  if (several) return `Add a ${toolClass}`;
  return at === 0 ? label : `${label} ${at + 1}`;
}
