import { closeSync, fsyncSync, openSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';

export const registerFile = (folder: string): string => join(folder, 'register.sqlite');

/** Makes sure that a file's bytes have reached the disk. */
export function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Makes a rename in a folder durable; Windows does so by itself and can't open folders. */
export function syncFolderOf(file: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(dirname(file), 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Removes a database that was never finished, with its side files. */
export function removeUnfinished(file: string): void {
  for (const suffix of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${suffix}`, { force: true });
}
