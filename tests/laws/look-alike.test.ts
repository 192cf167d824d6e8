import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jointIdentity } from '../../core/contract/identity.ts';
import { lookAlikes, type SeenJoint } from '../../core/joint/look-alike.ts';

const PLAIN: SeenJoint = {
  id: 'own',
  tag: 'HX-310 N3',
  unitId: 'u1',
  unitName: 'Unit 100',
  service: 'hot residue',
  flange: 'NPS 8 Class 300',
  bolting: '12 × 7/8-9 UNC',
  location: 'shell outlet',
  identity: jointIdentity.parse({}),
  isolated: null,
};

function joint(tag: string, changes: Partial<SeenJoint> = {}, identity: object = {}): SeenJoint {
  return { ...PLAIN, id: tag, tag, ...changes, identity: jointIdentity.parse(identity) };
}
const own = (identity: object, changes: Partial<SeenJoint> = {}) => ({
  ...PLAIN,
  ...changes,
  identity: jointIdentity.parse(identity),
});
const OTHER = { service: 'steam', flange: 'NPS 2 Class 150' };
const found = (one: SeenJoint, ...others: SeenJoint[]) =>
  lookAlikes(one, others).map(({ joint: { tag }, reasons }) => [tag, ...reasons]);

describe('a joint could be taken for another', () => {
  test('when either of them names the other', () => {
    const named = own({ confusableWith: [{ tag: 'v-77 a', tell: 'blue handwheel here' }] });
    expect(found(named, joint('V-77 A', OTHER))).toEqual([
      ['V-77 A', 'named as a joint this one could be taken for'],
    ]);
    const naming = joint('V-77 A', OTHER, { confusableWith: [{ tag: 'HX-310 N3' }] });
    expect(found(PLAIN, naming)).toEqual([['V-77 A', 'it names this joint as one it could be taken for']]);
  });

  test('when they lie on both sides of one valve, or nobody says on which', () => {
    const here = own({ valve: 'XV-12', valveSide: 'upstream' });
    const at = (valveSide: string | null) => joint('K-1', OTHER, { valve: 'xv-12', valveSide });
    expect(found(here, at('downstream'))[0]?.[1]).toBe(
      'on another side of the same valve XV-12: downstream, this one upstream',
    );
    expect(found(here, at(null))[0]?.[1]).toBe('at the same valve XV-12, side not known');
    expect(found(here, joint('K-1', OTHER, { valve: 'XV-13', valveSide: 'downstream' }))).toEqual([]);
  });

  test('when their tags read alike or two characters are swapped, whatever they look like', () => {
    const one = own({}, { tag: 'P-101 N1' });
    expect(found(one, joint('P-1O1 N1', OTHER))[0]?.[1]).toContain('read alike');
    expect(found(one, joint('P-011 N1', OTHER))[0]?.[1]).toContain('swapped');
  });

  test('at sister equipment of the same flange; of another flange they are told apart at sight', () => {
    expect(found(PLAIN, joint('HX-311 N3'))).toEqual([
      [
        'HX-311 N3',
        'at a sister: 311 in the tag where this one has 310',
        'same flange and service: NPS 8 Class 300, hot residue',
      ],
    ]);
    expect(found(PLAIN, joint('HX-311 N3', OTHER))).toEqual([]);
  });

  test('of the same looks only when it is near, or its tag is', () => {
    const far = joint('K-900 S7');
    expect(found(PLAIN, far)).toEqual([]);
    expect(found(own({ neighbours: ['K-900 S7'] }), far)[0]).toContain('next to it on the line');
    const here = own({ landmark: 'pump P-1', line: 'L-1' });
    expect(found(here, joint('K-900 S7', {}, { landmark: 'Pump P-1' }))[0]).toContain(
      'by the same landmark: pump P-1',
    );
    expect(found(here, joint('K-900 S7', {}, { line: 'L-1' }))[0]).toContain('on the same line: L-1');
    expect(found(own({}, { tag: 'J-100-001' }), joint('J-100-002'))[0]).toContain(
      'the tags differ by one character',
    );
    expect(found(own({}, { tag: 'J-100-001' }), joint('J-100-002', OTHER))).toEqual([]);
  });

  test('the more so when one is isolated and the other is not; not known is neither', () => {
    const isolated = own({}, { isolated: true });
    const live = joint('HX-311 N3', { isolated: false });
    const shut = joint('HX-309 N3', { isolated: true });
    const unknown = joint('HX-312 N3', { isolated: null });
    const result = lookAlikes(isolated, [shut, unknown, live]);
    expect(result.map(({ joint: { tag }, oneIsLive }) => [tag, oneIsLive])).toEqual([
      ['HX-311 N3', true],
      ['HX-309 N3', false],
      ['HX-312 N3', false],
    ]);
    expect(result[0]?.reasons).toContain('it is not isolated, and this one is');
    expect(found(isolated, joint('K-900', { ...OTHER, isolated: false }))).toEqual([]);
  });
});

test('what tells them apart is what both say, and what is known to differ', () => {
  const here = own({
    valve: 'XV-12',
    valveSide: 'upstream',
    landmark: 'pump P-1',
    distance: { text: '1.5', unit: 'm' },
    direction: 'north',
    confusableWith: [{ tag: 'HX-311 N3', tell: 'blue handwheel' }],
  });
  const there = joint(
    'HX-311 N3',
    {},
    { valve: 'XV-12', valveSide: 'downstream', confusableWith: [{ tag: 'HX-310 N3', tell: 'no handwheel' }] },
  );
  const [first] = lookAlikes(here, [there]);
  expect(first?.tells).toEqual(['HX-310 N3: blue handwheel', 'HX-311 N3: no handwheel']);
  expect(first?.differences).toEqual([
    { what: 'Side of valve', here: 'upstream of XV-12', there: 'downstream of XV-12' },
    { what: 'Landmark', here: '1.5 m north from pump P-1', there: null },
  ]);
});

test('the joint itself is never its look-alike, and the order of the list does not matter', () => {
  const tags = ['HX-310 N2', 'HX-311 N3', 'HX-301 N3', 'HX-310 N3B', 'HX-3I0 N3', 'V-1', 'HX-310'];
  const others = tags.map((tag) => joint(tag));
  const expected = found(PLAIN, ...others);
  expect(expected.length).toBeGreaterThan(3);
  fc.assert(
    fc.property(fc.shuffledSubarray(others, { minLength: others.length }), (shuffled) => {
      expect(found(PLAIN, PLAIN, ...shuffled)).toEqual(expected);
    }),
  );
});
