import { v7 } from 'uuid';
import type { AccessState, SignedIn, SignedInPerson } from '../../core/contract/access.ts';
import type { Answer } from '../../core/contract/errors.ts';
import type { RequestHandler } from '../../core/contract/message.ts';
import { REQUEST_KINDS, type RequestName } from '../../core/contract/names.ts';
import { type ParsedInput, requests } from '../../core/contract/requests.ts';
import { checkAllowed, checkPresent, everybodyPresent, presentAt, signedInPerson } from './access/present.ts';
import { isKeptRefusal, keepRefusal } from './access/refusals.ts';
import { SECRET_COST } from './access/secret.ts';
import type { SecretCost } from './access/secret-cost.ts';
import { createSessions, IDLE_MINUTES } from './access/sessions.ts';
import { beginSignIn, changeSecret, signIn } from './access/sign-in.ts';
import { createForecastRuns } from './breakout/runs.ts';
import type { Actor, Log, Site, WriteContext } from './context.ts';
import { KeptFailure, RequestFailure } from './failure.ts';
import { READS, WRITES } from './handlers.ts';
import { createHistoryJobs } from './history/jobs.ts';
import { parseInput } from './parse.ts';
import { once } from './receipt.ts';
import { attachmentFolder } from './register/attachment-files.ts';
import { registerFailure } from './register/errors.ts';
import { registerFile } from './register/files.ts';
import { checkLocation } from './register/location.ts';
import { type RegisterLock, takeLock } from './register/lock.ts';
import { type OpenRegister, openRegister } from './register/open.ts';
import { readOrigin, readSite } from './repositories/site.ts';
import type { Read, ReadName, RequestContext, Write, WriteName } from './requests/handler.ts';
import { createFilled, stateOf } from './requests/register.ts';

export interface ServiceOptions {
  /** Data folder; the register and its lock, backups and attachments lie in it. */
  readonly folder: string;
  readonly clock: () => Date;
  readonly randomUUID?: () => string;
  readonly log: Log;
  readonly secretCost?: SecretCost;
}

export interface Service extends RequestHandler {
  close(): Promise<void>;
}

interface Opened {
  readonly is: 'open';
  readonly register: OpenRegister;
  readonly site: Site;
  readonly originId: string;
  /** Whether an administrator has begun sign-in; never undone. */
  signIn: boolean;
}

type Standing =
  | { readonly is: 'none' }
  | Opened
  | { readonly is: 'failed'; readonly failure: RequestFailure }
  | { readonly is: 'closed' };

/**
 * Owns the register in a folder: the only way in is a request by name. Reads run at once on their own connection,
 * writes one after the other. Every outcome is an answer; what nobody foresaw is logged under the id the answer names.
 */
