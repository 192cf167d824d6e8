import { EventEmitter } from 'node:events';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { MessagePortMain } from './ports.ts';

/** A utility process as a thread: the program it runs is the built one. */
export class UtilityProcess extends EventEmitter {
  readonly worker: Worker;
  readonly program: string;
  readonly words: readonly string[];
  readonly options: unknown;

  constructor(program: string, words: readonly string[], options: unknown) {
    super();
    this.program = program;
    this.words = words;
    this.options = options;
    this.worker = new Worker(join(import.meta.dirname, 'utility-host.mjs'), {
      argv: [...words],
      workerData: { program: pathToFileURL(program).href },
    });
    this.worker.on('exit', (code) => this.emit('exit', code));
  }

  postMessage(message: unknown, transfer: readonly MessagePortMain[] = []): void {
    const ports = transfer.map(({ port }) => port);
    this.worker.postMessage({ message, ports }, ports);
  }
}

export const forked: UtilityProcess[] = [];

export const utilityProcess = {
  fork(program: string, words: readonly string[], options: unknown): UtilityProcess {
    const started = new UtilityProcess(program, words, options);
    forked.push(started);
    return started;
  },
};
