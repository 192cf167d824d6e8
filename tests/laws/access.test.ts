import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { competenceOn, lastGoodDay } from '../../core/access/competence.ts';
import { mayOverride } from '../../core/access/overrides.ts';
import { afterWrong, nextTry, type WrongSecrets, waitAfter } from '../../core/access/waits.ts';
import { type CompetenceInput, competenceData } from '../../core/contract/access.ts';
import { FINDING_CODES } from '../../core/findings/codes.ts';

const PERSON = '018f0000-0000-7000-8000-000000000001';
const paper = (changes: Partial<CompetenceInput> = {}) =>
  competenceData.parse({
    personId: PERSON,
    scheme: 'site scheme',
    methods: ['hydraulic wrench'],
    certificate: 'K-7',
    issuedOn: '2024-03-01',
    validUntil: '2027-02-28',
    ...changes,
  });

describe('how long a competence counts', () => {
  test('EN 1591-4: five years, also where the paper states none or more', () => {
    const from = { scheme: 'EN 1591-4:2013', issuedOn: '2021-03-16' };
    expect(lastGoodDay({ ...from, validUntil: null })).toBe('2026-03-15');
    expect(lastGoodDay({ ...from, validUntil: '2030-01-01' })).toBe('2026-03-15');
    expect(lastGoodDay({ ...from, validUntil: '2024-01-01' })).toBe('2024-01-01');
  });

  test('issued on a leap day', () => {
    expect(lastGoodDay({ scheme: 'EN 1591-4', issuedOn: '2024-02-29', validUntil: null })).toBe('2029-02-27');
  });

  test('another scheme: what the paper states, and nothing where it states nothing', () => {
    expect(lastGoodDay({ scheme: 'EN 1591-40', issuedOn: '2021-03-16', validUntil: null })).toBeNull();
    expect(lastGoodDay({ scheme: 'site', issuedOn: '2021-03-16', validUntil: '2040-01-01' })).toBe(
      '2040-01-01',
    );
  });
});

describe('a person’s competence on a day', () => {
  const state = (papers: ReturnType<typeof paper>[], on = '2026-03-16') =>
    competenceOn(papers, 'hydraulic wrench', on).state;

  test.each([
    ['nothing recorded', [], 'not known'],
    ['in date for the method', [paper()], 'qualified'],
    ['for another method', [paper({ methods: ['tensioner'] })], 'not qualified'],
    ['no method named', [paper({ methods: [] })], 'not known'],
    ['no last day stated', [paper({ validUntil: null })], 'not known'],
    ['over', [paper({ validUntil: '2026-03-15' })], 'expired'],
    ['not yet', [paper({ issuedOn: '2026-03-17' })], 'not qualified'],
    ['withdrawn', [paper({ withdrawn: true })], 'not qualified'],
    ['one over, a later one in date', [paper({ validUntil: '2026-01-01' }), paper()], 'qualified'],
    [
      'over for this method, in date for another',
      [paper({ validUntil: '2026-01-01' }), paper({ methods: ['tensioner'] })],
      'expired',
    ],
    [
      'over, and withdrawn in date',
      [paper({ validUntil: '2026-01-01' }), paper({ withdrawn: true })],
      'expired',
    ],
  ] as const)('%s', (_, papers, expected) => {
    expect(state([...papers])).toBe(expected);
  });

  test('its first and last day count', () => {
    expect(state([paper()], '2024-03-01')).toBe('qualified');
    expect(state([paper()], '2027-02-28')).toBe('qualified');
    expect(state([paper()], '2027-03-01')).toBe('expired');
    expect(state([paper()], '2024-02-29')).toBe('not qualified');
  });

  test('a restriction is told with it', () => {
    const { state: stands, reason } = competenceOn(
      [paper({ restrictions: 'up to M36' })],
      'hydraulic wrench',
      '2026-03-16',
    );
    expect(stands).toBe('qualified');
    expect(reason).toBe('site scheme, K-7, until 2027-02-28; restricted: up to M36');
  });

  test('never qualified without a paper that names the method and covers the day', () => {
    const day = fc
      .integer({ min: 0, max: 4000 })
      .map((n) => new Date(Date.UTC(2020, 0, 1 + n)).toISOString().slice(0, 10));
    const papers = fc.array(
      fc.record({
        scheme: fc.constantFrom('EN 1591-4', 'site scheme'),
        methods: fc.subarray(['hydraulic wrench', 'tensioner'] as const).map((some) => [...some]),
        issuedOn: day,
        validUntil: fc.option(day),
        withdrawn: fc.boolean(),
      }),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(papers, day, (drawn, on) => {
        const sound = drawn
          .filter(({ issuedOn, validUntil }) => validUntil === null || validUntil >= issuedOn)
          .map((changes) => paper(changes));
        const covered = sound.some((one) => {
          const until = lastGoodDay(one);
          return (
            !one.withdrawn &&
            one.methods.includes('hydraulic wrench') &&
            one.issuedOn <= on &&
            until !== null &&
            on <= until
          );
        });
        expect(state(sound, on) === 'qualified').toBe(covered);
      }),
    );
  });
});

