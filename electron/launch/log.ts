import { appendFileSync, existsSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from '../service/context.ts';

const LIMIT_BYTES = 5 * 1024 * 1024;

/** A log in the data folder; the one before it is kept when it has grown too long. */
export function fileLog(folder: string, clock: () => Date = () => new Date()): Log {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'studbook.log');
  if (existsSync(file) && statSync(file).size > LIMIT_BYTES) renameSync(file, `${file}.1`);
  return (level, message, error) => {
    const cause =
      error instanceof Error ? (error.stack ?? error.message) : error === undefined ? '' : String(error);
    const lines = cause === '' ? message : `${message}\n${cause}`;
    appendFileSync(file, `${clock().toISOString()} ${level} ${lines}\n`, { mode: 0o600 });
  };
}
