import { closeSync, existsSync, fstatSync, openSync, readSync } from 'node:fs';
import { join } from 'node:path';
import { notFound } from '../failure.ts';
import { exportFolder } from '../history/write-export.ts';
import type { Read } from './handler.ts';

export const verifyHistory: Read<'history.verify'> = async ({ history }, input) => history.verify(input);

export const exportHistory: Read<'history.export'> = async ({ history }) => history.exportAll();

export const historyProgress: Read<'history.progress'> = async ({ history }, { id }) => history.get(id);

export const cancelHistoryJob: Read<'history.cancel'> = async ({ history }, { id }) => history.cancel(id);

const PART = 3_000_000;

export const readExportPart: Read<'history.exportPart'> = async ({ folder }, { name, from }) => {
  const file = join(exportFolder(folder), name);
  if (!existsSync(file)) throw notFound('export', 'name', name);
  const handle = openSync(file, 'r');
  try {
    const bytes = fstatSync(handle).size;
    const part = Buffer.alloc(Math.max(0, Math.min(PART, bytes - from)));
    const read = readSync(handle, part, 0, part.length, from);
    const end = from + read;
    return {
      content: part.toString('base64', 0, read),
      next: read > 0 && end < bytes ? end : null,
      bytes,
    };
  } finally {
    closeSync(handle);
  }
};
