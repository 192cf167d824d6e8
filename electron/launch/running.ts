import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { TOKEN_HEADER } from '../transport/loopback.ts';

/** How to reach the service that owns this data folder's register. Readable by its owner alone. */
export interface RunningService {
  readonly origin: string;
  readonly token: string;
}

const fileOf = (folder: string) => join(folder, 'service.json');

export function announceService(folder: string, service: RunningService): void {
  const draft = `${fileOf(folder)}.${process.pid}`;
  writeFileSync(draft, JSON.stringify(service), { mode: 0o600 });
  renameSync(draft, fileOf(folder));
}

export function withdrawService(folder: string): void {
  rmSync(fileOf(folder), { force: true });
}

/** The announced service if it answers; null when there is none or the file was left by one that died. */
export async function runningService(folder: string): Promise<RunningService | null> {
  let service: RunningService;
  try {
    service = JSON.parse(readFileSync(fileOf(folder), 'utf8')) as RunningService;
  } catch (error) {
    if (error instanceof SyntaxError || (error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
  try {
    const response = await fetch(`${service.origin}/request/register.state`, {
      method: 'POST',
      headers: { origin: service.origin, 'content-type': 'application/json', [TOKEN_HEADER]: service.token },
      body: '{}',
      signal: AbortSignal.timeout(5000),
    });
    return response.ok ? service : null;
  } catch {
    // Nobody listens there any more, or it is another program.
    return null;
  }
}
