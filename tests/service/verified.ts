import { expect, vi } from 'vitest';
import type { HistoryJob, Verification } from '../../core/contract/history.ts';
import type { RequestInput } from '../../core/contract/requests.ts';
import { ask, type TestService } from './ask.ts';

/** Waits until work in the background has ended, however it did. */
export async function ended(
  started: Pick<TestService, 'service'>,
  { id }: { readonly id: string },
): Promise<HistoryJob> {
  return vi.waitFor(
    async () => {
      const job = await ask(started, 'history.progress', { id });
      if (job === null || job.state === 'running') throw new Error('still running');
      return job;
    },
    { timeout: 50_000, interval: 20 },
  );
}

/** What a verification of the whole history says. */
export async function verified(
  started: Pick<TestService, 'service'>,
  input: RequestInput<'history.verify'> = {},
): Promise<Verification> {
  const { verification, problem, state } = await ended(started, await ask(started, 'history.verify', input));
  if (verification === null) expect.fail(`the verification ${state}: ${problem}`);
  return verification;
}
