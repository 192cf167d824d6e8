import { compute, noSolution, type Outcome, positive, within } from '../findings/outcome.ts';
import type { Thread } from './thread.ts';
import { FLANK_ANGLE, nutFactorOf } from './torque.ts';

type Screw = Pick<Thread, 'pitch' | 'pitchDiameter' | 'diameter'>;

/** One nut factor belongs to many pairs of coefficients; a rule has to say which pair is meant. */
export type FrictionRule =
  | { readonly kind: 'thread and bearing equal' }
  | { readonly kind: 'thread fixed'; readonly value: number | null }
  | { readonly kind: 'bearing fixed'; readonly value: number | null };

/** Coefficients of thread and bearing face with the rule that gave them. */
export interface FrictionPair {
  /** μt */
  readonly thread: number;
  /** μb */
  readonly bearing: number;
  readonly rule: string;
}

/**
 * Friction coefficients that a nut factor stands for, by a stated rule.
 *
 * Equation: K·D = P/(2π) + μt·d2/(2·cos 30°) + μb·Db/2, with μt = μb, or μt or μb given.
 * @param nutFactor K, 1, above 0
 * @param rule which pair of the many
 * @param screw pitch, pitch diameter and nominal diameter, m
 * @param bearingDiameter Db, m, above 0
 * @returns the pair; no solution when K leaves nothing, or less than nothing, for the unknown coefficient
 * @example frictionPair(0.2, { kind: 'thread fixed', value: 0.12 }, metricThread(24, 3), 0.03).value?.bearing // 0.186
 * @source VDI 2230-1:2003, relation for the tightening torque, solved for μ
 */
export function frictionPair(
  nutFactor: number | null,
  rule: FrictionRule,
  screw: Screw,
  bearingDiameter: number | null,
): Outcome<FrictionPair> {
  const solved = compute(
    {
      K: positive(
        'K',
        'nut factor',
        nutFactor,
        'measure K, or take it from a source that says what was tested',
      ),
      bearing: positive('Db', 'mean diameter of the bearing face, m', bearingDiameter, 'choose the nut'),
      given: within(
        rule.kind === 'bearing fixed' ? 'μb' : 'μt',
        'coefficient that is kept',
        rule.kind === 'thread and bearing equal' ? 0 : rule.value,
        [0, 1],
        'enter the coefficient that is known',
      ),
    },
    ({ K, bearing, given }): FrictionPair => {
      const threadArm = screw.pitchDiameter / (2 * Math.cos(FLANK_ANGLE));
      const bearingArm = bearing / 2;
      const left = K * screw.diameter - screw.pitch / (2 * Math.PI);
      if (rule.kind === 'thread fixed') {
        return {
          thread: given,
          bearing: (left - given * threadArm) / bearingArm,
          rule: 'μt kept, μb from K',
        };
      }
      if (rule.kind === 'bearing fixed') {
        return {
          thread: (left - given * bearingArm) / threadArm,
          bearing: given,
          rule: 'μb kept, μt from K',
        };
      }
      const equal = left / (threadArm + bearingArm);
      return { thread: equal, bearing: equal, rule: 'μt = μb, from K' };
    },
  );
  if (solved.value === null) return solved;
  if (solved.value.thread >= 0 && solved.value.bearing >= 0) return solved;
  return noSolution(
    'μ',
    'friction coefficients',
    'K is too low for this thread and the coefficient kept: check both',
  );
}

/**
 * Nut factor of a pair of coefficients, with its inputs looked at.
 *
 * Equation: K = [P/(2π) + μt·d2/(2·cos 30°) + μb·Db/2]/D.
 * @param thread μt, 1, 0 to 1
 * @param bearing μb, 1, 0 to 1
 * @param screw pitch, pitch diameter and nominal diameter, m
 * @param bearingDiameter Db, m, above 0
 * @returns K, 1
 * @example nutFactorOfPair(0.12, 0.12, metricThread(24, 3), 0.03).value // 0.159
 * @source VDI 2230-1:2003, solved for K
 */
export function nutFactorOfPair(
  thread: number | null,
  bearing: number | null,
  screw: Screw,
  bearingDiameter: number | null,
): Outcome<number> {
  return compute(
    {
      thread: within(
        'μt',
        'friction coefficient of the thread',
        thread,
        [0, 1],
        'measure it or name its source',
      ),
      bearing: within(
        'μb',
        'friction coefficient of the bearing face',
        bearing,
        [0, 1],
        'measure it or name its source',
      ),
      diameter: positive('Db', 'mean diameter of the bearing face, m', bearingDiameter, 'choose the nut'),
    },
    (v) => nutFactorOf(screw, v.diameter, v.thread, v.bearing),
  );
}
