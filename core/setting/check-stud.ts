import type { Raised } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { type Protrusion, protrusion } from '../joint/protrusion.ts';
import { showNumber, showQuantity } from '../text/number.ts';
import type { Basis } from './basis.ts';
import type { CardInput } from './input.ts';

/** Threads that common practice wants to see beyond the nut. */
const USUAL_THREADS = { least: 2, most: 3 } as const;

/**
 * Protrusion of the centred stud.
 *
 * Equation: z = (L − grip − 2·m)/2.
 * @param basis what the joint alone says
 * @returns protrusion in m and threads; value null with what is missing
 * @example studProtrusion(basis).value?.threads // 1.44
 * @source geometry; two to three threads showing is common practice
 */
export function studProtrusion({ joint }: Basis): { value: Protrusion | null; missing: string[] } {
  const height = joint.nut?.value.height ?? null;
  const missing: string[] = [];
  if (joint.studLength === null) missing.push('stud length');
  if (joint.grip === null) missing.push('grip length');
  if (joint.thread === null) missing.push('thread');
  if (height === null) missing.push('nut height');
  if (joint.studLength === null || joint.grip === null || joint.thread === null || height === null) {
    return { value: null, missing };
  }
  return {
    value: protrusion(joint.studLength.value, joint.grip.value, height, joint.thread.value.pitch),
    missing,
  };
}

/**
 * Looks at the full engagement of both nuts, and at the threads that show.
 *
 * @param input input of the card
 * @param basis what the joint alone says
 * @returns findings; none when nothing stands against it
 * @example checkStud(complete, basisOf(complete)).length // 0
 * @source geometry; two to three threads showing is common practice
 */
export function checkStud(input: CardInput, basis: Basis): Raised[] {
  const { value, missing } = studProtrusion(basis);
  const about = {
    subject: input.joint.data.tag,
    place: atJoint(input.joint.id, 'studLength'),
    source: 'common practice',
  };
  if (value === null)
    return [raise('protrusion_unknown', () => ({ missing }), { ...about, severity: 'note' })];
  const threads = showNumber(value.threads, 2);
  if (value.perEnd < -1e-9) {
    return [
      raise('stud_short', () => ({ protrusion: showQuantity(-value.perEnd, 'mm', 2) }), {
        ...about,
        severity: 'refusal',
        value: value.perEnd,
        limit: 0,
        unit: 'mm',
      }),
    ];
  }
  if (value.threads < 1) {
    return [
      raise('stud_protrusion_low', () => ({ threads }), {
        ...about,
        severity: 'warning',
        value: value.threads,
        limit: 1,
        unit: 'one',
      }),
    ];
  }
  if (value.threads < USUAL_THREADS.least || value.threads > USUAL_THREADS.most) {
    const limit = value.threads < USUAL_THREADS.least ? USUAL_THREADS.least : USUAL_THREADS.most;
    return [
      raise('stud_protrusion_unusual', () => ({ threads }), {
        ...about,
        severity: 'note',
        value: value.threads,
        limit,
        unit: 'one',
      }),
    ];
  }
  return [];
}
