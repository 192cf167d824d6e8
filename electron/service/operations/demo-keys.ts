import type { WriteContext } from '../context.ts';

/** Ids the invented plant's own keys were given. */
export interface Keys {
  readonly units: Map<string, string>;
  readonly people: Map<string, string>;
  readonly joints: Map<string, string>;
  readonly tools: Map<string, string>;
  /** Certificates, lists of checks, checks and cases, filled as they are recorded. */
  readonly records: Map<string, string>;
}

/** Something that happens at one moment of the plant's past. */
export interface DemoStep {
  /** Milliseconds since 1970 UTC. */
  readonly at: number;
  readonly replay: (context: WriteContext, keys: Keys) => Promise<void>;
}

export function idOf(ids: ReadonlyMap<string, string>, key: string): string {
  const id = ids.get(key);
  if (id === undefined) throw new Error(`the invented plant names "${key}", which it does not have`);
  return id;
}
