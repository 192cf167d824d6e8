import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Place, Reply, Task, TaskOf, TaskResults } from './tasks.ts';

/** A few threads that share out pieces of work. */
export interface Crew {
  run<K extends keyof TaskResults>(
    task: TaskOf<K>,
    onTick?: (amount: number) => void,
  ): Promise<TaskResults[K]>;
  /** Ends the threads wherever they are; what they had not answered is never answered. */
  stop(): Promise<void>;
}

interface Waiting {
  readonly task: Task;
  readonly onTick: (amount: number) => void;
  readonly resolve: (result: TaskResults[keyof TaskResults]) => void;
  readonly reject: (error: Error) => void;
}

/** Beside this module: its source while developing, the built program otherwise. */
const PROGRAM = join(
  import.meta.dirname,
  import.meta.url.endsWith('.ts') ? 'worker.ts' : 'history-worker.js',
);

export function startCrew(place: Place, size: number): Crew {
  const waiting: Waiting[] = [];
  const idle: Worker[] = [];
  const doing = new Map<Worker, Waiting>();
  const threads = Array.from({ length: size }, () => {
    const worker = new Worker(PROGRAM, { workerData: place });
    worker.on('message', (reply: Reply) => onReply(worker, reply));
    worker.on('error', (error) => onBroken(worker, error));
    idle.push(worker);
    return worker;
  });

  function next(): void {
    while (idle.length > 0 && waiting.length > 0) {
      const worker = idle.pop();
      const piece = waiting.shift();
      if (worker === undefined || piece === undefined) return;
      doing.set(worker, piece);
      worker.postMessage(piece.task);
    }
  }

  function onReply(worker: Worker, reply: Reply): void {
    const piece = doing.get(worker);
    if (piece === undefined) return;
    if ('tick' in reply) {
      piece.onTick(reply.tick);
      return;
    }
    doing.delete(worker);
    idle.push(worker);
    if ('result' in reply) piece.resolve(reply.result);
    else piece.reject(new Error(reply.problem));
    next();
  }

  /** A thread that broke takes its piece along; the work as a whole has then failed. */
  function onBroken(worker: Worker, error: Error): void {
    const piece = doing.get(worker);
    doing.delete(worker);
    piece?.reject(error);
  }

  return {
    run: <K extends keyof TaskResults>(task: TaskOf<K>, onTick: (amount: number) => void = () => undefined) =>
      new Promise<TaskResults[K]>((resolve, reject) => {
        const settle = resolve as (result: TaskResults[keyof TaskResults]) => void;
        waiting.push({ task, onTick, resolve: settle, reject });
        next();
      }),
    async stop() {
      waiting.length = 0;
      doing.clear();
      await Promise.all(threads.map((worker) => worker.terminate()));
    },
  };
}
