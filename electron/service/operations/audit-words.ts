import type { Kysely } from 'kysely';
import type { AuditRow } from '../../../core/contract/audit.ts';
import { MEANING_SHORT } from '../../../core/text/signature.ts';
import type { EventBody, EventDataByKind, EventKind } from '../chain/events.ts';
import type { RegisterSchema } from '../register/schema.ts';

type Db = Kysely<RegisterSchema>;
type Told = Pick<AuditRow, 'what' | 'detail'> & { readonly jointId?: string };

interface Logged {
  readonly id: string;
  readonly kind: EventKind;
  readonly body: EventBody;
}

/** Names behind the ids that events carry. */
interface Named {
  person(id: string | null): string;
  plan(id: string): string;
}

type Telling = { readonly [K in EventKind]?: (data: EventDataByKind[K], named: Named) => Told };

const version = (one: number) => (one === 1 ? 'new' : `version ${one}`);

const TOLD: Telling = {
  'setting issued': ({ number, input, overrides = [] }) => ({
    what: `Setting ${number} issued`,
    detail: overrides
      .map(({ code, findings, reason }) => {
        const titles = findings.map(({ title }) => title).join('; ');
        return `${titles === '' ? code : titles}. Reason: ${reason}`;
      })
      .join(' · '),
    jointId: input.jointId,
  }),
  'sign-in begun': ({ personId }, { person }) => ({
    what: 'Sign-in begun',
    detail: `First administrator: ${person(personId)}`,
  }),
  'signed in': ({ personId }, { person }) => ({ what: 'Signed in', detail: person(personId) }),
  'sign-in failed': ({ personId, use }, { person }) => ({
    what: 'Wrong secret',
    detail: `${use}, ${person(personId)}`,
  }),
  'locked out': ({ personId, until }, { person }) => ({
    what: 'Has to wait after wrong secrets',
    detail: `${person(personId)}, until ${until}`,
  }),
  'secret changed': ({ personId, by }, { person }) => ({
    what: 'Secret changed',
    detail: `${person(personId)}, by ${by}`,
  }),
  'person saved': ({ version: one, data }) => ({ what: 'Person', detail: `${data.name}, ${version(one)}` }),
  'person roles saved': ({ personId, roles }, { person }) => ({
    what: 'Roles',
    detail: `${person(personId)}: ${roles.length === 0 ? 'none' : roles.join(', ')}`,
  }),
  'competence saved': ({ version: one, data }, { person }) => ({
    what: 'Competence',
    detail: `${person(data.personId)}: ${data.scheme}, ${data.withdrawn ? 'withdrawn' : version(one)}`,
  }),
  'site row saved': ({ version: one, data }) => ({
    what: `Row of the site’s ${data.kind} table`,
    detail: `${data.key}, ${data.retired ? 'retired' : version(one)}`,
  }),
  'pass plan saved': ({ version: one, data }) => ({
    what: 'Pass plan',
    detail: `${data.name}, ${version(one)}`,
  }),
  'pass plan approved': ({ id, version: one }, { plan }) => ({
    what: 'Pass plan approved',
    detail: `${plan(id)}, ${version(one)}`,
  }),
  'table values confirmed': ({ data }) => ({
    what: 'Table values confirmed',
    detail: `${data.table}, ${data.key}; compared with ${data.sourceSeen}`,
  }),
  'tool rule saved': ({ version: one, data }) => ({
    what: 'Rule for tools',
    detail: `${data.class}, ${version(one)}`,
  }),
  'checklist saved': ({ version: one, data }) => ({
    what: 'Checklist',
    detail: `${data.name}, ${version(one)}`,
  }),
  'register created': ({ site }) => ({ what: 'Register made', detail: site.name }),
  'unit saved': ({ version: one, data }) => ({ what: 'Unit', detail: `${data.name}, ${version(one)}` }),
  'joint saved': ({ id, version: one, data }) => ({
    what: 'Joint',
    detail: `${data.tag}, ${version(one)}`,
    jointId: id,
  }),
  'tool saved': ({ version: one, data }) => ({ what: 'Tool', detail: `${data.number}, ${version(one)}` }),
  'kit saved': ({ version: one, data }) => ({ what: 'Kit', detail: `${data.name}, ${version(one)}` }),
  'campaign saved': ({ version: one, data }) => ({
    what: 'Campaign',
    detail: `${data.name}, ${version(one)}`,
  }),
  'job saved': ({ version: one, data, reason }) => ({
    what: 'Job',
    detail: `${data.number}, ${version(one)}${reason === '' ? '' : `. Reason: ${reason}`}`,
    jointId: data.jointId,
  }),
  'certificate added': ({ data }) => ({ what: 'Certificate', detail: data.number }),
  'import confirmed': ({ kind, fileName, added, changed }) => ({
    what: `Import of ${kind}`,
    detail: `${fileName}: ${added} added, ${changed} changed`,
  }),
  'record signed': ({ kind, meaning, personId, knownBy }, { person }) => ({
    what: `Signed: ${kind}`,
    detail: `${person(personId)} ${MEANING_SHORT[meaning]}${knownBy === 'name' ? ', by name only' : ''}`,
  }),
};

/** What each event did, in a few words. */
export async function auditWords(db: Db, events: readonly Logged[]): Promise<Map<string, Told>> {
  const people = new Map(
    (await db.selectFrom('person').select(['id', 'name']).execute()).map(({ id, name }) => [id, name]),
  );
  const plans = new Map(
    (await db.selectFrom('pass_plan').select(['id', 'name']).execute()).map(({ id, name }) => [id, name]),
  );
  const named: Named = {
    person: (id) => (id === null ? 'a name nobody signs in with' : (people.get(id) ?? 'not on the register')),
    plan: (id) => plans.get(id) ?? 'not on the register',
  };
  return new Map(
    events.flatMap(({ id, kind, body }) => {
      const tell = TOLD[kind] as ((data: unknown, named: Named) => Told) | undefined;
      return tell === undefined ? [] : [[id, tell(body.data, named)]];
    }),
  );
}
