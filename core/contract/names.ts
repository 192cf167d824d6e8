/**
 * Every request by name, with its kind. Kept apart from the schemas so that the preload script can list the names
 * without carrying the validation library; a test holds the two lists against each other.
 */
export const REQUEST_KINDS = {
  'register.state': 'read',
  'register.create': 'write',
  'reference.choices': 'read',
  'unit.list': 'read',
  'unit.save': 'write',
  'person.list': 'read',
  'person.save': 'write',
  'joint.list': 'read',
  'joint.get': 'read',
  'joint.save': 'write',
  'joint.history': 'read',
  'joint.chart': 'read',
  'joint.compareSheet': 'read',
  'tool.list': 'read',
  'tool.get': 'read',
  'tool.save': 'write',
  'certificate.add': 'write',
  'setting.compute': 'read',
  'setting.issue': 'write',
  'setting.get': 'read',
  'setting.list': 'read',
  'setting.recompute': 'read',
  'event.recordTightening': 'write',
  'event.recordBreakout': 'write',
  'event.get': 'read',
  'siteRow.list': 'read',
  'siteRow.save': 'write',
  'plan.list': 'read',
  'plan.save': 'write',
  'plan.approve': 'write',
  'tableValue.list': 'read',
  'tableValue.confirm': 'write',
  'import.columns': 'read',
  'import.preview': 'read',
  'import.confirm': 'write',
} as const;

export type RequestName = keyof typeof REQUEST_KINDS;

export const REQUEST_NAMES = Object.keys(REQUEST_KINDS) as RequestName[];
