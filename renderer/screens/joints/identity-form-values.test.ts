import { expect, test } from 'vitest';
import { jointData } from '../../../core/contract/joint.ts';
import { EMPTY_IDENTITY, identityForm } from './identity-form-values.ts';
import { EMPTY_JOINT, type JointForm, jointForm, jointInput } from './joint-form-values.ts';
import { jointGroups } from './joint-groups.ts';

const joint = (identity: Partial<JointForm['identity']>): JointForm => ({
  ...EMPTY_JOINT,
  tag: 'J-1',
  unitId: '01990000-0000-7000-8000-000000000001',
  flange: { ...EMPTY_JOINT.flange, size: '8', rating: '300' },
  identity: { ...EMPTY_IDENTITY, ...identity },
});
const stored = (identity: Partial<JointForm['identity']>) =>
  jointData.parse(jointInput(joint(identity), null));

test('an empty identity is not known, part by part', () => {
  expect(stored({}).identity).toMatchObject({
    type: null,
    landmark: '',
    distance: null,
    valveSide: null,
    neighbours: null,
    photo: null,
    confusableWith: null,
  });
  const [identity] = jointGroups(stored({}));
  expect(identity?.lines.filter(({ text }) => text !== null)).toEqual([]);
});

test('identity survives the way through the form', () => {
  const once = stored({
    type: 'girth flange',
    landmark: 'pump P-101',
    distance: { text: '1.5', unit: 'm' },
    direction: 'north',
    valve: 'XV-12',
    valveSide: 'downstream',
    neighbours: 'J-2; J-3 ;',
    confusableWith: [{ tag: 'J-11', tell: 'blue handwheel on this one' }],
    notApplicable: [{ field: 'room for the tool', reason: 'tightened by hand' }],
  });
  expect(once.identity).toMatchObject({ valveSide: 'downstream', neighbours: ['J-2', 'J-3'] });
  expect(jointData.parse(jointInput(jointForm(once), once))).toEqual(once);
  const [identity] = jointGroups(once);
  expect(identity?.lines.find(({ name }) => name === 'From the landmark')?.text).toBe('1.5 m north');
});

test('"none" says that somebody looked, an empty field that nobody did', () => {
  expect(stored({ neighbours: 'None' }).identity.neighbours).toEqual([]);
  expect(stored({ noneConfusable: true }).identity.confusableWith).toEqual([]);
  expect(stored({}).identity).toMatchObject({ neighbours: null, confusableWith: null });
  const none = stored({ neighbours: 'none', noneConfusable: true });
  expect(jointForm(none).identity).toMatchObject({ neighbours: 'none', noneConfusable: true });
});

test('a joint stored before identity was kept opens with empty fields', () => {
  const { identity: _, ...earlier } = stored({});
  expect(identityForm(earlier as ReturnType<typeof stored>)).toEqual(EMPTY_IDENTITY);
});
