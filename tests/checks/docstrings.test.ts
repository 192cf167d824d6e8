import { describe, expect, it } from 'vitest';
import { passed } from './check.ts';
import { checkDocstrings } from './docstrings.ts';
import { mismatch, readExample } from './example.ts';
import { evaluate } from './example-scope.ts';
import { CLEAN, plant } from './plant.ts';

const COMMENT = [
  'Area of a square.',
  '',
  'Equation: A = a².',
  '@param side a, m, at least 0',
  '@returns A, m²',
  '@example area(2) // 4 m²',
  '@source plane geometry',
];

const functionWith = (lines: readonly string[], head = 'area(side: number): number') =>
  `/**\n${lines.map((line) => ` * ${line}`.trimEnd()).join('\n')}\n */\nexport function ${head} {\n  return side * side;\n}\n`;
const check = (text: string) => checkDocstrings(plant({ 'core/area.ts': text }));
const without = (start: string) => COMMENT.filter((line) => !line.startsWith(start));
const instead = (start: string, line: string) => COMMENT.map((one) => (one.startsWith(start) ? line : one));

describe('comments of the functions of core', () => {
  it('passes one that says everything, and leaves inner functions alone', async () => {
    const inner = 'function half(a: number): number {\n  return a / 2;\n}\n';
    const result = await check(`${functionWith(COMMENT)}\n${inner}`);
    expect(result).toEqual({ looked: 1, faults: [] });
  });

  it.each([
    ['sentence', without('Area'), 'no sentence says what it does'],
    ['equation', without('Equation'), 'no Equation, though it gives a number'],
    ['parameter', without('@param'), 'no @param for side'],
    ['unit', instead('@param', '@param side length of a side, at least 0'), '@param side names no unit'],
    ['range', instead('@param', '@param side a, m'), '@param side names no range'],
    ['result', without('@returns'), 'no @returns'],
    ['example', without('@example'), 'no @example'],
    [
      'value of the example',
      instead('@example', '@example area(2)'),
      '@example gives no value to hold it to',
    ],
    ['source', without('@source'), 'no @source'],
  ])('finds a missing %s', async (_name, lines, fault) => {
    const result = await check(functionWith(lines));
    expect(result.faults).toEqual([expect.stringContaining(fault)]);
    expect(result.faults[0]).toMatch(/^core\/area\.ts:\d+ area: /);
    expect(passed(result)).toBe(false);
  });

  it('finds a missing comment, on an arrow function too', async () => {
    const result = await check('export const area = (side: number): number => side * side;\n');
    expect(result.faults).toEqual(['core/area.ts:1 area: has no comment.']);
  });

  it('asks what stands behind null, and for no equation where something is only chosen', async () => {
    const head = "pick(side: number): 'large' | null";
    const lines = without('Equation');
    expect((await check(functionWith(lines, head))).faults).toEqual([
      'core/area.ts:9 pick: @returns does not say when it is null.',
    ]);
    const said = lines.map((line) => (line.startsWith('@returns') ? '@returns the word, or null' : line));
    expect((await check(functionWith(said, head))).faults).toEqual([]);
  });

  it('leaves the contract to its schemas, and fails when there is no function', async () => {
    const contract = 'export function plain(value: string): string {\n  return value;\n}\n';
    const result = await checkDocstrings(plant({ 'core/contract/plain.ts': contract }));
    expect(result).toEqual({ looked: 0, faults: [] });
    expect(passed(result)).toBe(false);
  });

  it('passes nothing of a project whose core has no comments', async () => {
    expect((await checkDocstrings(plant(CLEAN))).faults).toHaveLength(1);
  });
});

describe('examples', () => {
  it.each([
    ['area(2) // 4.0 m²', 4.04, null],
    ['area(2) // 4.0 m²', 4.06, 'gives 4.06'],
    ["seat(a) // 'too small', by a hair", 'too small', null],
    ['find(a) // null', undefined, 'gives undefined'],
    ['ends(a) // [1.5, 2e3] N', [1.52, 2000.4], null],
    ['ends(a) // [1.5, 2e3] N', [1.5], 'gives [1.5]'],
    ['grows(a) // −0.30', -0.304, null],
    ['ratio(a) // 0.3333… of it', 1 / 3, null],
  ])('holds %s against a value', (text, value, fault) => {
    const example = readExample(text);
    if (example === null) throw new Error(text);
    expect(mismatch(example.expected, value)).toBe(fault);
  });

  it.each(['area(2)', 'area(2) // above three', 'area(2) // about 4', 'seat(a) // [1, big]'])(
    'reads no value in %s',
    (text) => {
      expect(readExample(text)).toBeNull();
    },
  );

  it('evaluates with the names it is given, and fails on others', () => {
    expect(evaluate('twice(side)', { twice: (a: number) => 2 * a, side: 3 })).toBe(6);
    expect(() => evaluate('twice(depth)', { twice: (a: number) => 2 * a })).toThrow(/depth/);
  });
});
