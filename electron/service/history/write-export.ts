import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';
import type { HistoryExport } from '../../../core/contract/history.ts';
import { readAttachment } from '../register/attachment-files.ts';
import { syncFolderOf } from '../register/files.ts';
import { filesOfRecords } from './check-attachments.ts';
import { hasRefusals, headOf, originEnds } from './plan.ts';
import type { ExportTask, Place } from './tasks.ts';

/** Version of the form; docs/history-export.md describes it, and the verifier outside the program reads it. */
const FORM = { format: 'studbook-history', version: 1 } as const;

export const exportFolder = (folder: string): string => join(folder, 'exports');

const TICK = 1000;
const BUFFERED = 1_000_000;

interface StoredEvent {
  readonly body: string;
  readonly previousHash: string;
  readonly hash: string;
}

/** Writes the whole history as it stands at one moment, and gives the file its name when all of it is on the disk. */
export function writeExport(
  database: Database.Database,
  place: Place,
  task: ExportTask,
  onTick: (records: number) => void,
): HistoryExport {
  const folder = exportFolder(place.folder);
  const file = join(folder, task.name);
  const unfinished = `${file}.unfinished`;
  mkdirSync(folder, { recursive: true });
  rmSync(unfinished, { force: true });
  // One moment for all of it, whatever is recorded meanwhile.
  database.exec('begin');
  const out = lineWriter(unfinished);
  try {
    const origins = originEnds(database);
    const events = origins.reduce((sum, origin) => sum + origin.events, 0);
    const head = events === 0 ? null : headOf(origins);
    out.line({
      ...FORM,
      exportedAt: task.exportedAt,
      program: task.appVersion,
      site: database
        .prepare('select id, name, time_zone as timeZone, demo from site order by id limit 1')
        .get(),
      origins: origins.map(({ id, name }) => ({ id, name })),
      events,
      head,
    });
    writeEvents(database, out, onTick);
    const attachments = writeAttachments(database, place, out);
    const refusals = writeRefusals(database, out);
    const heads = origins.map(({ id, sequence, hash }) => ({ originId: id, sequence, hash }));
    out.line({ type: 'end', events, attachments, refusals, head, heads });
    const bytes = out.close();
    renameSync(unfinished, file);
    syncFolderOf(file);
    return { name: task.name, folder, bytes, events, attachments, head };
  } finally {
    out.abandon();
    database.exec('commit');
  }
}

function writeEvents(database: Database.Database, out: LineWriter, onTick: (records: number) => void): void {
  const rows = database
    .prepare<[], StoredEvent>('select previous_hash as previousHash, hash, body from event order by rowid')
    .iterate();
  let count = 0;
  for (const { previousHash, hash, body } of rows) {
    out.line({ type: 'event', previousHash, hash, body });
    count += 1;
    if (count % TICK === 0) onTick(TICK);
  }
}

function writeRefusals(database: Database.Database, out: LineWriter): number {
  if (!hasRefusals(database)) return 0;
  const rows = database
    .prepare<[], StoredEvent>(
      'select previous_hash as previousHash, hash, body from refusal order by origin_id, sequence',
    )
    .iterate();
  let count = 0;
  for (const { previousHash, hash, body } of rows) {
    out.line({ type: 'refusal', previousHash, hash, body });
    count += 1;
  }
  return count;
}

function writeAttachments(database: Database.Database, { attachments }: Place, out: LineWriter): number {
  let count = 0;
  for (const { hash, name } of filesOfRecords(database)) {
    const { state, content } = readAttachment(attachments, hash);
    out.line({ type: 'attachment', hash, name, bytes: content?.length ?? null, state });
    count += 1;
  }
  return count;
}

interface LineWriter {
  line(value: unknown): void;
  /** Writes what is left, makes sure that it is on the disk, and says how many bytes there are. */
  close(): number;
  /** After a fault: nothing more is written. */
  abandon(): void;
}

function lineWriter(file: string): LineWriter {
  const handle = openSync(file, 'wx');
  let waiting: string[] = [];
  let size = 0;
  let bytes = 0;
  let open = true;
  const flush = () => {
    const piece = Buffer.from(waiting.join(''), 'utf8');
    for (let written = 0; written < piece.length; ) written += writeSync(handle, piece, written);
    bytes += piece.length;
    waiting = [];
    size = 0;
  };
  return {
    line(value) {
      const text = `${JSON.stringify(value)}\n`;
      waiting.push(text);
      size += text.length;
      if (size >= BUFFERED) flush();
    },
    close() {
      flush();
      fsyncSync(handle);
      closeSync(handle);
      open = false;
      return bytes;
    },
    abandon() {
      if (!open) return;
      open = false;
      closeSync(handle);
      rmSync(file, { force: true });
    },
  };
}
