import { hostname } from 'node:os';
import type { Kysely, Transaction } from 'kysely';
import type { RegisterState } from '../../../core/contract/register.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import { CORE_VERSION } from '../../../core/version.ts';
import type { SecretCost } from '../access/secret-cost.ts';
import { beginSignIn } from '../access/sign-in.ts';
import { append } from '../chain/append.ts';
import { registerHead } from '../chain/head.ts';
import type { Log, Site, WriteContext } from '../context.ts';
import { invalidField, type RequestFailure } from '../failure.ts';
import { type Begin, replayDemo } from '../operations/demo.ts';
import { once } from '../receipt.ts';
import { attachmentFolder } from '../register/attachment-files.ts';
import { createRegister } from '../register/create.ts';
import { registerFile } from '../register/files.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { dateAtSite, isTimeZone } from '../time.ts';
import { APP_VERSION } from '../version.ts';

interface StateInput {
  readonly folder: string;
  readonly clock: () => Date;
  readonly failure: RequestFailure | null;
  readonly open: {
    readonly db: Kysely<RegisterSchema>;
    readonly site: Site;
    readonly signIn: boolean;
  } | null;
}

export async function stateOf({ folder, clock, failure, open }: StateInput): Promise<RegisterState> {
  const problem = failure === null ? null : { code: failure.code, message: failure.message };
  const now = clock().toISOString();
  const versions = { appVersion: APP_VERSION, coreVersion: CORE_VERSION };
  if (open === null) {
    return {
      state: failure === null ? 'none' : 'failed',
      problem,
      folder,
      siteName: null,
      timeZone: null,
      demo: false,
      signIn: 'none',
      joints: 0,
      tools: 0,
      events: 0,
      head: null,
      ...versions,
      today: dateAtSite(now, 'UTC'),
    };
  }
  const { db, site, signIn } = open;
  return {
    state: failure === null ? 'open' : 'read only',
    problem,
    folder,
    siteName: site.name,
    timeZone: site.timeZone,
    demo: site.demo,
    signIn: signIn ? 'required' : 'none',
    joints: await countOf(db, 'joint'),
    tools: await countOf(db, 'tool'),
    events: await countOf(db, 'event'),
    head: await registerHead(db),
    ...versions,
    today: dateAtSite(now, site.timeZone),
  };
}

async function countOf(db: Kysely<RegisterSchema>, table: 'joint' | 'tool' | 'event'): Promise<number> {
  const { count } = await db
    .selectFrom(table)
    .select(({ fn }) => fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow();
  return count;
}

interface CreateOptions {
  readonly folder: string;
  readonly clock: () => Date;
  readonly newId: () => string;
  readonly log: Log;
  readonly secretCost: SecretCost;
}

/** Creates the register with its site, and with the invented plant where that was asked for. */
export async function createFilled(
  options: CreateOptions,
  input: ParsedInput<'register.create'>,
): Promise<void> {
  const { folder, clock, newId, log, secretCost } = options;
  const { data } = input;
  if (data.content === 'empty' && !isTimeZone(data.timeZone)) {
    throw invalidField(
      'data.timeZone',
      data.timeZone,
      'a time zone of the IANA list, such as Europe/Berlin or UTC',
    );
  }
  await createRegister(folder, async (db) => {
    const originId = newId();
    const begin: Begin = async (described, at) => {
      const site = { id: newId(), ...described };
      const attachments = attachmentFolder(registerFile(folder));
      const surroundings = { db, site, log, attachments, originId, newId, secretCost };
      const context: WriteContext = { ...surroundings, clock: at, actor: null };
      await addOrigin(db, originId, at());
      await append(context, [{ kind: 'register created', id: newId(), data: { site } }]);
      return context;
    };
    await once({ db, clock }, 'register.create', input, async () => {
      const context =
        data.content === 'demo'
          ? await replayDemo(begin, clock)
          : await begin({ name: data.siteName, timeZone: data.timeZone, demo: false }, clock);
      if (data.administrator !== null) {
        await beginSignIn({ ...context, clock }, { personId: null, ...data.administrator });
      }
      return { created: true };
    });
  });
}

async function addOrigin(db: Transaction<RegisterSchema>, id: string, now: Date): Promise<void> {
  await db
    .insertInto('origin')
    .values({ id, name: hostname().slice(0, 120) || 'this PC', created_at: now.toISOString() })
    .execute();
}
