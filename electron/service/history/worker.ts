import { parentPort, workerData } from 'node:worker_threads';
import type Database from 'better-sqlite3';
import { openReading } from '../register/open.ts';
import { checkAttachments } from './check-attachments.ts';
import { checkLink } from './check-links.ts';
import { checkRange } from './check-range.ts';
import { checkRefusals } from './check-refusals.ts';
import { checkSignatures } from './check-signatures.ts';
import { findHeads } from './find-heads.ts';
import { makePlan } from './plan.ts';
import type { Place, Reply, Task, TaskResults } from './tasks.ts';
import { writeExport } from './write-export.ts';

// A thread of its own with a connection that can only read: what takes seconds must not hold up the window.
const place = workerData as Place;
const port = parentPort;
if (port === null) throw new Error('this file is started as a thread');
const say = (reply: Reply) => port.postMessage(reply);

port.on('message', (task: Task) => {
  run(task).then(
    (result) => say({ result }),
    (error: unknown) =>
      say({ problem: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
  );
});

async function run(task: Task): Promise<TaskResults[keyof TaskResults]> {
  const database = openReading(place.file);
  try {
    return await carryOut(database, task);
  } finally {
    database.close();
  }
}

async function carryOut(database: Database.Database, task: Task): Promise<TaskResults[keyof TaskResults]> {
  const onTick = (tick: number) => say({ tick });
  switch (task.kind) {
    case 'plan':
      return makePlan(database);
    case 'range':
      return checkRange(database, task);
    case 'links':
      return checkLink(database, task.link);
    case 'schema':
      return (await import('./check-schema.ts')).checkSchema(database);
    case 'file':
      return (await import('./check-schema.ts')).checkFile(database);
    case 'attachments':
      return checkAttachments(database, place.attachments, onTick);
    case 'signatures':
      return checkSignatures(database);
    case 'refusals':
      return checkRefusals(database);
    case 'tables':
      // The projections and all they rest on are loaded only where they are worked out.
      return (await import('./check-tables.ts')).checkTables(database, onTick);
    case 'heads':
      return findHeads(database, place, task, onTick);
    case 'export':
      return writeExport(database, place, task, onTick);
  }
}
