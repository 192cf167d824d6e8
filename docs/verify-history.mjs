#!/usr/bin/env node
// Verifies an export of a Studbook history without Studbook: Node 18 or later and this one file are all it needs.
// The form is described in history-export.md, the hashing in chain.md; this was written from those two pages.
//
//   node verify-history.mjs EXPORT.jsonl [--head DIGITS [--records NUMBER]] [--attachments FOLDER]
//
// Ends with 0 when everything holds, with 1 when something does not, with 2 when it could not be looked at.
import { createHash } from 'node:crypto';
import { createReadStream, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';

const ZEROS = '0'.repeat(64);
const LISTED = 50;

const say = (text) => process.stdout.write(`${text}\n`);
const complain = (text) => process.stderr.write(`${text}\n`);

const digest = (...parts) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest();
};
const linkOf = (previousHash, body) =>
  digest(Buffer.of(2), Buffer.from(previousHash, 'hex'), Buffer.from(body, 'utf8')).toString('hex');
const leafOf = ({ originId, sequence, hash }) =>
  digest(Buffer.of(0), Buffer.from(JSON.stringify({ hash, originId, sequence }), 'utf8'));

function rootOf(leaves) {
  if (leaves.length === 1) return leaves[0];
  let half = 1;
  while (half * 2 < leaves.length) half *= 2;
  return digest(Buffer.of(1), rootOf(leaves.slice(0, half)), rootOf(leaves.slice(half)));
}

/** RFC 8785 for what bodies hold: keys in order of their UTF-16 units, no blanks, numbers and texts as JSON has them. */
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.keys(value)
    .sort()
    .map((key) => `${JSON.stringify(key)}:${canonical(value[key])}`);
  return `{${members.join(',')}}`;
}

function usage(problem) {
  complain(problem);
  complain('node verify-history.mjs EXPORT.jsonl [--head DIGITS [--records NUMBER]] [--attachments FOLDER]');
  process.exit(2);
}

function read() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { head: { type: 'string' }, records: { type: 'string' }, attachments: { type: 'string' } },
    });
    const head = values.head?.replace(/\s/g, '').toLowerCase() ?? null;
    if (positionals.length !== 1) return usage('Name one export.');
    if (!existsSync(positionals[0])) return usage(`There is no file ${positionals[0]}.`);
    if (head !== null && !/^[0-9a-f]{16,64}$/.test(head))
      return usage('A head: its first 16 digits at least.');
    if (values.records !== undefined && !/^\d+$/.test(values.records))
      return usage('Records: a whole number.');
    const records = values.records === undefined ? null : Number(values.records);
    return { file: positionals[0], head, records, attachments: values.attachments ?? null };
  } catch (error) {
    return usage(error.message);
  }
}

const asked = read();
const faults = [];
const fault = (text) => faults.push(text);
const origins = new Map();
const refused = new Map();
const hashes = new Map();
const signatures = [];
let named = [];
let first = null;
let end = null;
let lines = 0;
let events = 0;
let files = 0;
let refusals = 0;
let place = null;

/** One link of a chain: its hash, the link before it, its number and the form of its text. */
function lookAt(what, chains, { previousHash, hash, body }) {
  let text;
  try {
    text = JSON.parse(body);
  } catch {
    fault(`Line ${lines}: the text of this ${what} is no JSON`);
    return null;
  }
  const { originId, sequence } = text;
  const whole = `${what[0].toUpperCase()}${what.slice(1)} ${sequence} of origin ${originId}`;
  const before = chains.get(originId) ?? { sequence: 0, hash: ZEROS };
  if (sequence !== before.sequence + 1) {
    const gap = sequence > before.sequence + 1;
    fault(
      `${whole}: ${before.sequence + 1} was expected here, so ${gap ? 'one is missing' : 'they are out of order'}`,
    );
  } else if (previousHash !== before.hash) fault(`${whole}: it follows another one than stands before it`);
  if (!/^[0-9a-f]{64}$/.test(String(previousHash)) || linkOf(previousHash, body) !== hash) {
    fault(`${whole}: the text does not give its hash`);
  }
  if (canonical(text) !== body) fault(`${whole}: the text is not in the form that is hashed`);
  chains.set(originId, { sequence, hash });
  return text;
}

function onEvent(line) {
  const body = lookAt('record', origins, line);
  events += 1;
  if (body === null) return;
  if (hashes.has(body.id)) fault(`Record ${body.id} is there twice`);
  hashes.set(body.id, line.hash);
  if (body.kind === 'record signed') signatures.push({ sequence: body.sequence, ...body.data });
  if (body.kind === 'attachment added') named.push(body.data.hash);
  if (asked.head === null) return;
  const leaves = [...origins.keys()].sort().map((id) => leafOf({ originId: id, ...origins.get(id) }));
  if (rootOf(leaves).toString('hex').startsWith(asked.head)) {
    place ??= { events, sequence: body.sequence, recordedAt: body.recordedAt };
  }
}

