import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import type { AttachmentState } from '../../../core/contract/attachment.ts';
import { syncFolderOf } from './files.ts';

/** Where a register's attachments lie: beside its file, in a folder named after it. */
export const attachmentFolder = (registerFile: string): string =>
  `${registerFile.replace(/\.sqlite$/, '')}.attachments`;

/** Content is stored once under its hash; two letters a folder keep folders short. */
const fileOf = (folder: string, hash: string): string => join(folder, hash.slice(0, 2), hash);

export function hashOf(content: Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** Writes content under its hash, whole or not at all; content that is there already is left as it is. */
export function storeAttachment(folder: string, hash: string, content: Uint8Array): void {
  const file = fileOf(folder, hash);
  if (readAttachment(folder, hash).state === 'intact') return;
  mkdirSync(join(folder, hash.slice(0, 2)), { recursive: true });
  const unfinished = `${file}.unfinished`;
  rmSync(unfinished, { force: true });
  const handle = openSync(unfinished, 'wx');
  try {
    writeWhole(handle, content);
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(unfinished, file);
  syncFolderOf(file);
  syncFolderOf(join(folder, hash.slice(0, 2)));
}

/** One call may write less than it was given. */
function writeWhole(handle: number, content: Uint8Array): void {
  let written = 0;
  while (written < content.length) written += writeSync(handle, content, written);
}

export type StoredContent =
  | { readonly state: 'intact'; readonly content: Buffer }
  | { readonly state: 'changed'; readonly content: Buffer }
  | { readonly state: 'missing'; readonly content: null };

/** Reads content back and holds it against its hash. */
export function readAttachment(folder: string, hash: string): StoredContent {
  const file = fileOf(folder, hash);
  if (!existsSync(file)) return { state: 'missing', content: null };
  const content = readFileSync(file);
  return { state: hashOf(content) === hash ? 'intact' : 'changed', content };
}

/** How a kept file stands; without reading it, only what its place and size tell is known. */
export function stateOfAttachment(
  folder: string,
  { hash, size }: { readonly hash: string; readonly size: number },
  read: boolean,
): AttachmentState {
  const seen = statSync(fileOf(folder, hash), { throwIfNoEntry: false });
  if (seen === undefined) return 'missing';
  if (seen.size !== size) return 'changed';
  return read ? readAttachment(folder, hash).state : 'not checked';
}
