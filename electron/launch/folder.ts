import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

interface Place {
  readonly env: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
  readonly home: string;
}

const here = (): Place => ({ env: process.env, platform: process.platform, home: homedir() });

/** The folder of register, log and window state: the flag, else STUDBOOK_DATA, else the platform's convention. */
export function dataFolder(flag: string | undefined, place: Place = here()): string {
  const named = flag ?? place.env['STUDBOOK_DATA'];
  // npm changes into the project's folder; a relative name is meant from where the person stood.
  if (named !== undefined && named !== '') return resolve(place.env['INIT_CWD'] ?? '.', named);
  if (place.platform === 'win32') {
    return join(place.env['LOCALAPPDATA'] ?? join(place.home, 'AppData', 'Local'), 'Studbook');
  }
  if (place.platform === 'darwin') return join(place.home, 'Library', 'Application Support', 'Studbook');
  return join(place.env['XDG_DATA_HOME'] || join(place.home, '.local', 'share'), 'studbook');
}
