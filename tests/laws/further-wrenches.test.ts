import { expect, test } from 'vitest';
import { settingCard } from '../../core/setting/card.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import { secondWrench, siteRule } from './tool-room-cases.ts';

/** Two wrenches of one line; the points of one of them end at a pressure. */
function pair(which: 'first' | 'second', highest: string, kind: 'tightening' | 'breakout' = 'tightening') {
  return settingCard(
    changed(completeInput(kind), (input) => {
      const second = secondWrench(input);
      siteRule(input, { lineAgreement: typed('3', 'percent') });
      endAt(which === 'first' ? input.set.drive : second.drive, highest);
    }),
  );
}

function endAt(drive: InputDraft['set']['drive'], highest: string): void {
  const measured = drive?.certificates[0]?.data.measured;
  if (measured?.kind !== 'pressure-torque') throw new Error('fixture: no certificate of a wrench');
  const end = typed(highest, 'bar');
  const below = measured.points.filter(({ pressure }) => pressure.si < end.si);
  const [low, high] = [below.at(-1), measured.points[below.length]];
  if (low === undefined || high === undefined) throw new Error('fixture: no points around the end');
  // A point on the straight between its neighbours keeps the line where it was.
  const part = (end.si - low.pressure.si) / (high.pressure.si - low.pressure.si);
  const torque = low.torque.si + part * (high.torque.si - low.torque.si);
  measured.points = [...below, { ...low, pressure: end, torque: typed(String(torque), 'N.m') }];
}

const codes = ({ findings }: ReturnType<typeof settingCard>) => findings.map(({ code }) => code);

test.each(['first', 'second'] as const)(
  'rounding keeps the highest certified point of the %s wrench, where the torque itself keeps it',
  (which) => {
    // 259.5 bar are wanted on marks of 10 bar: the nearest mark lies above 259.7 bar, the one below does not.
    const card = pair(which, '259.7');
    expect(card.dial?.value).toBe(250);
    expect(codes(card)).not.toContain('above_certified_points');
    expect(pair(which, '261').dial?.value).toBe(260);
  },
);

test('a torque that needs more than the second wrench is certified for is rounded as ever, and refused', () => {
  const card = pair('second', '255');
  expect(card.dial?.value).toBe(260);
  expect(codes(card)).toContain('above_certified_points');
});

test('a breakout goes no higher than every wrench is certified for', () => {
  const both = pair('second', '400', 'breakout').breakout?.capacity ?? Number.NaN;
  const first = pair('first', '400', 'breakout').breakout?.capacity ?? Number.NaN;
  expect(Math.abs(both / first - 1)).toBeLessThan(0.01);
  const whole = settingCard(completeInput('breakout')).breakout?.capacity ?? Number.NaN;
  expect(both).toBeLessThan(whole);
});
