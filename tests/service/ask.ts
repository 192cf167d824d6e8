import { randomUUID } from 'node:crypto';
import { expect } from 'vitest';
import type { RequestError } from '../../core/contract/errors.ts';
import type { RequestName } from '../../core/contract/names.ts';
import { type RequestInput, type RequestOutput, requests } from '../../core/contract/requests.ts';
import type { SecretCost } from '../../electron/service/access/secret-cost.ts';
import { createService, type Service } from '../../electron/service/service.ts';

interface LogLine {
  readonly level: 'info' | 'error';
  readonly message: string;
  readonly error: unknown;
}

export interface TestService {
  readonly service: Service;
  readonly log: LogLine[];
  /** Moves the clock. */
  setNow(iso: string): void;
}

const NOW = '2026-03-16T12:00:00Z';

/** Enough to be compared rightly, cheap enough for tests that sign in often. */
export const CHEAP_SECRETS: SecretCost = { cost: 1024, blockSize: 8, parallelization: 1 };

export function startService(folder: string, now = NOW, secretCost = CHEAP_SECRETS): TestService {
  let moment = new Date(now);
  const log: LogLine[] = [];
  const service = createService({
    folder,
    clock: () => moment,
    secretCost,
    log: (level, message, error) => log.push({ level, message, error }),
  });
  return {
    service,
    log,
    setNow: (iso) => {
      moment = new Date(iso);
    },
  };
}

/** Sends a request that must succeed; the answer must have exactly the contract's shape. */
export async function ask<N extends RequestName>(
  { service }: Pick<TestService, 'service'>,
  name: N,
  input: RequestInput<N>,
): Promise<RequestOutput<N>> {
  const answer = await service.handle(name, input);
  if (!answer.ok) expect.fail(`${name}: ${JSON.stringify(answer.error)}`);
  return requests[name].output.parse(answer.value) as RequestOutput<N>;
}

/** Sends a request that must fail, with whatever input. */
export async function askBadly(
  { service }: Pick<TestService, 'service'>,
  name: string,
  input: unknown,
): Promise<RequestError> {
  const answer = await service.handle(name, input);
  if (answer.ok) expect.fail(`${name} was expected to fail: ${JSON.stringify(answer.value)}`);
  return answer.error;
}

export const key = () => randomUUID();

export async function createEmpty(started: TestService): Promise<void> {
  await ask(started, 'register.create', {
    key: key(),
    data: { content: 'empty', siteName: 'Test site', timeZone: 'Europe/Berlin' },
  });
}
