import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { RequestFailure } from '../failure.ts';

/** File systems on another machine: their locks and flushes can't be relied on, so two PCs could write at once. */
const NETWORK_TYPES = new Set([
  'nfs',
  'nfs4',
  'cifs',
  'smb3',
  'smbfs',
  'ncpfs',
  'afs',
  'ceph',
  'glusterfs',
  'lustre',
  'davfs',
  'fuse.davfs2',
  'fuse.sshfs',
  'fuse.rclone',
  'fuse.glusterfs',
  'fuse.gvfsd-fuse',
]);

/** Folder names by which the usual synchronising clients are known. */
const SYNCED_FOLDER =
  /^(onedrive( - .+)?|dropbox( \(.+\))?|google drive|googledrive|my drive|icloud ?drive|com~apple~clouddocs|cloudstorage|nextcloud|owncloud|syncthing)$/i;

export interface Surroundings {
  readonly platform: NodeJS.Platform;
  /** Text of the kernel's mount table; null where there is none. */
  readonly mounts: string | null;
}

/** Why a folder can't hold a register; null when nothing speaks against it. */
export function locationProblem(folder: string, { platform, mounts }: Surroundings): string | null {
  if (platform === 'win32' && /^[\\/]{2}[^?.]/.test(folder)) {
    return `${folder} is on a network share, where two PCs could write at once and damage it`;
  }
  const synced = folder.split(/[\\/]/).find((part) => SYNCED_FOLDER.test(part));
  if (synced !== undefined) {
    return `${folder} lies in the synchronised folder "${synced}", which copies the file while it is being written`;
  }
  const type = mounts === null ? null : mountType(folder, mounts);
  if (type !== null && NETWORK_TYPES.has(type)) {
    return `${folder} is on a network file system (${type}), where two PCs could write at once and damage it`;
  }
  return null;
}

function mountType(folder: string, mounts: string): string | null {
  let longest = -1;
  let found: string | null = null;
  for (const line of mounts.split('\n')) {
    const [, point, type] = line.split(' ');
    if (point === undefined || type === undefined) continue;
    // The kernel writes blanks in paths as octal escapes.
    const path = point.replace(/\\([0-7]{3})/g, (_, octal: string) =>
      String.fromCharCode(Number.parseInt(octal, 8)),
    );
    const inside = folder === path || folder.startsWith(path.endsWith('/') ? path : `${path}/`);
    // A later mount on the same point hides the earlier one.
    if (inside && path.length >= longest) {
      longest = path.length;
      found = type;
    }
  }
  return found;
}

/** Refuses a network share or synchronised folder. A mapped drive letter can't be told from a local disk here. */
export function checkLocation(folder: string): void {
  let existing = resolve(folder);
  while (!existsSync(existing) && dirname(existing) !== existing) existing = dirname(existing);
  const real = realpathSync(existing) + resolve(folder).slice(existing.length);
  const mounts = process.platform === 'linux' ? readFileSync('/proc/self/mounts', 'utf8') : null;
  const problem = locationProblem(real, { platform: process.platform, mounts });
  if (problem !== null) {
    throw new RequestFailure('register_location', `${problem}. Choose a folder on this PC's own disk`);
  }
}
