import { partText } from '../../../core/setting/check-set.ts';
import type { CardInput } from '../../../core/setting/input.ts';
import { showEntered } from '../../../core/text/number.ts';
import { ratedParts } from '../../../core/tools/rating.ts';
import type { Entered } from '../../../core/units/entered.ts';
import type { Overload } from '../chain/events.ts';

/** A tool that was taken beyond what it may stand: the tool room has to look at it. */
export interface Overloaded extends Overload {
  /** As it is told at the record. */
  readonly flag: string;
}

/** What was read in recorded work. */
interface Readings {
  readonly dialled: readonly (Entered | null)[];
  readonly torques: readonly (Entered | null)[];
}

/** Two values are told apart from here on; below, they are the same number in two units. */
const SAME = 1e-3;

/** Tools whose rating the highest reading lies above. */
export function overloadsOf({ set, handWrench }: CardInput, { dialled, torques }: Readings): Overloaded[] {
  const pressure = highestOf(dialled);
  const torque = highestOf(torques);
  const parts =
    pressure === null
      ? []
      : ratedParts(set).flatMap(({ tool, pressure: rated }) =>
          typeof rated === 'number' && beyond(pressure, rated)
            ? [told(tool.id, `dialled ${showEntered(pressure)}`, partText(tool))]
            : [],
        );
  const wrench =
    handWrench !== null && torque !== null && beyond(torque, handWrench.data.properties.most.si)
      ? [told(handWrench.id, `${showEntered(torque)} read`, partText(handWrench))]
      : [];
  return [...parts, ...wrench];
}

function told(toolId: string, what: string, part: string): Overloaded {
  return { toolId, text: `${what}, above its rating`, flag: `${what}: above what ${part} may stand` };
}

const beyond = ({ si }: Entered, rated: number) => si > rated * (1 + SAME);

function highestOf(values: readonly (Entered | null)[]): Entered | null {
  return values.reduce<Entered | null>(
    (most, each) => (each !== null && (most === null || each.si > most.si) ? each : most),
    null,
  );
}
