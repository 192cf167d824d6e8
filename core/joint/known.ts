import type { OriginMark } from '../contract/joint.ts';
import type { RowStatus } from '../reference/status.ts';
import type { TableCell } from '../reference/table-value.ts';

/** A value in force, with where it came from. */
export interface Known<T> {
  readonly value: T;
  readonly origin: OriginMark;
  readonly source: string;
  /** Trust of the table row behind it; null for entered values. */
  readonly status: RowStatus | null;
  readonly note: string;
  /** Doubtful cells of the shipped tables it was taken from, for a person's confirmation. */
  readonly cells?: readonly TableCell[] | undefined;
}
