import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type CustodyStep, condition, custodyStep, toolStatus } from '../../core/contract/custody.ts';
import { custodyAfter } from '../../core/tools/custody.ts';

const page = readFileSync(new URL('../../docs/custody.md', import.meta.url), 'utf8');

const cells = (line: string) =>
  line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());

const rows = page
  .split('\n')
  .filter((line) => line.startsWith('|') && !line.startsWith('|---'))
  .map(cells);

/** Step and conditions a row of the page speaks of. */
function readRow(name: string): { step: CustodyStep; conditions: (string | null)[] } {
  const [step, state] = name.split(', ');
  if (state === undefined) return { step: custodyStep.parse(step), conditions: [null] };
  const conditions = state === 'condition good' ? ['good', null] : state.split(' or ');
  return { step: custodyStep.parse(step), conditions };
}

test('the table on the page is the table of the program, cell by cell', () => {
  const [head = [], ...body] = rows;
  expect(head.slice(1)).toEqual(toolStatus.options);
  expect(new Set(body.map(([name = '']) => readRow(name).step))).toEqual(new Set(custodyStep.options));
  for (const [name = '', ...after] of body) {
    const { step, conditions } = readRow(name);
    for (const each of conditions) {
      const returned = each === null ? null : condition.parse(each);
      toolStatus.options.forEach((status, at) => {
        const answer = custodyAfter(status, step, returned);
        const expected = after[at] ?? '';
        expect([name, status, 'status' in answer ? answer.status : '']).toEqual([name, status, expected]);
      });
    }
  }
});

test('every refusal says what stands in the way', () => {
  const refused = custodyStep.options.flatMap((step) =>
    toolStatus.options.flatMap((status) => {
      const answer = custodyAfter(status, step);
      return 'refused' in answer ? [answer.refused] : [];
    }),
  );
  expect(refused.length).toBeGreaterThan(10);
  for (const text of refused) expect(text).toMatch(/^it is /);
  expect(custodyAfter('quarantined', 'issue')).toEqual({
    refused: 'it is quarantined; release it first, with a reason',
  });
});

test('a quarantined tool never becomes available but by its release', () => {
  for (const step of custodyStep.options) {
    const answer = custodyAfter('quarantined', step);
    const free = 'status' in answer && (answer.status === 'available' || answer.status === 'issued');
    expect([step, free]).toEqual([step, step === 'release from quarantine']);
  }
});
