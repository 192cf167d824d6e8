import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { ask, askBadly, createEmpty, key, startService } from './ask.ts';
import { temporaryFolder } from './folder.ts';
import { breakoutOf, certify, enterPlant, settingFor, tighteningOf } from './records.ts';
import { ended } from './verified.ts';

const PROGRAM = join(import.meta.dirname, '..', '..', 'docs', 'verify-history.mjs');

let folder: string;
let lines: readonly string[];
let head: string;
let earlier: { readonly head: string; readonly events: number };

beforeAll(async () => {
  folder = temporaryFolder();
  const started = startService(folder);
  await createEmpty(started);
  const plant = await enterPlant(started);
  await certify(started, plant);
  const data = tighteningOf(plant);
  const { id: eventId } = await ask(started, 'event.recordTightening', { key: key(), data });
  const { hash } = await ask(started, 'event.get', { id: eventId });
  const signed = { eventId, hash, meaning: 'did', personId: plant.personId } as const;
  await ask(started, 'event.sign', { key: key(), data: signed });
  await askBadly(started, 'event.sign', { key: key(), data: { ...signed, meaning: 'approved' } });
  const toolless = { ...settingFor(plant), tools: { ...settingFor(plant).tools, driveId: null } };
  await askBadly(started, 'setting.issue', { key: key(), data: toolless, personId: plant.personId });
  const owner = { kind: 'joint' as const, id: plant.jointId };
  const named = { owner, name: 'Prüfung ‖ 漢字.txt', mediaType: 'text/plain' as const, remarks: 'äöü 😀' };
  const content = Buffer.from('gap 1.2 mm').toString('base64');
  await ask(started, 'attachment.add', { key: key(), data: { ...named, content, personId: plant.personId } });
  const state = await ask(started, 'register.state', {});
  earlier = { head: state.head ?? '', events: state.events };
  await ask(started, 'event.recordBreakout', { key: key(), data: breakoutOf(plant) });
  const { exported } = await ended(started, await ask(started, 'history.export', {}));
  head = exported?.head ?? '';
  lines = readFileSync(join(folder, 'exports', exported?.name ?? ''), 'utf8')
    .trimEnd()
    .split('\n');
  await started.service.close();
});

/** The program by itself, in a folder of its own: nothing of this repository is beside it. */
function verify(changed: readonly string[], ...options: readonly string[]) {
  const place = temporaryFolder();
  const program = join(place, 'verify-history.mjs');
  writeFileSync(program, readFileSync(PROGRAM));
  const file = join(place, 'export.jsonl');
  writeFileSync(file, changed.length === 0 ? '' : `${changed.join('\n')}\n`);
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, file, ...options], {
    encoding: 'utf8',
    cwd: place,
  });
  return { status, stdout, stderr };
}

const at = (text: string | RegExp) => {
  const index = lines.findIndex((line) => line.search(text) >= 0);
  if (index < 0) throw new Error(`fixture: no line with ${text}`);
  return index;
};
const edited = (index: number, change: (line: string) => string) =>
  lines.with(index, change(lines[index] ?? ''));

test('it needs no package and nothing of the program', () => {
  const imports = [...readFileSync(PROGRAM, 'utf8').matchAll(/from '([^']+)'/g)].map(([, name]) => name);
  expect(imports.length).toBeGreaterThan(3);
  expect(imports.filter((name) => !name?.startsWith('node:'))).toEqual([]);
});

test('a good export holds, with its earlier heads and its files', () => {
  const plain = verify(lines);
  expect(plain).toMatchObject({ status: 0, stderr: '' });
  expect(plain.stdout).toContain('Everything holds.');
  expect(plain.stdout).toContain(`Head: ${head}`);
  expect(plain.stdout).toContain('1 signatures, 1 files, 2 refusals');
  expect(plain.stdout).toContain('Not proved: that it was not rewritten as a whole or cut off at its end');
  const held = verify(
    lines,
    '--head',
    earlier.head
      .slice(0, 16)
      .toUpperCase()
      .replace(/(.{4})/g, '$1 '),
    '--records',
    String(earlier.events),
    '--attachments',
    join(folder, 'register.attachments'),
  );
  expect(held).toMatchObject({ status: 0, stderr: '' });
  expect(held.stdout).toContain(`the first ${earlier.events} records`);
});

