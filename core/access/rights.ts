import type { RequestName } from '../contract/names.ts';
import type { Role } from '../contract/roles.ts';
import { hasOneOf, ROLES } from './roles.ts';
import { valueAt } from './value-at.ts';

/** A right that hangs on what the input chooses: the field, and who may for each of its values. */
interface RightByChoice {
  readonly by: string;
  readonly roles: Readonly<Record<string, readonly Role[]>>;
}

/** "Anybody": before anybody is signed in, too. "Signed in": whatever the roles, for what is one's own. */
type Right = 'anybody' | 'signed in' | readonly Role[] | RightByChoice;

const EVERYONE = ROLES;
const ENGINEER: readonly Role[] = ['engineer'];
const ADMINISTRATOR: readonly Role[] = ['administrator'];
const ENGINEER_AND_ADMINISTRATOR: readonly Role[] = ['engineer', 'administrator'];
const PLANT: readonly Role[] = ['planner', 'engineer'];
const WORK: readonly Role[] = ['engineer', 'technician'];
const ROOM: readonly Role[] = ['keeper'];
const ROOM_AND_ENGINEER: readonly Role[] = ['keeper', 'engineer'];
const AUDIT: readonly Role[] = ['keeper', 'engineer', 'administrator'];
const REVIEWERS: readonly Role[] = ['planner', 'keeper', 'engineer'];
const KITS: readonly Role[] = ['planner', 'keeper'];

/**
 * Who may ask what, once sign-in has begun. What was really done is recorded by everyone; what decides, approves or
 * changes what others rest on is not. Every request of the map stands here; one that does not is nobody's.
 */
