/** One stroke of the tool on one nut. */
export interface Stroke {
  /** Pressure or torque reached over the set one: 1 means reached. */
  readonly reached: number;
  /** Rotation of the nut in this stroke, degrees; null when nobody looked. */
  readonly rotation: number | null;
}

/** Limits of the stop rule. */
export interface StopLimits {
  /** Strokes at the set value without rotation that end the bolt. */
  readonly stillStrokes: number;
  /** Rotation in one stroke that counts as none, degrees: play of the drive. */
  readonly stillRotation: number;
  /** Share of the set value that counts as reached. */
  readonly reachedShare: number;
  /** Rotation in this pass after which a nut that keeps turning is stopped, degrees; null when the site has none. */
  readonly mostRotation: number | null;
}

/** Common practice: one more stroke at the set pressure that does not move the nut. */
export const COMMON_STOP: StopLimits = {
  stillStrokes: 1,
  stillRotation: 2,
  reachedShare: 0.99,
  mostRotation: null,
};

export interface StopVerdict {
  readonly verdict: 'go on' | 'bolt done' | 'stop and ask';
  readonly reason: string;
}

/**
 * What the strokes on one nut say: go on, done in this pass, or stop. The set value is never raised to make a nut move.
 *
 * Equation: done when, after some rotation, the last n strokes reach the set value and turn by no more than the play.
 * @param strokes strokes of this pass on this nut, in order
 * @param firstPass true for the first pass after snug, in which every nut has to turn
 * @param limits site's limits or `COMMON_STOP`
 * @returns verdict with its reason; a stroke nobody looked at never ends a bolt
 * @example stopVerdict([{ reached: 1, rotation: 20 }, { reached: 1, rotation: 0 }], true, COMMON_STOP).verdict // 'bolt done'
 * @source common practice
 */
export function stopVerdict(strokes: readonly Stroke[], firstPass: boolean, limits: StopLimits): StopVerdict {
  const last = strokes.at(-1);
  if (last === undefined) return { verdict: 'go on', reason: 'no stroke yet' };
  if (strokes.some(({ reached, rotation }) => !(reached >= 0) || (rotation !== null && !(rotation >= 0)))) {
    return { verdict: 'stop and ask', reason: 'a stroke is recorded with a number that can not be' };
  }
  const turned = strokes.reduce((sum, { rotation }) => sum + (rotation ?? 0), 0);
  if (limits.mostRotation !== null && turned > limits.mostRotation) {
    return {
      verdict: 'stop and ask',
      reason: `nut has turned ${turned}°, more than ${limits.mostRotation}°: stud may yield, or the gasket gives way`,
    };
  }
  if (strokes.some(({ rotation }) => rotation === null)) {
    return { verdict: 'go on', reason: 'nobody looked whether the nut moved: one more stroke' };
  }
  const tail = strokes.slice(-Math.max(1, limits.stillStrokes));
  const still = (stroke: Stroke) => (stroke.rotation ?? 0) <= limits.stillRotation;
  if (tail.length < limits.stillStrokes || !tail.every(still))
    return { verdict: 'go on', reason: 'the nut still moves' };
  if (!tail.every(({ reached }) => reached >= limits.reachedShare)) {
    return {
      verdict: 'stop and ask',
      reason: 'tool stalls below the set pressure: check pump, hose and reaction',
    };
  }
  if (strokes.every(still) && firstPass) {
    return {
      verdict: 'stop and ask',
      reason:
        'nut has not moved at all at the set pressure: seized thread or a nut that turns with its stud; do not raise the pressure',
    };
  }
  return {
    verdict: 'bolt done',
    reason: strokes.every(still)
      ? 'nut holds at the set pressure'
      : 'tool stalls at the set pressure and the nut stands',
  };
}
