import { torqueSplit } from '../bolting/torque.ts';
import type { SplitView } from '../contract/card-views.ts';
import type { Working } from '../contract/setting.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';
import { torqueUnit } from './show.ts';
import { known, number, result } from './working.ts';

/**
 * Where the torque goes at a bolt load: stretch, thread and nut face.
 *
 * Equation: T = F·[P/(2π) + μt·d2/(2·cos 30°) + μb·Db/2].
 * @param basis what the joint alone says
 * @param load F, N, at least 0, or null when not known
 * @returns parts in N·m and as shares, or null while the friction pair is not known
 * @example splitOf(basis, null) // null
 * @source VDI 2230-1:2003; ISO 16047:2005
 */
export function splitOf({ joint, friction }: Basis, load: number | null): SplitView | null {
  const thread = joint.thread?.value;
  if (load === null || thread === undefined || friction.pair === null || friction.bearingDiameter === null)
    return null;
  const { pair, bearingDiameter } = friction;
  return { ...torqueSplit(load, thread, bearingDiameter, pair.thread, pair.bearing), rule: pair.rule };
}

/**
 * Shows how the three parts came about.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @param load F, N, at least 0
 * @param view parts as the card shows them
 * @returns working with friction and geometry
 * @example splitWorking(input, basis, 107829, splitOf(basis, 107829)).of // 'split'
 * @source each working names its own
 */
export function splitWorking(
  input: CardInput,
  { joint, friction }: Basis,
  load: number,
  view: SplitView,
): Working {
  const unit = torqueUnit(input);
  const thread = joint.thread?.value ?? null;
  const origin = friction.assumed ? 'assumed' : 'calculated';
  return {
    of: 'split',
    title: 'Where the torque goes',
    relation: 'T = F · P / 2π + F · μt · d2 / ( 2 · cos 30° ) + F · μb · Db / 2',
    inputs: [
      number('F', 'load per stud', load, 'kN', 'calculated', 'load per stud'),
      known('P', 'pitch', joint.thread, thread?.pitch ?? null, 'mm'),
      known('d2', 'pitch diameter', joint.thread, thread?.pitchDiameter ?? null, 'mm'),
      known('Db', 'mean bearing diameter', joint.nut, friction.bearingDiameter, 'mm'),
      number('μt', 'friction in the thread', friction.pair?.thread ?? null, 'one', origin, view.rule),
      number('μb', 'friction of the nut face', friction.pair?.bearing ?? null, 'one', origin, view.rule),
      number('', 'stretches the stud', view.stretch, unit, 'calculated', 'this working'),
      number('', 'friction in the thread', view.thread, unit, 'calculated', 'this working'),
      number('', 'friction of the nut face', view.bearing, unit, 'calculated', 'this working'),
    ],
    result: result('T', 'torque', view.stretch + view.thread + view.bearing, unit),
    source: 'VDI 2230-1:2003; ISO 16047:2005',
  };
}
