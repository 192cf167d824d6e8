/** An example of a comment: an expression and the value it is said to have. */
export interface Example {
  readonly expression: string;
  readonly expected: Expected;
}

type Expected =
  | { readonly kind: 'number'; readonly value: number; readonly tolerance: number }
  | { readonly kind: 'exactly'; readonly value: string | boolean | null }
  | { readonly kind: 'list'; readonly items: readonly Expected[] };

const NUMBER = /^[-−]?\d[\d.]*(?:e[-+]?\d+)?/;

/**
 * Reads `expression // value`. The value is a number held to its last digit, a text in quotes, true, false, null, or a list
 * of these; a unit or a remark may follow it.
 */
export function readExample(text: string): Example | null {
  const at = text.lastIndexOf(' // ');
  if (at < 0) return null;
  const read = readValue(text.slice(at + 4).trim());
  return read === null ? null : { expression: text.slice(0, at).trim(), expected: read.value };
}

function readValue(text: string): { value: Expected; rest: string } | null {
  if (text.startsWith('[')) return readList(text);
  const word = /^(?:'([^']*)'|(true|false|null)\b)/.exec(text);
  if (word !== null) {
    const [whole, quoted, name] = word;
    const value = quoted ?? (name === 'null' ? null : name === 'true');
    return { value: { kind: 'exactly', value }, rest: text.slice(whole.length) };
  }
  const [digits] = NUMBER.exec(text) ?? [];
  if (digits === undefined) return null;
  const printed = digits.replace('−', '-').replace(/\.+$/, '');
  const [mantissa = '', exponent = '0'] = printed.split('e');
  const step = 10 ** (Number(exponent) - (mantissa.split('.')[1]?.length ?? 0));
  const value = { kind: 'number', value: Number(printed), tolerance: 0.5 * step * (1 + 1e-9) } as const;
  return { value, rest: text.slice(digits.length) };
}

function readList(text: string): { value: Expected; rest: string } | null {
  const items: Expected[] = [];
  let rest = text.slice(1).trimStart();
  while (!rest.startsWith(']')) {
    const item = readValue(rest);
    if (item === null) return null;
    items.push(item.value);
    rest = item.rest.trimStart().replace(/^,\s*/, '');
  }
  return { value: { kind: 'list', items }, rest: rest.slice(1) };
}

/** What is wrong with a value an example evaluated to, or null. */
export function mismatch(expected: Expected, value: unknown): string | null {
  if (expected.kind === 'list') {
    if (!Array.isArray(value) || value.length !== expected.items.length) return `gives ${show(value)}`;
    const wrong = expected.items.some((item, index) => mismatch(item, value[index]) !== null);
    return wrong ? `gives ${show(value)}` : null;
  }
  if (expected.kind === 'exactly') return value === expected.value ? null : `gives ${show(value)}`;
  const near = typeof value === 'number' && Math.abs(value - expected.value) <= expected.tolerance;
  return near ? null : `gives ${show(value)}`;
}

function show(value: unknown): string {
  return typeof value === 'string' ? `'${value}'` : (JSON.stringify(value) ?? String(value));
}
