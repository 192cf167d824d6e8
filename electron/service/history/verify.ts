import type { HistoryFinding, Verification } from '../../../core/contract/history.ts';
import type { ParsedInput } from '../../../core/contract/requests.ts';
import type { Crew } from './crew.ts';
import { headOf } from './plan.ts';
import type { Found, Plan, Task, TaskOf, TaskResults } from './tasks.ts';

/** Records in one piece of work: a fraction of a second, so that the threads end together and progress shows. */
const PER_PIECE = 10_000;

/** Findings that are handed on; a rewritten register has one for each record, and the first ones say enough. */
const LISTED = 500;

/** What a row of another table, and a record whose tables are worked out again, weigh against a record that is read. */
const LINK_WEIGHT = 0.2;
const HEADS_WEIGHT = 0.5;
const TABLES_WEIGHT = 40;
const FILE_WEIGHT = 0.5;

export interface Progress {
  total(amount: number): void;
  done(amount: number): void;
}

interface Piece {
  readonly task: Exclude<Task, { kind: 'plan' | 'heads' | 'export' }>;
  readonly what: string;
  readonly weight: number;
}

function piecesOf(plan: Plan, depth: Verification['depth']): Piece[] {
  const ranges = plan.origins.flatMap(({ id, sequence }) =>
    Array.from({ length: Math.ceil(sequence / PER_PIECE) }, (_, index): Piece => {
      const from = index * PER_PIECE + 1;
      const to = Math.min(sequence, from + PER_PIECE - 1);
      return { task: { kind: 'range', originId: id, from, to }, what: 'records', weight: to - from + 1 };
    }),
  );
  const links = plan.links.map(
    (link): Piece => ({
      task: { kind: 'links', link },
      what: 'rows that name a record',
      weight: link.rows * LINK_WEIGHT,
    }),
  );
  const attachments: Piece = { task: { kind: 'attachments' }, what: 'files', weight: plan.attachments };
  const signatures: Piece = { task: { kind: 'signatures' }, what: 'signatures', weight: plan.signatures };
  const refusals: Piece = { task: { kind: 'refusals' }, what: 'refusals kept', weight: plan.refusals };
  const schema: Piece = { task: { kind: 'schema' }, what: 'tables, indexes and triggers', weight: 1 };
  const deep: Piece[] = [
    { task: { kind: 'tables' }, what: 'rows worked out again', weight: plan.events * TABLES_WEIGHT },
    { task: { kind: 'file' }, what: 'file looked through', weight: plan.events * FILE_WEIGHT },
  ];
  // The longest first, so that one of them does not run on alone at the end.
  return [
    ...(depth === 'everything' ? deep : []),
    ...(plan.schemaKnown ? [schema] : []),
    ...links.toSorted((a, b) => b.weight - a.weight),
    attachments,
    signatures,
    ...(plan.schemaKnown ? [refusals] : []),
    ...ranges,
  ];
}

/** Looks at the whole history, in pieces that the crew shares out. */
export async function verifyHistory(
  crew: Crew,
  { depth, earlier }: ParsedInput<'history.verify'>,
  progress: Progress,
): Promise<Verification> {
  const plan = await crew.run<'plan'>({ kind: 'plan' });
  const pieces = piecesOf(plan, depth);
  progress.total(pieces.reduce((sum, { weight }) => sum + weight, plan.events * HEADS_WEIGHT));
  const heads = crew.run<'heads'>({ kind: 'heads', typed: earlier, events: plan.events }, (records) =>
    progress.done(records * HEADS_WEIGHT),
  );
  const all = pieces.map((piece) => carryOut(crew, piece, progress));
  const [comparisons, ...founds] = await Promise.all([heads, ...all]);
  const head = plan.events === 0 ? null : headOf(plan.origins);
  const findings = [...comparisons.flatMap(headFinding(plan.events)), ...founds.flatMap((f) => f.findings)];
  const total = findings.length + founds.reduce((sum, f) => sum + f.total - f.findings.length, 0);
  return {
    sound: total === 0,
    depth,
    events: plan.events,
    head,
    origins: plan.origins.map(({ id, name, events, hash }) => ({ id, name, events, hash })),
    findings: inOrder(findings).slice(0, LISTED),
    findingsTotal: total,
    comparisons: [...comparisons],
    looked: lookedAt(pieces, founds),
    notLooked: [
      ...(plan.schemaKnown
        ? []
        : [
            'Tables and triggers: a newer program wrote this register, and this one does not know its schema',
          ]),
      ...(depth === 'everything' ? [] : ['What the lists show, beside the log and its links to joints']),
    ],
  };
}

/** Pieces that tell how far they are add up to their own weight; the rest counts when it is done. */
async function carryOut(crew: Crew, { task, weight }: Piece, progress: Progress): Promise<Found> {
  let told = 0;
  const each = task.kind === 'tables' ? TABLES_WEIGHT : 1;
  const found = await crew.run<Piece['task']['kind']>(task as TaskOf<Piece['task']['kind']>, (amount) => {
    const part = Math.min(amount * each, weight - told);
    told += part;
    progress.done(part);
  });
  progress.done(weight - told);
  return found;
}

const headFinding =
  (events: number) =>
  ({ source, name, outcome, head, events: size }: TaskResults['heads'][number]): HistoryFinding[] => {
    if (outcome !== 'not in this history') return [];
    const whose = source === 'typed' ? 'The earlier head' : `The head of ${source} ${name}`;
    const about = { originId: null, sequence: null, eventId: null };
    const short = `${head.slice(0, 16)}…`;
    if (size !== null && size > events) {
      const detail = `${whose} (${short}) stands over ${size} records; this history has ${events}. Its end was cut off, or this is an older file`;
      return [{ kind: 'cut tail or older file', ...about, detail }];
    }
    const at = size === null ? '' : ` over ${size} records`;
    return [
      {
        kind: 'head not reached',
        ...about,
        detail: `${whose} (${short})${at} is none that this history ever had: it was rewritten, its end was cut off, or this is an older file or another register`,
      },
    ];
  };

function inOrder(findings: readonly HistoryFinding[]): HistoryFinding[] {
  const key = ({ originId, sequence }: HistoryFinding) =>
    `${originId ?? ''} ${String(sequence ?? 0).padStart(12, '0')}`;
  return findings.toSorted((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0));
}

function lookedAt(pieces: readonly Piece[], founds: readonly Found[]): Verification['looked'] {
  const counts = new Map<string, number>();
  pieces.forEach(({ what }, index) => {
    counts.set(what, (counts.get(what) ?? 0) + (founds[index]?.looked ?? 0));
  });
  return [...counts].map(([what, count]) => ({ what, count }));
}