const TAMPERED: readonly (readonly [string, () => readonly string[], RegExp])[] = [
  [
    'a byte of a record',
    () => edited(at(/tightening recorded/), (line) => line.replace('260', '261')),
    /the text does not give its hash/,
  ],
  [
    'a blank in a text',
    () =>
      edited(at(/breakout recorded/), (line) =>
        line.replace('{\\"bodyVersion\\":1,', '{\\"bodyVersion\\": 1,'),
      ),
    /not in the form that is hashed/,
  ],
  ['a record taken out', () => lines.toSpliced(5, 1), /so one is missing/],
  ['two exchanged', () => lines.with(5, lines[6] ?? '').with(6, lines[5] ?? ''), /out of order/],
  [
    'a hash of another',
    () =>
      edited(7, (line) =>
        line
          .replace(/"hash":"."/, '"hash":"0"')
          .replace(/"hash":"(.)/, (_, digit) => `"hash":"${digit === 'a' ? 'b' : 'a'}`),
      ),
    /does not give its hash/,
  ],
  ['the end cut off', () => lines.slice(0, -1), /The end is missing/],
  [
    'the last record cut off',
    () => lines.toSpliced(at(/breakout recorded/), 1),
    /speaks of \d+ records; there are/,
  ],
  [
    'the head of the first line',
    () => edited(0, (line) => line.replace(head, '0'.repeat(64))),
    /The first line has another head/,
  ],
  [
    'a refusal taken out',
    () => lines.toSpliced(at(/"type":"refusal"/), 1),
    /so one is missing|speaks of 2 refusals/,
  ],
  [
    'a word of a refusal',
    () => edited(at(/"type":"refusal"/), (line) => line.replace('refusedAt', 'refusedat')),
    /does not give its hash/,
  ],
  [
    'a file that is not listed',
    () => lines.toSpliced(at(/"type":"attachment"/), 1),
    /a file that is not listed/,
  ],
  [
    'a file no record names',
    () => edited(at(/"type":"attachment"/), (line) => line.replace(/"hash":"./, '"hash":"z')),
    /no record names it/,
  ],
  ['a record twice', () => lines.toSpliced(5, 0, lines[5] ?? ''), /is there twice/],
  ['a line of an unknown kind', () => lines.toSpliced(5, 0, '{"type":"note"}'), /unknown type note/],
  ['a line that is torn', () => lines.with(5, (lines[5] ?? '').slice(0, 40)), /is no JSON/],
  ['something after the end', () => [...lines, lines[5] ?? ''], /stands after the end/],
];

test.each(TAMPERED)('%s is found', (_, change, words) => {
  const { status, stdout, stderr } = verify(change());
  expect([status, stderr]).toEqual([1, '']);
  expect(stdout).toMatch(/NOT SOUND/);
  expect(stdout).toMatch(words);
});

test('a head of elsewhere is in no history, and one over more records says that the end is gone', () => {
  const stranger = verify(lines, '--head', 'ab'.repeat(32));
  expect(stranger).toMatchObject({ status: 1 });
  expect(stranger.stdout).toContain('is none that this history ever had');
  const longer = verify(lines, '--head', 'ab'.repeat(32), '--records', '1000000');
  expect(longer.stdout).toContain('the end was cut off, or this is older');
  const miscounted = verify(lines, '--head', earlier.head, '--records', '3');
  expect(miscounted).toMatchObject({ status: 1 });
});

test('changed and missing files are found where their folder is given', () => {
  const empty = temporaryFolder();
  const missing = verify(lines, '--attachments', empty);
  expect(missing).toMatchObject({ status: 1 });
  expect(missing.stdout).toContain('it is not in the folder');
});

test.each([
  ['no export', ['{"hello":1}']],
  ['a later version', ['{"format":"studbook-history","version":2}']],
  ['no JSON', ['hello']],
  ['an empty file', []],
])('%s is not looked at', (_, content) => {
  expect(verify(content)).toMatchObject({ status: 2, stdout: '' });
});

test('a call that is none says how it is called', () => {
  const { status, stderr } = verify(lines, '--head', '12');
  expect(status).toBe(2);
  expect(stderr).toContain('its first 16 digits at least');
});
