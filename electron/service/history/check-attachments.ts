import type Database from 'better-sqlite3';
import { readAttachment } from '../register/attachment-files.ts';
import { collector } from './findings.ts';
import type { Found } from './tasks.ts';

interface StoredText {
  readonly id: string;
  readonly origin_id: string;
  readonly sequence: number;
  readonly body: string;
}

interface NamedFile {
  readonly hash: string;
  readonly name: string;
}

export interface FileOfRecord extends NamedFile {
  readonly eventId: string;
  readonly originId: string;
  readonly sequence: number;
}

/** Files that the texts name, each once, with the first record that names it. */
export function* filesOfRecords(database: Database.Database): Generator<FileOfRecord> {
  const rows = database
    .prepare<[], StoredText>(
      `select id, origin_id, sequence, body from event where kind = 'attachment added' order by rowid`,
    )
    .iterate();
  const named = new Set<string>();
  for (const { id, origin_id: originId, sequence, body } of rows) {
    const file = namedFile(body);
    if (file === null || named.has(file.hash)) continue;
    named.add(file.hash);
    yield { ...file, eventId: id, originId, sequence };
  }
}

/** What a text names; null for a text that names no file, which the look through the texts tells of. */
function namedFile(body: string): NamedFile | null {
  try {
    const { data } = JSON.parse(body) as { data?: { hash?: unknown; name?: unknown } };
    const { hash, name } = data ?? {};
    return typeof hash === 'string' && /^[0-9a-f]{64}$/.test(hash) ? { hash, name: String(name) } : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Reads every file that a record names and holds it against its hash. */
export function checkAttachments(
  database: Database.Database,
  folder: string,
  onTick: (files: number) => void,
): Found {
  const found = collector();
  let looked = 0;
  for (const { hash, name, ...about } of filesOfRecords(database)) {
    const { state } = readAttachment(folder, hash);
    if (state === 'changed') {
      found.add('attachment changed', `The file “${name}” no longer has its recorded hash`, about);
    }
    if (state === 'missing') found.add('attachment missing', `The file “${name}” is not there`, about);
    looked += 1;
    onTick(1);
  }
  return found.found(looked);
}
