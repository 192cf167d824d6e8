import { spawn } from 'node:child_process';
import { join } from 'node:path';

export interface ProgramOutput {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a script of an installed package under this Node, in `root`. */
export function runPackage(root: string, script: string, words: readonly string[]): Promise<ProgramOutput> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(root, 'node_modules', script), ...words], {
      cwd: root,
      env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let stdout = '';
    let stderr = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      stdout += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, stdout, stderr }));
  });
}

/** The JSON object in a program's output, or an error that shows what stood there instead. */
export function jsonOutput<T>(output: ProgramOutput): T {
  const start = output.stdout.indexOf('{');
  const end = output.stdout.lastIndexOf('}');
  if (start < 0 || end < start) {
    throw new Error(`No result (exit ${output.status}): ${(output.stderr || output.stdout).slice(0, 2000)}`);
  }
  return JSON.parse(output.stdout.slice(start, end + 1)) as T;
}
