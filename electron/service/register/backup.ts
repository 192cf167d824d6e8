import { mkdirSync, renameSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { registerHead } from '../chain/head.ts';
import { RequestFailure } from '../failure.ts';
import { attachmentFolder, readAttachment, storeAttachment } from './attachment-files.ts';
import { queryBuilder } from './dialect.ts';
import { removeUnfinished, syncFile, syncFolderOf } from './files.ts';

export interface BackupMade {
  readonly file: string;
  readonly events: number;
  readonly head: string | null;
  /** Attachments that lie beside the copy, and the hashes of those that were missing or changed already. */
  readonly attachments: number;
  readonly damaged: readonly string[];
}

/**
 * Copies a live register through SQLite's online backup and proves the copy before it gets its name: whole, and with
 * the same head. A file copy of a live database could be torn. Attachments go with it.
 */
export async function makeVerifiedBackup(source: Database.Database, target: string): Promise<BackupMade> {
  const unfinished = `${target}.unfinished`;
  mkdirSync(dirname(target), { recursive: true });
  removeUnfinished(unfinished);
  await source.backup(unfinished);
  const expected = await summary(source);
  const copy = new Database(unfinished);
  try {
    // One self-contained file: without a write-ahead log beside it.
    copy.pragma('journal_mode = DELETE');
    const whole = copy.pragma('integrity_check', { simple: true });
    const made = await summary(copy);
    if (whole !== 'ok' || made.events !== expected.events || made.head !== expected.head) {
      throw new RequestFailure('register_damaged', `The backup differs from the register (${String(whole)})`);
    }
  } catch (error) {
    copy.close();
    removeUnfinished(unfinished);
    throw error;
  }
  const copied = copyAttachments(copy, source.name, target);
  copy.close();
  syncFile(unfinished);
  renameSync(unfinished, target);
  syncFolderOf(target);
  return { file: target, ...expected, ...copied };
}

/** Every attachment the copy names, held against its hash. What is damaged already is told, and keeps no backup from being made. */
function copyAttachments(copy: Database.Database, source: string, target: string) {
  const hashes = copy.prepare<[], { hash: string }>('select hash from attachment order by hash').all();
  const damaged: string[] = [];
  for (const { hash } of hashes) {
    const stored = readAttachment(attachmentFolder(source), hash);
    if (stored.state === 'intact') storeAttachment(attachmentFolder(target), hash, stored.content);
    else damaged.push(hash);
  }
  return { attachments: hashes.length - damaged.length, damaged };
}

async function summary(database: Database.Database): Promise<{ events: number; head: string | null }> {
  const db = queryBuilder(database);
  const { events } = await db
    .selectFrom('event')
    .select(({ fn }) => fn.countAll<number>().as('events'))
    .executeTakeFirstOrThrow();
  return { events, head: await registerHead(db) };
}