export function createService(options: ServiceOptions): Service {
  const { folder, clock, log, secretCost = SECRET_COST } = options;
  const newId = options.randomUUID ?? (() => v7());
  const sessions = createSessions(clock);
  const attachments = attachmentFolder(registerFile(folder));
  const history = createHistoryJobs({
    file: registerFile(folder),
    folder,
    attachments,
    clock,
    newId,
    log,
  });
  const forecasts = createForecastRuns({ clock, newId, log });
  let lock: RegisterLock | null = null;
  let standing: Standing = { is: 'none' };
  let lastWrite: Promise<unknown> = Promise.resolve();

  function failureOf(error: unknown): RequestFailure {
    const known = registerFailure(error);
    if (known) return known;
    const id = newId();
    log('error', `internal error ${id}`, error);
    return new RequestFailure(
      'internal',
      `Something went wrong that the program did not expect. The log explains it under ${id}`,
      [{ field: 'id', value: id, allowed: 'look it up in the log' }],
    );
  }

  async function open(): Promise<void> {
    const register = await openRegister(folder, clock());
    if (register === null) {
      standing = { is: 'none' };
      return;
    }
    try {
      const site = await readSite(register.reader);
      const originId = await readOrigin(register.reader);
      const signIn = await hasBegun(register);
      standing = { is: 'open', register, site, originId, signIn };
    } catch (error) {
      register.close();
      throw error;
    }
  }

  async function start(): Promise<void> {
    try {
      checkLocation(folder);
      lock = takeLock(folder);
      await open();
    } catch (error) {
      standing = { is: 'failed', failure: failureOf(error) };
    }
  }

  const ready = start();

  function opened(): Opened {
    if (standing.is === 'open') return standing;
    if (standing.is === 'failed') throw standing.failure;
    throw new RequestFailure(
      'not_open',
      standing.is === 'none' ? 'There is no register yet' : 'The register is closed',
    );
  }

  function readContext(): RequestContext {
    const { register, site } = opened();
    return { db: register.reader, site, clock, log, attachments, folder, history, forecasts };
  }

  async function state() {
    if (standing.is === 'closed') throw new RequestFailure('not_open', 'The register is closed');
    const failure = standing.is === 'failed' ? standing.failure : null;
    if (standing.is !== 'open') return stateOf({ folder, clock, failure, open: null });
    return stateOf({
      folder,
      clock,
      failure: standing.register.problem,
      open: { db: standing.register.reader, site: standing.site, signIn: standing.signIn },
    });
  }

  async function create(input: ParsedInput<'register.create'>) {
    if (standing.is === 'failed') throw standing.failure;
    if (standing.is === 'open') {
      const { writer } = standing.register;
      if (writer === null)
        throw standing.register.problem ?? new RequestFailure('not_open', 'The register is read-only');
      await writer.transaction().execute((db) =>
        once({ db, clock }, 'register.create', input, async () => {
          throw new RequestFailure(
            'conflict',
            'There is a register in this folder already; it was left as it is',
          );
        }),
      );
    } else {
      await createFilled({ folder, clock, newId, log, secretCost }, input);
      await open();
    }
    return state();
  }

  /** One transaction. Of a refusal whose traces are kept, what it wrote stays. */
  async function inTransaction<T>(
    actor: Actor | null,
    work: (context: WriteContext) => Promise<T>,
  ): Promise<T> {
    const { register, site, originId } = opened();
    const { writer, problem } = register;
    if (writer === null)
      throw problem ?? new RequestFailure('not_open', 'The register is open for reading only');
    const outcome = await writer.transaction().execute(async (db) => {
      try {
        const context = { db, site, clock, log, attachments, originId, newId, actor, secretCost };
        return { value: await work(context) };
      } catch (error) {
        if (error instanceof KeptFailure) return { failure: error };
        throw error;
      }
    });
    if ('failure' in outcome) throw outcome.failure;
    return outcome.value;
  }

  function write<N extends WriteName>(name: N, input: ParsedInput<N>, actor: Actor | null) {
    const handler = WRITES[name] as Write<N>;
    return inTransaction(actor, (context) => {
      const work = () => handler(context, input);
      // A draft is written over and over; a retry of it needs no receipt.
      return 'key' in input ? once(context, name, input, work) : work();
    });
  }

  /** A session for whoever has just shown who they are; one that this window had before is over. */
  async function newSession(personId: string, before: string | null): Promise<SignedIn> {
    const { reader } = opened().register;
    const { version: secretVersion } = await reader
      .selectFrom('person_secret')
      .select('version')
      .where('person_id', '=', personId)
      .executeTakeFirstOrThrow();
    const person = await signedInPerson(reader, { personId, secretVersion });
    if (person === null) throw new Error(`${personId} has a secret and is nobody`);
    if (before !== null) sessions.end(before);
    return { token: sessions.begin({ personId, secretVersion }), person };
  }

  async function accessState(token: string | null): Promise<AccessState> {
    const open = standing.is === 'open' && standing.signIn ? standing : null;
    return {
      signIn: open === null ? 'none' : 'required',
      person: open === null ? null : await presentAt(open.register.reader, sessions, token),
      idleMinutes: IDLE_MINUTES,
    };
  }

  /** Writes wait for each other; a failed one doesn't hold up the next. */
  function queued<T>(work: () => Promise<T>): Promise<T> {
    const turn = lastWrite.then(work);
    lastWrite = turn.catch(() => undefined);
    return turn;
  }

  /** Who is there, from this window's session; null where the register works without sign-in. */
  async function whoIsThere(name: RequestName, token: string | null): Promise<SignedInPerson | null> {
    if (standing.is !== 'open' || !standing.signIn) return null;
    const person = await presentAt(standing.register.reader, sessions, token);
    checkPresent(name, person);
    // Looking whether somebody is there keeps nobody there.
    if (token !== null && name !== 'access.state' && name !== 'register.state') sessions.touch(token);
    return person;
  }

  /** The one place where rights are checked: before any handler, and for a write when its turn has come. */
  async function run(name: RequestName, input: unknown, token: string | null): Promise<unknown> {
    const person = await whoIsThere(name, token);
    const parsed = parseInput(requests[name].input, input);
    const actor = person === null ? null : { personId: person.personId, roles: person.roles };
    try {
      if (person !== null) checkAllowed(name, parsed, person);
      return await answered(name, parsed, token, actor);
    } catch (error) {
      if (error instanceof RequestFailure && isKeptRefusal(error))
        await noteRefusal(name, parsed, actor, error);
      throw error;
    }
  }

  /** A refusal is told although nothing else is written; when that fails, the answer is still the refusal. */
  async function noteRefusal(
    name: RequestName,
    input: unknown,
    actor: Actor | null,
    failure: RequestFailure,
  ) {
    if (standing.is !== 'open' || standing.register.writer === null) return;
    const note = () => inTransaction(actor, (context) => keepRefusal(context, name, input, failure));
    try {
      // A write has its turn already.
      await (REQUEST_KINDS[name] === 'write' ? note() : queued(note));
    } catch (error) {
      log('error', `a refusal of ${name} could not be kept`, error);
    }
  }

  async function answered(
    name: RequestName,
    parsed: unknown,
    token: string | null,
    actor: Actor | null,
  ): Promise<unknown> {
    switch (name) {
      case 'register.state':
        return state();
      case 'register.create':
        return create(parsed as ParsedInput<'register.create'>);
      case 'access.state':
        return accessState(token);
      case 'access.present': {
        const { register, site } = opened();
        const rows = await everybodyPresent(register.reader, sessions.all(), site.timeZone);
        return { rows, total: rows.length };
      }
      case 'access.stay':
        return {};
      case 'access.signOut':
        if (token !== null) sessions.end(token);
        return {};
      case 'access.begin': {
        const first = parsed as ParsedInput<'access.begin'>;
        const personId = await inTransaction(actor, (context) => beginSignIn(context, first));
        opened().signIn = true;
        return newSession(personId, token);
      }
      case 'access.signIn': {
        if (!opened().signIn) throw worksWithoutSignIn();
        const typed = parsed as ParsedInput<'access.signIn'>;
        return newSession(await inTransaction(null, (context) => signIn(context, typed)), token);
      }
      case 'access.changeSecret': {
        const change = parsed as ParsedInput<'access.changeSecret'>;
        return newSession(await inTransaction(actor, (context) => changeSecret(context, change)), token);
      }
      default:
        if (REQUEST_KINDS[name] === 'write') {
          const write_ = name as WriteName;
          return write(write_, parsed as ParsedInput<typeof write_>, actor);
        }
        return (READS[name as ReadName] as Read<ReadName>)(readContext(), parsed as ParsedInput<ReadName>);
    }
  }

  return {
    async handle(name: string, input: unknown, session: string | null = null): Promise<Answer<unknown>> {
      try {
        await ready;
        if (!Object.hasOwn(REQUEST_KINDS, name)) {
          throw new RequestFailure('unknown_request', `There is no request "${name.slice(0, 60)}"`);
        }
        const known = name as RequestName;
        const work = () => run(known, input, session);
        return { ok: true, value: await (REQUEST_KINDS[known] === 'write' ? queued(work) : work()) };
      } catch (error) {
        return { ok: false, error: failureOf(error).toError() };
      }
    },
    async close(): Promise<void> {
      await ready;
      await lastWrite;
      await history.close();
      await forecasts.close();
      if (standing.is === 'open') standing.register.close();
      standing = { is: 'closed' };
      lock?.release();
      lock = null;
    },
  };
}

async function hasBegun({ reader }: OpenRegister): Promise<boolean> {
  return (await reader.selectFrom('sign_in').select('event_id').executeTakeFirst()) !== undefined;
}

function worksWithoutSignIn(): RequestFailure {
  return new RequestFailure('refused', 'This register works without sign-in: there is nobody to sign in as');
}
