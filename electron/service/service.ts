import { v7 } from 'uuid';
import type { Answer } from '../../core/contract/errors.ts';
import type { RequestHandler } from '../../core/contract/message.ts';
import { REQUEST_KINDS, type RequestName } from '../../core/contract/names.ts';
import { type ParsedInput, requests } from '../../core/contract/requests.ts';
import type { Log, ReadContext, Site } from './context.ts';
import { RequestFailure } from './failure.ts';
import { READS, WRITES } from './handlers.ts';
import { parseInput } from './parse.ts';
import { once } from './receipt.ts';
import { attachmentFolder } from './register/attachment-files.ts';
import { registerFailure } from './register/errors.ts';
import { registerFile } from './register/files.ts';
import { checkLocation } from './register/location.ts';
import { type RegisterLock, takeLock } from './register/lock.ts';
import { type OpenRegister, openRegister } from './register/open.ts';
import { readOrigin, readSite } from './repositories/site.ts';
import type { Read, ReadName, Write, WriteName } from './requests/handler.ts';
import { createFilled, stateOf } from './requests/register.ts';

export interface ServiceOptions {
  /** Data folder; the register and its lock, backups and attachments lie in it. */
  readonly folder: string;
  readonly clock: () => Date;
  readonly randomUUID?: () => string;
  readonly log: Log;
}

export interface Service extends RequestHandler {
  close(): Promise<void>;
}

type Standing =
  | { readonly is: 'none' }
  | { readonly is: 'open'; readonly register: OpenRegister; readonly site: Site; readonly originId: string }
  | { readonly is: 'failed'; readonly failure: RequestFailure }
  | { readonly is: 'closed' };

/**
 * Owns the register in a folder: the only way in is a request by name. Reads run at once on their own connection,
 * writes one after the other. Every outcome is an answer; what nobody foresaw is logged under the id the answer names.
 */
export function createService(options: ServiceOptions): Service {
  const { folder, clock, log } = options;
  const newId = options.randomUUID ?? (() => v7());
  const attachments = attachmentFolder(registerFile(folder));
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
      standing = { is: 'open', register, site, originId };
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

  function opened(): Extract<Standing, { is: 'open' }> {
    if (standing.is === 'open') return standing;
    if (standing.is === 'failed') throw standing.failure;
    throw new RequestFailure(
      'not_open',
      standing.is === 'none' ? 'There is no register yet' : 'The register is closed',
    );
  }

  function readContext(): ReadContext {
    const { register, site } = opened();
    return { db: register.reader, site, clock, log, attachments };
  }

  async function state() {
    if (standing.is === 'closed') throw new RequestFailure('not_open', 'The register is closed');
    const failure = standing.is === 'failed' ? standing.failure : null;
    if (standing.is !== 'open') return stateOf({ folder, clock, failure, open: null });
    return stateOf({
      folder,
      clock,
      failure: standing.register.problem,
      open: { db: standing.register.reader, site: standing.site },
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
      await createFilled({ folder, clock, newId, log }, input);
      await open();
    }
    return state();
  }

  async function write<N extends WriteName>(name: N, input: ParsedInput<N>) {
    const { register, site, originId } = opened();
    const { writer, problem } = register;
    if (writer === null)
      throw problem ?? new RequestFailure('not_open', 'The register is open for reading only');
    const handler = WRITES[name] as Write<N>;
    return writer.transaction().execute((db) => {
      const work = () => handler({ db, site, clock, log, attachments, originId, newId, actor: null }, input);
      // A draft is written over and over; a retry of it needs no receipt.
      return 'key' in input ? once({ db, clock }, name, input, work) : work();
    });
  }

  /** Writes wait for each other; a failed one doesn't hold up the next. */
  function queued<T>(work: () => Promise<T>): Promise<T> {
    const turn = lastWrite.then(work);
    lastWrite = turn.catch(() => undefined);
    return turn;
  }

  async function run(name: RequestName, input: unknown): Promise<unknown> {
    const parsed = parseInput(requests[name].input, input);
    if (name === 'register.state') return state();
    if (name === 'register.create') return queued(() => create(parsed as ParsedInput<'register.create'>));
    if (REQUEST_KINDS[name] === 'write') {
      const write_ = name as WriteName;
      return queued(() => write(write_, parsed as ParsedInput<typeof write_>));
    }
    const read = READS[name as ReadName] as Read<ReadName>;
    return read(readContext(), parsed as ParsedInput<ReadName>);
  }

  return {
    async handle(name: string, input: unknown): Promise<Answer<unknown>> {
      try {
        await ready;
        if (!Object.hasOwn(REQUEST_KINDS, name)) {
          throw new RequestFailure('unknown_request', `There is no request "${name.slice(0, 60)}"`);
        }
        return { ok: true, value: await run(name as RequestName, input) };
      } catch (error) {
        return { ok: false, error: failureOf(error).toError() };
      }
    },
    async close(): Promise<void> {
      await ready;
      await lastWrite;
      if (standing.is === 'open') standing.register.close();
      standing = { is: 'closed' };
      lock?.release();
      lock = null;
    },
  };
}
