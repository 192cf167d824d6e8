// Runs on whatever Node the machine starts with, before anything is installed: Node's own modules only.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

export const projectFolder = join(import.meta.dirname, '..', '..');

/** The SQLite binding crashes below this one. */
const OLDEST_NODE = [22, 14];

/**
 * Installs the packages of the lock file when those in node_modules are not they.
 * @param {(line: string) => void} say
 * @returns {string} the Node program that runs everything from here on
 */
export function ensureInstalled(say) {
  const stamp = join(projectFolder, 'node_modules', '.studbook-lock');
  const wanted = createHash('sha256')
    .update(readFileSync(join(projectFolder, 'package-lock.json')))
    .update(`${process.platform} ${process.arch}`)
    .digest('hex');
  if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== wanted) {
    refuseReplacingOneself();
    say('Installing packages (first start, or the lock file has changed).');
    // Without scripts: one of them would compile a binding whose finished form is already in its package.
    npm(['ci', '--ignore-scripts', '--loglevel=error']);
    // The one script that is needed puts the pinned Node in place. Where it has no build, the machine's own may do.
    const rebuilt = npm(['rebuild', 'node', '--ignore-scripts=false', '--loglevel=error'], { mayFail: true });
    if (!rebuilt) say('The pinned Node has no build for this machine; its own Node is used.');
    writeFileSync(stamp, wanted);
  }
  return nodeProgram();
}

/** @returns {string} the pinned Node where it is installed, else the running one when it is new enough */
function nodeProgram() {
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  const pinned = join(projectFolder, 'node_modules', 'node', 'bin', name);
  if (existsSync(pinned)) return pinned;
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return process.execPath;
  throw new Error(
    `This is Node ${process.versions.node}, and the pinned Node could not be installed on ` +
      `${process.platform} ${process.arch}. Install Node ${OLDEST_NODE.join('.')} or newer and start again.`,
  );
}

// Windows does not let go of a running program's file, and the pinned Node lies in the folder to be replaced.
function refuseReplacingOneself() {
  if (process.platform !== 'win32' || !process.execPath.startsWith(join(projectFolder, 'node_modules')))
    return;
  throw new Error('The lock file has changed. Run "npm ci --ignore-scripts" once, then start again.');
}

/**
 * Runs the npm that started this program, so that its version and settings hold here too.
 * @param {string[]} words
 * @param {{ mayFail?: boolean }} [options]
 * @returns {boolean} whether it succeeded
 */
function npm(words, options = {}) {
  const cli = process.env['npm_execpath'];
  // The Node npm started with can be the pinned one, which a fresh install has just taken away.
  const node = process.env['npm_node_execpath'] ?? process.execPath;
  const { status, error } =
    cli?.endsWith('.js') && existsSync(node)
      ? spawnSync(node, [cli, ...words], {
          cwd: projectFolder,
          stdio: 'inherit',
        })
      : spawnSync(process.platform === 'win32' ? 'npm.cmd' : 'npm', words, {
          cwd: projectFolder,
          stdio: 'inherit',
          shell: process.platform === 'win32',
        });
  if (error === undefined && status === 0) return true;
  if (options.mayFail === true) return false;
  throw new Error(`npm ${words.join(' ')} failed${error === undefined ? '' : `: ${error.message}`}.`);
}
