/** A value that SQLite would store as something else than what was meant. A programmer's mistake, never a person's. */
class BindError extends Error {
  constructor(position: number, what: string) {
    super(`parameter ${position + 1} is ${what}, which does not bind as itself`);
    this.name = 'BindError';
  }
}

/** The one place where parameters are checked on their way into SQLite: NaN would silently become NULL. */
export function checkBound(parameters: readonly unknown[]): void {
  parameters.forEach((value, position) => {
    switch (typeof value) {
      case 'string':
        if (!value.isWellFormed()) throw new BindError(position, 'text with a lone surrogate');
        return;
      case 'number':
        if (!Number.isFinite(value)) throw new BindError(position, `the number ${value}`);
        return;
      case 'bigint':
        return;
      case 'object':
        if (value === null || value instanceof Uint8Array) return;
        throw new BindError(position, value instanceof Date ? 'a Date' : 'an object');
      default:
        throw new BindError(position, `a ${typeof value}`);
    }
  });
}