describe('overrides', () => {
  /** Entered apart from the program's list. */
  const ENGINEER = [
    'certificate_lapsed',
    'lines_disagree',
    'below_bolt_limit',
    'gasket_stress_low',
    'neighbour_in_the_way',
    'hub_in_the_way',
    'head_too_high',
  ];

  test('the engineer may override these, and nobody anything else', () => {
    const may = FINDING_CODES.filter((code) => mayOverride(code) !== null);
    expect(may.toSorted()).toEqual(ENGINEER.toSorted());
    for (const code of may) expect(mayOverride(code)?.roles).toEqual(['engineer']);
  });

  test.each([
    'torque_above_rating',
    'pressure_above_rating',
    'flange_rating_exceeded',
    'above_bolt_limit',
    'above_flange_limit',
    'above_yield',
    'strip_margin_low',
    'above_gauge_scale',
    'above_certified_points',
    'tool_barred',
    'tool_in_case',
    'tool_due',
    'certificate_outside_limits',
    'certificate_missing',
    'opening_too_small',
    'opening_too_large',
    'counterhold_does_not_fit',
    'friction_unknown',
    'target_missing',
    'thread_unknown',
    'rounding_large',
    'limits_conflict',
    'stud_short',
    'no such finding',
    'toString',
  ])('nobody overrides %s', (code) => {
    expect(mayOverride(code)).toBeNull();
  });
});

describe('wrong secrets', () => {
  test('five are free, then the wait doubles from half a minute to an hour', () => {
    expect([1, 4, 5, 6, 7, 11, 12, 400].map(waitAfter)).toEqual([0, 0, 30, 60, 120, 1920, 3600, 3600]);
  });

  test('after a wait the name is looked at again, and each further wrong secret makes it longer', () => {
    const kept: WrongSecrets = { count: 5, last: 1000 };
    expect(nextTry(kept, 1029)).toBe(1030);
    expect(nextTry(kept, 1030)).toBeNull();
    expect(nextTry(afterWrong(kept, 1030), 1031)).toBe(1090);
    expect(nextTry(null, 0)).toBeNull();
  });

  test('a day without any starts afresh', () => {
    expect(afterWrong({ count: 9, last: 0 }, 86_401)).toEqual({ count: 1, last: 86_401 });
    expect(afterWrong({ count: 9, last: 0 }, 86_400)).toEqual({ count: 10, last: 86_400 });
  });

  test('whoever guesses without a pause has few guesses in a day', () => {
    let kept: WrongSecrets | null = null;
    let guesses = 0;
    for (let now = 0; now < 86_400; now += 1) {
      if (nextTry(kept, now) !== null) continue;
      kept = afterWrong(kept, now);
      guesses += 1;
    }
    expect(guesses).toBeLessThan(40);
  });

  test('a clock set back does not lengthen the wait beyond its own length', () => {
    expect(nextTry({ count: 5, last: 9000 }, 100)).toBe(130);
  });
});
