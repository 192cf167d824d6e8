import type {
  EarlierHead,
  HeadComparison,
  HistoryExport,
  HistoryFinding,
} from '../../../core/contract/history.ts';

/** Where the threads find what they look at. */
export interface Place {
  readonly file: string;
  /** Data folder; backups and exports lie in it. */
  readonly folder: string;
  readonly attachments: string;
}

export interface OriginEnd {
  readonly id: string;
  readonly name: string;
  readonly events: number;
  /** Highest sequence, and the hash that stands there. */
  readonly sequence: number;
  readonly hash: string;
}

/** A column of another table that names an event. */
export interface EventLink {
  readonly table: string;
  readonly column: string;
  readonly rows: number;
}

/** How much there is, as it stood when the work began. */
export interface Plan {
  readonly origins: readonly OriginEnd[];
  readonly events: number;
  readonly links: readonly EventLink[];
  readonly attachments: number;
  readonly signatures: number;
  readonly refusals: number;
  /** False on a register that a newer program wrote. */
  readonly schemaKnown: boolean;
}

/** What a piece of the work found: a few findings in full, all of them counted. */
export interface Found {
  readonly findings: readonly HistoryFinding[];
  readonly total: number;
  readonly looked: number;
}

export interface ExportTask {
  readonly kind: 'export';
  readonly name: string;
  readonly exportedAt: string;
  readonly appVersion: string;
}

/** Every piece of work that a thread can be given, and what it answers. */
export interface TaskResults {
  plan: Plan;
  range: Found;
  links: Found;
  schema: Found;
  file: Found;
  attachments: Found;
  signatures: Found;
  refusals: Found;
  tables: Found;
  heads: readonly HeadComparison[];
  export: HistoryExport;
}

export type Task =
  | { readonly kind: 'plan' }
  | { readonly kind: 'range'; readonly originId: string; readonly from: number; readonly to: number }
  | { readonly kind: 'links'; readonly link: EventLink }
  | { readonly kind: 'schema' }
  | { readonly kind: 'file' }
  | { readonly kind: 'attachments' }
  | { readonly kind: 'signatures' }
  | { readonly kind: 'refusals' }
  | { readonly kind: 'tables' }
  | { readonly kind: 'heads'; readonly typed: EarlierHead | null; readonly events: number }
  | ExportTask;

export type TaskOf<K extends keyof TaskResults> = Extract<Task, { kind: K }>;

/** What a thread says: how far it is, or how its task ended. */
export type Reply =
  | { readonly tick: number }
  | { readonly result: TaskResults[keyof TaskResults] }
  | { readonly problem: string };