function onAttachment({ hash, name, state }) {
  files += 1;
  if (!named.includes(hash)) fault(`File “${name}”: no record names it`);
  named = named.filter((one) => one !== hash);
  if (asked.attachments === null) {
    if (state !== 'intact') fault(`File “${name}”: it was ${state} when the export was made`);
    return;
  }
  const file = join(asked.attachments, hash.slice(0, 2), hash);
  if (!existsSync(file)) fault(`File “${name}”: it is not in the folder`);
  else if (digest(readFileSync(file)).toString('hex') !== hash) fault(`File “${name}”: it is changed`);
}

const input = createInterface({ input: createReadStream(asked.file, 'utf8'), crlfDelay: Infinity });
for await (const raw of input) {
  lines += 1;
  let line;
  try {
    line = JSON.parse(raw);
  } catch {
    if (lines === 1) usage('The first line is no JSON: this is no export of a history.');
    fault(`Line ${lines} is no JSON`);
    continue;
  }
  if (lines === 1) {
    if (line.format !== 'studbook-history' || line.version !== 1) {
      usage(`Not an export this program knows: format ${line.format}, version ${line.version}.`);
    }
    first = line;
  } else if (end !== null) fault(`Line ${lines} stands after the end`);
  else if (line.type === 'event') onEvent(line);
  else if (line.type === 'attachment') onAttachment(line);
  else if (line.type === 'refusal') {
    refusals += 1;
    lookAt('refusal', refused, line);
  } else if (line.type === 'end') end = line;
  else fault(`Line ${lines}: unknown type ${line.type}`);
}
if (first === null) usage('The file is empty.');

const heads = [...origins.keys()].sort().map((originId) => ({ originId, ...origins.get(originId) }));
const head = heads.length === 0 ? null : rootOf(heads.map(leafOf)).toString('hex');
if (end === null) fault('The end is missing: the export was cut off, or it was not finished');
for (const claim of [first, ...(end === null ? [] : [end])]) {
  const which = claim === first ? 'first' : 'last';
  if (claim.events !== events)
    fault(`The ${which} line speaks of ${claim.events} records; there are ${events}`);
  if (claim.head !== head) fault(`The ${which} line has another head than the records give`);
}
if (end !== null && end.refusals !== refusals) {
  fault(`The last line speaks of ${end.refusals} refusals; there are ${refusals}`);
}
if (end !== null && end.attachments !== files) {
  fault(`The last line speaks of ${end.attachments} files; there are ${files}`);
}
for (const hash of new Set(named)) fault(`A record names a file that is not listed: ${hash}`);
for (const { sequence, eventId, hash, meaning } of signatures) {
  if (!hashes.has(eventId)) fault(`Signature ${sequence} (${meaning}): record ${eventId} is not there`);
  else if (hashes.get(eventId) !== hash) {
    fault(`Signature ${sequence} (${meaning}): record ${eventId} no longer has the content that was signed`);
  }
}
if (asked.head !== null && place === null) {
  fault(
    asked.records !== null && asked.records > events
      ? `The earlier head stands over ${asked.records} records; here are ${events}: the end was cut off, or this is older`
      : 'The earlier head is none that this history ever had: it was rewritten or cut off, or it is another one',
  );
} else if (place !== null && asked.records !== null && place.events !== asked.records) {
  fault(`The earlier head stands over ${asked.records} records on paper, and over ${place.events} here`);
}

say(`Site: ${first.site?.name ?? 'not named'}${first.site?.demo ? ' (invented)' : ''}`);
say(`Exported: ${first.exportedAt} by version ${first.program}`);
say(
  `Looked at: ${events} records of ${origins.size} origin(s), ${signatures.length} signatures, ${files} files, ${refusals} refusals`,
);
say(`Head: ${head ?? 'none, there are no records'}`);
if (place !== null) {
  say(
    `The earlier head was that of the first ${place.events} records, the last of them recorded ${place.recordedAt}`,
  );
}
if (faults.length === 0) {
  say('Everything holds.');
  say(
    asked.head === null
      ? 'Not proved: that it was not rewritten as a whole or cut off at its end. Give a head from paper with --head.'
      : 'Not proved: anything recorded after that head, and what the refusals’ own end was.',
  );
} else {
  say(`NOT SOUND: ${faults.length} fault(s)`);
  for (const text of faults.slice(0, LISTED)) say(`- ${text}`);
  if (faults.length > LISTED) say(`- and ${faults.length - LISTED} more`);
}
process.exitCode = faults.length === 0 ? 0 : 1;
