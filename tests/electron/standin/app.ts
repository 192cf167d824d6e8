import { EventEmitter } from 'node:events';
import { join } from 'node:path';

/** What a test may set before the shell starts, and read afterwards. Nothing here decides anything. */
class App extends EventEmitter {
  /** Answer to the next request for the single-instance lock. */
  lockIsFree = true;
  readonly paths = new Map<string, string>();
  sandboxEnabled = false;
  quitCalls = 0;
  gone = false;

  enableSandbox(): void {
    this.sandboxEnabled = true;
  }

  setPath(name: string, path: string): void {
    this.paths.set(name, path);
  }

  getAppPath(): string {
    return join(import.meta.dirname, '..', '..', '..');
  }

  requestSingleInstanceLock(): boolean {
    return this.lockIsFree;
  }

  whenReady(): Promise<void> {
    return Promise.resolve();
  }

  quit(): void {
    this.quitCalls += 1;
    let prevented = false;
    this.emit('before-quit', {
      preventDefault: () => {
        prevented = true;
      },
    });
    if (prevented) return;
    this.gone = true;
    this.emit('quit');
  }

  reset(): void {
    this.removeAllListeners();
    this.paths.clear();
    this.lockIsFree = true;
    this.sandboxEnabled = false;
    this.quitCalls = 0;
    this.gone = false;
  }
}

export const app = new App();
