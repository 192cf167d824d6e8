/** What an event's text says of itself, beside its data. */
export interface TextColumns {
  readonly bodyVersion: unknown;
  readonly id: unknown;
  readonly kind: unknown;
  readonly originId: unknown;
  readonly sequence: unknown;
  readonly happenedAt: unknown;
  readonly recordedAt: unknown;
  readonly supersedes: unknown;
}

const HEAD = /^\{"bodyVersion":(\d+),"data":/;

/**
 * Reads what a text says of itself; null for a text that is none. In canonical text the keys are sorted, so all of it
 * but the version stands after the data: only the last few hundred characters are parsed. A text of another form is
 * read whole.
 */
export function textColumns(body: string): TextColumns | null {
  const version = HEAD.exec(body)?.[1];
  const at = body.lastIndexOf(',"happenedAt":');
  if (version !== undefined && at > 0) {
    const tail = object(`{${body.slice(at + 1)}`);
    if (tail !== null && 'originId' in tail) {
      return { ...(tail as unknown as TextColumns), bodyVersion: Number(version) };
    }
  }
  return object(body) as TextColumns | null;
}

function object(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? value : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
