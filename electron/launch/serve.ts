import { createService } from '../service/service.ts';
import { startLoopback } from '../transport/loopback.ts';
import { fileLog } from './log.ts';
import { announceService, withdrawService } from './running.ts';

export interface ServeOptions {
  readonly folder: string;
  readonly pageFolder: string;
  readonly clock?: () => Date;
}

export interface Serving {
  readonly origin: string;
  readonly token: string;
  readonly address: string;
  /** Null, or why the register could not be opened; the window shows it too. */
  readonly problem: { readonly code: string; readonly message: string } | null;
  close(): Promise<void>;
}

/** The service of one data folder behind the loopback transport, announced to later starts. */
export async function serve(options: ServeOptions): Promise<Serving> {
  const { folder, pageFolder, clock = () => new Date() } = options;
  const log = fileLog(folder, clock);
  const service = createService({ folder, clock, log });
  const loopback = await startLoopback({ service, pageFolder, log: (line) => log('error', line) });
  const state = await service.handle('register.state', {});
  const problem = state.ok ? (state.value as { problem: Serving['problem'] }).problem : state.error;
  // Whoever holds the register is announced; a start that lost the race must not stand in its place.
  const announced = problem?.code !== 'register_locked';
  if (announced) announceService(folder, loopback);

  let closing: Promise<void> | null = null;
  async function close(): Promise<void> {
    if (announced) withdrawService(folder);
    await loopback.close();
    await service.close();
  }
  return {
    origin: loopback.origin,
    token: loopback.token,
    address: loopback.address,
    problem,
    close: () => {
      closing ??= close();
      return closing;
    },
  };
}
