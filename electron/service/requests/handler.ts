import type { REQUEST_KINDS, RequestName } from '../../../core/contract/names.ts';
import type { ParsedInput, RequestOutput } from '../../../core/contract/requests.ts';
import type { ForecastRuns } from '../breakout/runs.ts';
import type { ReadContext, WriteContext } from '../context.ts';
import type { HistoryJobs } from '../history/jobs.ts';

type NamesOf<Kind> = { [N in RequestName]: (typeof REQUEST_KINDS)[N] extends Kind ? N : never }[RequestName];

/** The register's own life and who is there are the service's; everything else is handled here. */
export type ReadName = Exclude<
  NamesOf<'read'>,
  'register.state' | 'access.state' | 'access.present' | 'access.stay'
>;
export type WriteName = Exclude<
  NamesOf<'write'>,
  'register.create' | 'access.begin' | 'access.signIn' | 'access.signOut' | 'access.changeSecret'
>;

/** What a request that only reads may ask beside the register. */
export interface RequestContext extends ReadContext {
  /** Data folder; exports lie in it. */
  readonly folder: string;
  readonly history: HistoryJobs;
  readonly forecasts: ForecastRuns;
}

/** Work that takes its time goes on beside the register; every other reading needs the register alone. */
type ContextOf<N extends ReadName> = N extends `${'history' | 'forecasts'}.${string}`
  ? RequestContext
  : ReadContext;

export type Read<N extends ReadName> = (
  context: ContextOf<N>,
  input: ParsedInput<N>,
) => Promise<RequestOutput<N>>;
export type Write<N extends WriteName> = (
  context: WriteContext,
  input: ParsedInput<N>,
) => Promise<RequestOutput<N>>;
