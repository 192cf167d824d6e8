import { join } from 'node:path';
import { expect, test } from 'vitest';
import { coreFunctions, tagTexts } from './docstrings.ts';
import { mismatch, readExample } from './example.ts';
import { coreExports, evaluate } from './example-scope.ts';

const root = join(import.meta.dirname, '..', '..');
const { shared, of } = await coreExports(root);
const examples = (await coreFunctions(root)).flatMap(({ file, name, comment }) =>
  comment === null ? [] : tagTexts(comment, 'example').map((text) => ({ file, name, text })),
);

test.each(examples)('$file: $text', ({ file, text }) => {
  const example = readExample(text);
  if (example === null) throw new Error(`no value to hold it to: ${text}`);
  const value = evaluate(example.expression, { ...shared, ...of(file) });
  expect(mismatch(example.expected, value)).toBeNull();
});

test('there are examples to run', () => {
  expect(examples.length).toBeGreaterThan(100);
});
