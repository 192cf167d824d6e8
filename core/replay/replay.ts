import type { JointData } from '../contract/joint.ts';
import type { ReplayStanding, ReplayView } from '../contract/replay.ts';
import { type JointLimit, jointLimits } from '../recall/joint-limits.ts';
import { realLoads } from '../recall/real-load.ts';
import { standingOf } from '../recall/standing.ts';
import { type Basis, loadOf } from '../setting/basis.ts';
import { showQuantity } from '../text/number.ts';

/** A joint as one set of assumptions sees it. */
export interface SeenJoint {
  readonly data: JointData;
  readonly basis: Basis;
}

/** A tightening as recorded, and as it would have been. */
export interface Replayed {
  readonly loadThen: number | null;
  readonly loadOtherwise: number | null;
  readonly change: number | null;
  readonly standingThen: ReplayStanding;
  readonly standing: ReplayStanding;
  readonly leaves: boolean;
  readonly words: string;
}

/**
 * Load of a recorded tightening, by the joint's data and with something taken to be otherwise, each held against the
 * joint's limits.
 *
 * Equation: F = T/(K·D) twice, with the torque that was recorded; change F'/F − 1.
 * @param torque T, N·m, above 0; null when not known
 * @param then joint as it stood when it was tightened; null when not known
 * @param otherwise the same joint with something changed; null where it has no such thing
 * @returns loads in N per bolt, standings, and the nearest limit in words; "not known" is never a pass
 * @example replayed(383.44, { data, basis }, { data, basis }).change // 0
 * @source as of `realLoads` and `standingOf`: friction scatter of the joint, 95 % intervals; the torque taken as exact
 */
export function replayed(
  torque: number | null,
  then: SeenJoint | null,
  otherwise: SeenJoint | null,
): Replayed {
  const none = (words: string, loadThen: number | null = null): Replayed => ({
    loadThen,
    loadOtherwise: null,
    change: null,
    standingThen: 'not known',
    standing: 'not known',
    leaves: false,
    words,
  });
  if (then === null) return none('the joint as it stood then is not known');
  if (torque === null || torque <= 0) return none('the torque is not known, or recorded as zero');
  const loadThen = loadOf(then.basis, torque);
  if (otherwise === null) return none('the joint has nothing of the kind that is asked about', loadThen);
  const loadOtherwise = loadOf(otherwise.basis, torque);
  if (loadThen === null || loadOtherwise === null) {
    return none('thread or friction of the joint is not known', loadThen);
  }
  const change = loadOtherwise / loadThen - 1;
  const before = held(then, loadThen, 0);
  const after = held(otherwise, loadOtherwise, change);
  return {
    loadThen,
    loadOtherwise,
    change,
    standingThen: before.standing,
    standing: after.standing,
    leaves: after.standing === 'broken' && before.standing !== 'broken',
    words: after.words,
  };
}

function held({ data, basis }: SeenJoint, load: number, change: number) {
  const common = data.lubricant?.nutFactorBatchCv?.si ?? 0;
  const spread = { common, perBolt: basis.friction.scatter };
  const real = realLoads(load, 0, spread, basis.joint.boltCount).value;
  if (real === null) return { standing: 'not known' as const, words: 'no load' };
  const limits = jointLimits(data, basis);
  const { worst, open, limits: rows } = standingOf(real, change, limits, '');
  const broken = rows.filter(({ standing }) => standing === 'broken');
  const told = broken.length > 0 ? broken.map(limitWords).join('; ') : nearest(load, limits);
  return { standing: worst, words: [told, open].filter((part) => part !== '').join('; ') };
}

const limitWords = ({ name, side, limit }: Pick<JointLimit, 'name' | 'side' | 'limit'>) =>
  `${name}: ${side === 'least' ? 'at least' : 'at most'} ${showQuantity(limit, 'kN', 4)}`;

function nearest(load: number, limits: readonly JointLimit[]): string {
  const room = ({ side, limit }: JointLimit) => (side === 'least' ? load - limit : limit - load) / limit;
  const [first] = limits.filter(({ limit }) => limit > 0).toSorted((a, b) => room(a) - room(b));
  return first === undefined ? 'no limit of the joint is known' : `nearest limit, ${limitWords(first)}`;
}

const many = (count: number, noun: string) => `${count} ${noun}${count === 1 ? '' : 's'}`;

/**
 * A question about the past in one sentence.
 *
 * @param counts tightenings by what became of them
 * @param total tightenings looked at, whole, at least 0
 * @returns a sentence
 * @example replayFinding({ leaves: 0, leavesNow: 0, kept: 0, notSure: 0, broken: 0, notKnown: 0 }, 0) // 'No tightening is in what was asked about.'
 * @source rule of this program
 */
export function replayFinding(counts: ReplayView['counts'], total: number): string {
  if (total === 0) return 'No tightening is in what was asked about.';
  const { leaves, leavesNow, notSure, notKnown } = counts;
  return [
    leaves === 0
      ? `None of ${many(total, 'tightening')} would have broken a limit it kept.`
      : `${many(leaves, 'tightening')} of ${total} would have broken a limit, ${leavesNow} of them with the load still in the joint.`,
    ...(notSure === 0 ? [] : [`${notSure} can’t be called kept: their interval reaches over a limit.`]),
    ...(notKnown === 0 ? [] : [`Of ${notKnown} it is not known.`]),
  ].join(' ');
}

/** What such an answer is. */
export const REPLAY_CAVEAT =
  'Worked out anew from the recorded torques with the one thing that is asked about changed; nothing is recorded, and no load was measured. Whether a joint has to be looked at is for the competent person to decide.';
