import { expect, test } from 'vitest';
import { settingCard } from '../../core/setting/card.ts';
import { freeze } from '../../core/units/round.ts';
import { workedJointA } from '../truth/worked-joint-a.ts';

test('the card of worked joint A is what it was when it was last looked at', async () => {
  const card = JSON.stringify(freeze(settingCard(workedJointA())), null, 2);
  await expect(`${card}\n`).toMatchFileSnapshot('worked-joint-a.snap');
});
