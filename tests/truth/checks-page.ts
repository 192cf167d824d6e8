import { lastDigit, type TruthRow } from './row.ts';
import { type SourceId, sourceOf, workOf } from './sources.ts';
import { COUNTS, deviation, standings } from './standing.ts';
import { ALL_ROWS, TOPICS } from './topics.ts';

interface Checked {
  readonly row: TruthRow;
  readonly value: number | string;
  /** In halves of the last printed digit. */
  readonly deviation: number;
  readonly standing: string;
}

/** The page that lists every check: what, from where, expected, computed, how far apart, and whether it counts. */
export function checksPage(): string {
  const marks = standings(ALL_ROWS);
  const check = (row: TruthRow): Checked => {
    const value = row.computed();
    return { row, value, deviation: deviation(row, value), standing: marks.get(row) ?? '' };
  };
  const topics = Object.entries(TOPICS).map(([topic, rows]) => [topic, rows.map(check)] as const);
  const all = topics.flatMap(([, rows]) => rows);
  return `${[
    ...opening(all),
    ...farthest(all),
    ...topics.flatMap(([topic, rows]) => topicTable(topic, rows)),
    ...sourceTable(all),
  ].join('\n')}\n`;
}

function opening(all: readonly Checked[]): string[] {
  const counted = all.filter(({ standing }) => standing === COUNTS);
  const cells = counted.filter(({ row }) => row.kind === 'published table cell').length;
  const works = new Set(counted.map(({ row }) => workOf(row.source))).size;
  const left = tally(
    all.filter(({ standing }) => standing !== COUNTS),
    ({ standing }) => standing,
  );
  return [
    '# Checks of the core against published values',
    '',
    'Written by `npm run docs:checks` from the rows in `tests/truth`; a test fails when it is out of date.',
    '',
    `**${counted.length}** of ${all.length} rows count, from **${works}** works: ${counted.length - cells} worked examples and ${cells} table cells.`,
    '',
    'A row counts when its source names author and work, when it is neither from memory nor computed by this project, and, for a table cell, when the shipped table did not come from that source. Cells count up to the number of worked examples.',
    '',
    table(
      ['Does not count because', 'Rows'],
      left.map(([reason, rows]) => [reason, String(rows.length)]),
    ),
    '',
  ];
}

/** Rows further from the print than half its last digit, by the reason their tolerance gives. */
function farthest(all: readonly Checked[]): string[] {
  const beyond = all.filter((one) => one.deviation > 1 + 1e-6 && one.standing === COUNTS);
  const groups = tally(beyond, ({ row }) => row.why).map(([why, rows]) => {
    const worst = rows.reduce((a, b) => (b.deviation > a.deviation ? b : a));
    return { why, rows, worst };
  });
  groups.sort((a, b) => b.worst.deviation - a.worst.deviation);
  return [
    '## Further from the print than half its last digit',
    '',
    `${beyond.length} of the counted rows. Deviations are in halves of the last printed digit, 1 being the most that rounding explains.`,
    '',
    table(
      ['Reason', 'Rows', 'Largest', 'Where'],
      groups.map(({ why, rows, worst }) => [
        why,
        String(rows.length),
        showDeviation(worst.deviation),
        `${worst.row.what}: ${worst.row.printed}, computed ${showValue(worst)}`,
      ]),
    ),
    '',
  ];
}

function topicTable(topic: string, rows: readonly Checked[]): string[] {
  const counted = rows.filter(({ standing }) => standing === COUNTS).length;
  return [
    `## ${topic}`,
    '',
    `${counted} of ${rows.length} count.`,
    '',
    table(
      ['What', 'Source and place', 'Expected', 'Computed', 'Deviation', 'Counts'],
      rows.map((one) => [
        one.row.what,
        `${cite(one.row.source)}; ${one.row.place}`,
        one.row.printed,
        showValue(one),
        showDeviation(one.deviation),
        one.standing,
      ]),
    ),
    '',
  ];
}

function sourceTable(all: readonly Checked[]): string[] {
  const groups = tally(all, ({ row }) => row.source);
  groups.sort(([a], [b]) => cite(a).localeCompare(cite(b), 'en'));
  return [
    '## Sources',
    '',
    table(
      ['Source', 'Edition', 'How it was read', 'Rows', 'Counted'],
      groups.map(([id, rows]) => [
        cite(id),
        sourceOf(id).edition,
        sourceOf(id).read,
        String(rows.length),
        String(rows.filter(({ standing }) => standing === COUNTS).length),
      ]),
    ),
  ];
}

function cite(id: SourceId): string {
  const { author, title } = sourceOf(id);
  return `${author}, ${title}`;
}

/** Two digits beyond the print, so that the last bits of different engines never show. */
function showValue({ row, value }: Checked): string {
  if (typeof value === 'string') return value;
  const decimals = Math.max(0, Math.round(-Math.log10(lastDigit(row.printed))) + 2);
  return /e/i.test(row.printed) || decimals > 12
    ? value.toPrecision(row.printed.replace(/e.*$/i, '').replace(/\D/g, '').replace(/^0+/, '').length + 1)
    : value.toFixed(decimals);
}

function showDeviation(halves: number): string {
  return Number.isFinite(halves) ? halves.toFixed(halves < 10 ? 1 : 0) : 'differs';
}

function tally<T, K>(items: readonly T[], keyOf: (item: T) => K): [K, T[]][] {
  const groups = new Map<K, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return [...groups];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((text) => text.replaceAll('|', '\\|')).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
