import { expect, test } from 'vitest';
import type { SettingCard } from '../../core/contract/setting.ts';
import { settingCard } from '../../core/setting/card.ts';
import { recompute } from '../../core/setting/recompute.ts';
import { freeze } from '../../core/units/round.ts';
import { CORE_VERSION } from '../../core/version.ts';
import { changed, completeInput } from './complete-input.ts';

const input = { ...completeInput('tightening'), withUncertainty: true };
const card = freeze(settingCard(input));

/** The frozen card as an event's JSON gives it back. */
const stored = (changes: Partial<SettingCard> = {}): SettingCard =>
  JSON.parse(JSON.stringify({ ...card, ...changes })) as SettingCard;

test.each(['tightening', 'breakout'] as const)(
  'a frozen %s card comes out equal from its frozen input',
  (kind) => {
    const own = completeInput(kind);
    const again = recompute(JSON.parse(JSON.stringify(own)), freeze(settingCard(own)));
    expect(again).toMatchObject({ equal: true, count: 0, differences: [] });
  },
);

test('the last of twelve digits is enough to differ, the thirteenth is not', () => {
  const torque = card.torque ?? Number.NaN;
  const step = 10 ** (Math.floor(Math.log10(torque)) - 11);
  expect(recompute(input, stored({ torque: freeze(torque + step / 100) })).equal).toBe(true);
  const again = recompute(input, stored({ torque: freeze(torque + step) }));
  expect(again.differences).toEqual([
    { place: 'torque', frozen: String(freeze(torque + step)), now: String(freeze(torque)) },
  ]);
  expect(again.finding).toContain('The record or the program has been changed');
});

test('a newer core says what differs and does not call it a change of the record', () => {
  const older = stored({ coreVersion: '0.0.1' });
  expect(recompute(input, older)).toMatchObject({ equal: true, coreThen: '0.0.1', coreNow: CORE_VERSION });
  const passes = card.passes.map((pass, index) =>
    index === 1 ? { ...pass, stopWhen: 'another rule' } : pass,
  );
  const again = recompute(input, stored({ coreVersion: '0.0.1', passes, planName: 'another plan' }));
  expect(again.differences.map(({ place }) => place)).toEqual(['planName', 'passes, 2, stopWhen']);
  expect(again.finding).toBe(`Computed with core 0.0.1; with core ${CORE_VERSION} 2 places differ.`);
});

test('what an older core did not write, and what a newer one no longer does, both show', () => {
  const { hot: _, ...rest } = stored();
  const bare = { ...rest, retired: 1 } as unknown as SettingCard;
  const again = recompute(input, bare);
  expect(again.differences).toEqual(
    expect.arrayContaining([
      { place: 'retired', frozen: '1', now: 'not there' },
      expect.objectContaining({ place: 'hot', frozen: 'not there' }),
    ]),
  );
});

test('an input frozen before the tool room existed is read as one without it', () => {
  const own = changed(completeInput('tightening'), ({ set }) => {
    Object.assign(set, { couplers: [], counterhold: null });
    for (const tool of [set.pump, set.drive, ...set.hoses]) {
      if (tool !== null) tool.data.properties.coupling = '';
    }
    if (set.cassette === null) throw new Error('fixture: no cassette');
    Object.assign(set.cassette.data.properties, {
      height: null,
      bore: null,
      openThrough: false,
      reactionArm: null,
    });
  });
  const older = JSON.parse(JSON.stringify(own)) as typeof own;
  for (const field of ['toolRoom', 'handWrench']) Reflect.deleteProperty(older, field);
  for (const field of ['couplers', 'counterhold', 'further']) Reflect.deleteProperty(older.set, field);
  const added = [
    'coupling',
    'connections',
    'height',
    'bore',
    'studRoom',
    'openThrough',
    'reactionArm',
    'alsoPrinted',
  ];
  const { pump, gauge, drive, cassette, hoses } = older.set;
  for (const tool of [pump, gauge, drive, cassette, ...hoses]) {
    if (tool === null) throw new Error('fixture: a part is missing');
    for (const field of added) Reflect.deleteProperty(tool.data.properties, field);
    for (const field of ['owner', 'weight']) Reflect.deleteProperty(tool.data, field);
  }
  expect(recompute(older, freeze(settingCard(own)))).toMatchObject({ equal: true, differences: [] });
});

test('an input frozen before a field existed is read with the field not known', () => {
  const older = JSON.parse(JSON.stringify(input)) as typeof input;
  Reflect.deleteProperty(older.joint.data, 'furtherGaskets');
  Reflect.deleteProperty(older.joint.data.bolting, 'reason');
  expect(recompute(older, card).equal).toBe(true);
});
