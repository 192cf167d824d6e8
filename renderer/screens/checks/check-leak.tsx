import type { CheckKind } from '../../../core/contract/check.ts';
import type { ToolData } from '../../../core/contract/tool.ts';
import { UNITS } from '../../../core/units/units.ts';
import { Quantity, Text } from '../../components/fields.tsx';

interface LeakProps {
  readonly kind: CheckKind | null;
  readonly tool: ToolData;
}

/** Pressure that was held, for how long, and what it fell by on each side. */
export function CheckLeak({ kind, tool: { properties } }: LeakProps) {
  const rated = 'ratedPressure' in properties ? properties.ratedPressure : null;
  const sides = properties.class === 'drive unit';
  return (
    <fieldset>
      <legend>{kind === 'pressure test' ? 'Pressure held' : 'Leak test'}</legend>
      <p className="small lead-in">
        {rated === null
          ? 'No rated pressure is on the register for this class.'
          : `Rated on the register: ${rated.text} ${UNITS[rated.unit].label}.`}{' '}
        Test pressure, time and what it may fall by are in the tool’s own instructions.
      </p>
      <div className="fields narrow">
        <Quantity name="leak.pressure" label="Pressure held" quantity="pressure" />
        <Text name="leak.minutes" label="Held for, minutes" inputMode="decimal" />
        <Quantity
          name="leak.fallAdvance"
          label={sides ? 'Fell by, advance side' : 'Fell by'}
          quantity="pressure"
          hint="0 where it did not fall; empty is not measured"
        />
        {(sides || properties.class === 'pump') && (
          <Quantity
            name="leak.fallRetract"
            label="Fell by, retract side"
            quantity="pressure"
            hint="0 where it did not fall; empty is not measured"
          />
        )}
      </div>
    </fieldset>
  );
}
