import type { Role } from '../contract/roles.ts';

/** What each role is for, as the window says it. */
export const DUTIES: Readonly<Record<Role, string>> = {
  planner: 'plans the work: joints, units, people, kits, settings without a refusal against them',
  keeper: 'keeps the tool room: tools, custody, certificates, lists and rules',
  engineer: 'answers for the joints: settings, site tables, plans, cases, overrides',
  technician: 'does and records the work; records checks; bars a tool that is not in order',
  administrator: 'names people, gives roles and secrets, keeps competences',
};

export const ROLES = Object.keys(DUTIES) as readonly Role[];

/**
 * Tells whether a person has one of the roles that are asked for.
 *
 * @param roles roles of the person
 * @param asked roles of which one is enough
 * @returns true when one of them is among the person’s
 * @example hasOneOf(['technician'], ['engineer', 'planner']) // false
 * @source rule of this program
 */
export function hasOneOf(roles: readonly Role[], asked: readonly Role[]): boolean {
  return asked.some((one) => roles.includes(one));
}

/**
 * Names roles in a sentence.
 *
 * @param roles roles in the order they are told
 * @returns words; "nobody" for none
 * @example rolesInWords(['planner', 'keeper', 'engineer']) // 'planner, keeper or engineer'
 * @source rule of this program
 */
export function rolesInWords(roles: readonly Role[]): string {
  const last = roles.at(-1);
  if (last === undefined) return 'nobody';
  return roles.length === 1 ? last : `${roles.slice(0, -1).join(', ')} or ${last}`;
}
