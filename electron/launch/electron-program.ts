import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export type ElectronProgram = { readonly program: string } | { readonly reason: string };

/**
 * Electron's program, fetched by its package's own script when it is not there yet. The script runs in a child: on a
 * network that is closed it can hang, and loading the package itself would fetch and throw.
 */
export async function electronProgram(projectFolder: string, limitMs: number): Promise<ElectronProgram> {
  const folder = join(projectFolder, 'node_modules', 'electron');
  const there = installedProgram(folder);
  if (there !== null) return { program: there };
  const script = join(folder, 'install.js');
  if (!existsSync(script)) return { reason: 'its package is not installed' };
  const failure = await runScript(script, limitMs);
  const fetched = installedProgram(folder);
  if (fetched !== null) return { program: fetched };
  return { reason: failure ?? 'its program is not there although it was fetched' };
}

function installedProgram(folder: string): string | null {
  const pointer = join(folder, 'path.txt');
  if (!existsSync(pointer)) return null;
  const program = join(folder, 'dist', readFileSync(pointer, 'utf8'));
  return existsSync(program) ? program : null;
}

/** Null when the script ended well, else why not. */
function runScript(script: string, limitMs: number): Promise<string | null> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [script], { stdio: ['ignore', 'ignore', 'pipe'] });
    let message = '';
    const timer = setTimeout(() => {
      child.kill('SIGKILL');
      resolve(`its program could not be fetched within ${limitMs / 1000} s`);
    }, limitMs);
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      message += text;
    });
    child.on('close', (status) => {
      clearTimeout(timer);
      const line = message.split('\n').find((text) => text.trim() !== '');
      resolve(status === 0 ? null : `its program could not be fetched (${line?.trim() ?? `exit ${status}`})`);
    });
  });
}
