import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { _electron, type ElectronApplication, expect, test } from '@playwright/test';
import { REQUEST_NAMES } from '../../../core/contract/names.ts';
import { sandboxFlags } from '../../../electron/launch/browser.ts';

/** Needs Electron's own program; the test command says so where it is not there. */
const root = join(import.meta.dirname, '..', '..', '..');

let folder: string;
let shell: ElectronApplication;

test.beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'studbook-real-'));
  shell = await _electron.launch({ cwd: root, args: [...sandboxFlags(), root, '--data', folder] });
});

test.afterEach(async () => {
  await shell.close();
  rmSync(folder, { recursive: true, force: true });
});

test('the real window is isolated, on its own origin, and reaches the register', async () => {
  const page = await shell.firstWindow();
  expect(await page.evaluate(() => location.origin)).toBe('app://studbook');
  const seen = await page.evaluate(async () => {
    const { studbook } = window as unknown as {
      studbook: Record<string, (input: unknown) => Promise<unknown>>;
    };
    return {
      names: Object.keys(studbook),
      node: ['require', 'process', 'module'].filter((name) => name in window),
      state: await studbook['register.state']?.({}),
    };
  });
  expect(seen.names).toEqual([...REQUEST_NAMES]);
  expect(seen.node).toEqual([]);
  expect(seen.state).toMatchObject({ ok: true, value: { state: 'none', folder } });
});

test('the real session refuses permissions, navigation and new windows', async () => {
  const page = await shell.firstWindow();
  expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied');
  await page.evaluate(() => {
    location.href = 'https://example.invalid/';
  });
  expect(await page.evaluate(() => open('https://example.invalid/'))).toBeNull();
  expect(new URL(page.url()).protocol).toBe('app:');
  expect(shell.windows()).toHaveLength(1);
});
