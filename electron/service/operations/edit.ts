import type { Written } from '../../../core/contract/requests.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';

/**
 * Version an edit leads to. Master data is edited from the version a person saw; if somebody else was faster, nothing
 * is written and the answer says so.
 */
export function nextVersion(
  what: string,
  id: string | null,
  version: number | null,
  current: { readonly version: number } | null | undefined,
): number {
  if (id === null) {
    if (version === null) return 1;
    throw invalidField('version', String(version), 'null for a new record');
  }
  if (version === null) throw invalidField('version', 'null', 'the version the edit started from');
  if (!current) throw notFound(what, 'id', id);
  if (current.version !== version) {
    throw new RequestFailure(
      'conflict',
      `Somebody changed this ${what} in the meantime; load it again. Nothing was written`,
      [{ field: 'version', value: String(version), allowed: `the current version, ${current.version}` }],
    );
  }
  return version + 1;
}

export function duplicateOf(what: string, field: string, value: string): RequestFailure {
  return new RequestFailure('duplicate', `There is a ${what} called "${value}" already`, [
    { field, value, allowed: 'one that is not in use' },
  ]);
}

export function saved(id: string, version: number | null): Written {
  return { id, version, alreadyRecorded: false };
}