export const RIGHTS: Readonly<Record<RequestName, Right>> = {
  'register.state': 'anybody',
  'register.create': 'anybody',
  'access.state': 'anybody',
  'access.present': EVERYONE,
  'access.stay': 'signed in',
  'access.begin': 'anybody',
  'access.signIn': 'anybody',
  'access.signOut': 'anybody',
  'access.changeSecret': 'signed in',
  'access.giveSecret': ADMINISTRATOR,
  'reference.choices': EVERYONE,
  'breakout.history': EVERYONE,
  'breakout.forecast': EVERYONE,
  'breakout.ownRecord': EVERYONE,
  'forecasts.start': EVERYONE,
  'forecasts.run': EVERYONE,
  'forecasts.cancel': EVERYONE,
  'forecasts.rows': EVERYONE,
  'scatter.simulate': EVERYONE,
  'friction.evidence': EVERYONE,
  'replay.run': EVERYONE,
  'unit.list': EVERYONE,
  'unit.save': PLANT,
  'person.list': EVERYONE,
  'person.save': ['planner', 'administrator'],
  'person.saveRoles': ADMINISTRATOR,
  'competence.list': EVERYONE,
  'competence.save': ['engineer', 'administrator'],
  'joint.list': EVERYONE,
  'joint.get': EVERYONE,
  'joint.save': PLANT,
  'joint.history': EVERYONE,
  'joint.chart': EVERYONE,
  'joint.find': EVERYONE,
  'joint.lookAlikes': EVERYONE,
  'joint.retightening': EVERYONE,
  'joint.leaks': EVERYONE,
  'leak.list': EVERYONE,
  'leak.verifyFirst': EVERYONE,
  'cycles.record': EVERYONE,
  'joint.standing': EVERYONE,
  // Work that was really done is recorded by everyone; whether it was in order, roles and all, is the joint's to say.
  'joint.step': {
    by: 'data.step',
    roles: {
      assess: ENGINEER,
      'declare in service': PLANT,
      schedule: PLANT,
      unschedule: PLANT,
      isolate: EVERYONE,
      'lift isolation': EVERYONE,
      release: PLANT,
      break: EVERYONE,
      inspect: EVERYONE,
      hold: EVERYONE,
      'clear hold': ENGINEER,
      'make up': EVERYONE,
      witness: WORK,
      'relaxation pass': EVERYONE,
      test: EVERYONE,
      reinstate: EVERYONE,
      'enter service': EVERYONE,
      'report leak': EVERYONE,
      'close leak watch': ENGINEER,
    },
  },
  'joint.containment': EVERYONE,
  'deviation.list': EVERYONE,
  'deviation.decide': ENGINEER,
  'classRule.list': EVERYONE,
  'classRule.save': ENGINEER,
  'record.completeness': EVERYONE,
  'joint.compareSheet': EVERYONE,
  'tool.list': EVERYONE,
  'tool.get': EVERYONE,
  'tool.save': ROOM,
  'tool.find': EVERYONE,
  'tool.record': EVERYONE,
  'tool.uses': EVERYONE,
  'tool.due': EVERYONE,
  // Barring a tool that is not in order, and giving it back, wait for nobody.
  'tool.move': {
    by: 'data.step',
    roles: {
      issue: ROOM,
      return: EVERYONE,
      'send to the laboratory': ROOM,
      'take back from the laboratory': ROOM,
      quarantine: EVERYONE,
      'release from quarantine': ROOM_AND_ENGINEER,
      scrap: ROOM,
    },
  },
  'check.assess': EVERYONE,
  'tool.check': EVERYONE,
  'certificate.assess': EVERYONE,
  'certificate.add': ROOM_AND_ENGINEER,
  'checklist.list': EVERYONE,
  'checklist.save': ROOM_AND_ENGINEER,
  'toolRule.list': EVERYONE,
  'toolRule.save': ROOM_AND_ENGINEER,
  'kit.list': EVERYONE,
  'kit.get': EVERYONE,
  'kit.save': KITS,
  'campaign.list': EVERYONE,
  'campaign.get': EVERYONE,
  'campaign.save': PLANT,
  'campaign.materials': EVERYONE,
  'job.list': EVERYONE,
  'job.get': EVERYONE,
  'job.save': PLANT,
  'job.changes': EVERYONE,
  'board.get': EVERYONE,
  'attachment.list': EVERYONE,
  'attachment.get': EVERYONE,
  'attachment.add': EVERYONE,
  'batch.list': EVERYONE,
  'case.preview': EVERYONE,
  'case.list': EVERYONE,
  'case.get': EVERYONE,
  'case.open': ROOM_AND_ENGINEER,
  'case.decide': ENGINEER,
  'case.close': ENGINEER,
  'setting.compute': EVERYONE,
  'setting.suits': EVERYONE,
  'setting.issue': PLANT,
  'setting.get': EVERYONE,
  'setting.list': EVERYONE,
  'setting.recompute': EVERYONE,
  'event.recordTightening': EVERYONE,
  'event.recordBreakout': EVERYONE,
  'event.get': EVERYONE,
  'event.sign': {
    by: 'data.meaning',
    roles: { did: EVERYONE, witnessed: EVERYONE, approved: ENGINEER, reviewed: REVIEWERS },
  },
  'pass.open': EVERYONE,
  'pass.record': EVERYONE,
  'draft.get': EVERYONE,
  'draft.save': EVERYONE,
  'draft.drop': EVERYONE,
  'history.record': EVERYONE,
  'audit.list': AUDIT,
  'history.verify': EVERYONE,
  'history.export': ENGINEER_AND_ADMINISTRATOR,
  'history.progress': EVERYONE,
  'history.cancel': EVERYONE,
  'history.exportPart': ENGINEER_AND_ADMINISTRATOR,
  'siteRow.list': EVERYONE,
  'siteRow.save': ENGINEER,
  'plan.list': EVERYONE,
  'plan.save': ENGINEER,
  'plan.approve': ENGINEER,
  'tableValue.list': EVERYONE,
  'tableValue.confirm': ENGINEER,
  'import.columns': EVERYONE,
  'import.preview': EVERYONE,
  'import.confirm': {
    by: 'data.kind',
    roles: { joints: PLANT, tools: ROOM, certificate: ROOM_AND_ENGINEER, jobs: PLANT },
  },
};

/** Whether a request may be asked, and if not, whether signing in would help or which roles may. */
export type Admission =
  | { readonly is: 'allowed' }
  | { readonly is: 'sign in first' }
  | { readonly is: 'refused'; readonly roles: readonly Role[] };

/**
 * Says whether somebody may ask a request, in a register that has begun sign-in.
 *
 * @param name request of the map
 * @param input what is sent with it; only the field that a right hangs on is read
 * @param roles roles of the person who is signed in; null when nobody is
 * @returns allowed, sign in first, or refused with the roles that may
 * @example admission('plan.approve', {}, ['technician']).is // 'refused'
 * @source rule of this program
 */
export function admission(name: RequestName, input: unknown, roles: readonly Role[] | null): Admission {
  const right: Right | undefined = RIGHTS[name];
  if (right === 'anybody') return { is: 'allowed' };
  if (roles === null) return { is: 'sign in first' };
  if (right === 'signed in') return { is: 'allowed' };
  const may = rolesOf(right, input);
  return hasOneOf(roles, may) ? { is: 'allowed' } : { is: 'refused', roles: may };
}

function rolesOf(right: readonly Role[] | RightByChoice | undefined, input: unknown): readonly Role[] {
  if (right === undefined) return [];
  if (!('by' in right)) return right;
  const choice = valueAt(input, right.by);
  if (typeof choice !== 'string' || !Object.hasOwn(right.roles, choice)) return [];
  return right.roles[choice] ?? [];
}
