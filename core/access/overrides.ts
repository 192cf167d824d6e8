import type { Role } from '../contract/roles.ts';
import type { FindingCode } from '../findings/codes.ts';

/** Who may set a refusal aside, and what they answer for when they do. */
interface MayOverride {
  readonly roles: readonly Role[];
  readonly answersFor: string;
}

const ENGINEER: readonly Role[] = ['engineer'];

/**
 * Refusals that may be set aside. The list is closed: what does not stand here is nobody's to override. That holds for
 * every rating and limit that is exceeded, every tool that is barred, in a case, due or outside its limits, every part
 * that does not fit nut, stud or line, every value a number rests on that is not known, and every contradiction in the
 * data; those are put right, not set aside.
 */
const OVERRIDABLE: Readonly<Partial<Record<FindingCode, MayOverride>>> = {
  certificate_lapsed: {
    roles: ENGINEER,
    answersFor: 'that the tool is still within its limits, by its past certificates and a check of late',
  },
  lines_disagree: {
    roles: ENGINEER,
    answersFor: 'that every bolt stays within its limits although the wrenches differ',
  },
  below_bolt_limit: {
    roles: ENGINEER,
    answersFor: 'that the joint stays tight at this load',
  },
  gasket_stress_low: {
    roles: ENGINEER,
    answersFor: 'that the gasket seals at this load',
  },
  neighbour_in_the_way: {
    roles: ENGINEER,
    answersFor: 'that the head was tried on the joint and sits square on the nut',
  },
  hub_in_the_way: {
    roles: ENGINEER,
    answersFor: 'that the head was tried on the joint and sits square on the nut',
  },
  head_too_high: {
    roles: ENGINEER,
    answersFor: 'that the head was tried on the joint and goes over the stud',
  },
};

/**
 * Says who may set a refusal aside.
 *
 * @param code code of the finding
 * @returns roles, and what they answer for; null for a refusal nobody may override
 * @example mayOverride('torque_above_rating') // null
 * @source rule of this program; which refusals stand on the list is common practice
 */
export function mayOverride(code: string): MayOverride | null {
  return Object.hasOwn(OVERRIDABLE, code) ? (OVERRIDABLE[code as FindingCode] ?? null) : null;
}
