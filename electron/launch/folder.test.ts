import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';
import { dataFolder } from './folder.ts';

const place = (platform: NodeJS.Platform, env: NodeJS.ProcessEnv = {}) => ({
  platform,
  env,
  home: '/people/anna',
});

it.each([
  ['linux', {}, '/people/anna/.local/share/studbook'],
  ['linux', { XDG_DATA_HOME: '/data' }, '/data/studbook'],
  ['linux', { XDG_DATA_HOME: '' }, '/people/anna/.local/share/studbook'],
  ['darwin', {}, '/people/anna/Library/Application Support/Studbook'],
  ['win32', { LOCALAPPDATA: '/people/anna/Local' }, '/people/anna/Local/Studbook'],
  ['win32', {}, '/people/anna/AppData/Local/Studbook'],
] as const)('follows the convention of %s with %j', (platform, env, folder) => {
  expect(dataFolder(undefined, place(platform, env))).toBe(join(folder));
});

it('takes the flag before the variable, and the variable before the convention', () => {
  const env = { STUDBOOK_DATA: '/from/variable' };
  expect(dataFolder('/from/flag', place('linux', env))).toBe(resolve('/from/flag'));
  expect(dataFolder(undefined, place('linux', env))).toBe(resolve('/from/variable'));
  expect(dataFolder(undefined, place('linux', { STUDBOOK_DATA: '' }))).toContain('.local');
});

it('reads a relative folder from where the person stood when npm was called', () => {
  expect(dataFolder('plant', place('linux', { INIT_CWD: '/people/anna/here' }))).toBe(
    resolve('/people/anna/here/plant'),
  );
});
