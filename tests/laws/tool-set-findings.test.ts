import { describe, expect, test } from 'vitest';
import { settingCard } from '../../core/setting/card.ts';
import { hoseLifeEnds } from '../../core/tools/hose.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput } from './complete-input.ts';
import type { Change } from './finding-case.ts';
import { cassette, driveCertificate, found, gauge, reducer } from './finding-parts.ts';

describe('the wrench’s certificate', () => {
  const validUntil = (date: string) =>
    settingCard(
      changed(completeInput('tightening'), (input) => {
        driveCertificate(input).validUntil = date;
      }),
    );

  test('lapsed yesterday is a refusal', () => {
    const card = validUntil('2026-03-15');
    expect(card.findings.map((finding) => [finding.code, finding.severity])).toEqual([
      ['certificate_lapsed', 'refusal'],
    ]);
    expect(card.issuable).toBe(false);
  });

  test('lapsing before the job’s end is a warning', () => {
    const card = validUntil('2026-03-16');
    expect(card.findings.map((finding) => [finding.code, finding.severity])).toEqual([
      ['certificate_lapses_during_job', 'warning'],
    ]);
    expect(card.issuable).toBe(true);
  });

  test('valid through the last day is in order', () => {
    expect(validUntil('2026-03-17').findings).toEqual([]);
  });
});

describe('an opening that does not take the nut', () => {
  const large: Change = (input) => {
    cassette(input).acrossFlats = typed('1-5/8', 'in');
    input.onRegister.reducers = [reducer('1-5/8', '1-7/16'), reducer('1-5/8', '1-1/4')];
  };

  test('names the reducer on the register that would', () => {
    const [finding] = found(changed(completeInput('tightening'), large), 'opening_too_large');
    expect(finding?.remedy).toContain('reducer R-03, 1-5/8 in to 1-7/16 in');
    expect(finding?.remedy).not.toContain('1-1/4');
  });

  test('does not name a reducer that is rated below the torque or barred', () => {
    const weak = changed(completeInput('tightening'), (input) => {
      large(input);
      const [first] = input.onRegister.reducers;
      if (first !== undefined) first.data.properties.ratedTorque = typed('200', 'N.m');
    });
    expect(found(weak, 'opening_too_large')[0]?.remedy).not.toContain('R-03');
    const barred = changed(completeInput('tightening'), (input) => {
      large(input);
      const [first] = input.onRegister.reducers;
      if (first !== undefined) first.data.status = 'quarantined';
    });
    expect(found(barred, 'opening_too_large')[0]?.remedy).not.toContain('R-03');
  });

  test('is in order with that reducer in the set', () => {
    const card = settingCard(
      changed(completeInput('tightening'), (input) => {
        large(input);
        input.set.reducers = [reducer('1-5/8', '1-7/16')];
        driveCertificate(input).withToolIds.push('018f0000-0000-7000-8000-000000000031');
      }),
    );
    expect(card.findings).toEqual([]);
  });

  test.each([
    ['36', 'mm', 'refused'],
    ['36.5', 'mm', 'refused'],
    ['36.5125', 'mm', 'accepted'],
    ['1-7/16', 'in', 'accepted'],
    ['1.4375', 'in', 'accepted'],
  ] as const)('a 7/8 in nut on %s %s is %s', (text, unit, verdict) => {
    const card = settingCard(
      changed(completeInput('tightening'), (input) => {
        cassette(input).acrossFlats = typed(text, unit);
      }),
    );
    expect(card.issuable).toBe(verdict === 'accepted');
  });
});

describe('every part of the set that is missing is named', () => {
  test.each(['drive', 'cassette', 'pump', 'gauge'] as const)('%s', (role) => {
    const card = settingCard(
      changed(completeInput('tightening'), (input) => {
        input.set[role] = null;
      }),
    );
    const missing = card.findings.filter((finding) => finding.code === 'part_missing');
    expect(missing.map((finding) => [finding.severity, finding.place.field])).toEqual([
      ['refusal', `${role}Id`],
    ]);
  });

  test('hose', () => {
    const card = settingCard(
      changed(completeInput('tightening'), (input) => {
        input.set.hoses = [];
      }),
    );
    expect(card.findings.map((finding) => [finding.code, finding.severity])).toEqual([
      ['part_missing', 'refusal'],
    ]);
    expect(card.findings[0]?.title).toBe('No hose chosen');
    expect(card.issuable).toBe(false);
  });
});

describe('a hose is in use for six years from the day it was made', () => {
  const card = (madeOn: string | null, endsOn = '2026-03-17') =>
    settingCard(
      changed(completeInput('tightening'), (input) => {
        input.endsOn = endsOn;
        const hose = input.set.hoses[0];
        if (hose === undefined) throw new Error('fixture: no hose');
        hose.data.properties.madeOn = madeOn;
      }),
    );

  test.each([
    ['2020-03-17', 'the last day is the job’s last'],
    ['2026-03-01', 'new'],
  ])('made on %s: %s', (madeOn) => {
    expect(card(madeOn).findings).toEqual([]);
  });

  test('a day too old at the end of the job, though not yet at its start', () => {
    const [finding, ...others] = card('2020-03-16').findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      code: 'hose_age',
      severity: 'warning',
      title: 'Hose too old',
      value: '2020-03-16',
      limit: '2026-03-16',
    });
    expect(finding?.detail).toContain('until 2026-03-16');
  });

  test('not known is not a pass', () => {
    const [finding, ...others] = card(null).findings;
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ code: 'hose_age', severity: 'warning', value: null, limit: null });
    expect(finding?.title).toBe('Age of the hose not known');
  });

  test('made on a leap day', () => {
    expect(hoseLifeEnds('2020-02-29')).toBe('2026-02-28');
  });
});

test('early passes below the certified points are a note while the final pass lies in the range', () => {
  const card = settingCard(
    changed(completeInput('tightening'), (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.points = measured.points.slice(2);
    }),
  );
  expect(card.findings.map((finding) => [finding.code, finding.severity])).toEqual([
    ['below_certified_points', 'note'],
  ]);
  expect(card.findings[0]?.detail).toContain('First third');
});

test('a pressure that rounds to the gauge’s zero mark is refused', () => {
  const card = settingCard(
    changed(completeInput('tightening'), (input) => {
      gauge(input).graduation = typed('600', 'bar');
    }),
  );
  expect(card.dial?.value).toBe(0);
  const rounding = card.findings.filter((finding) => finding.code === 'rounding_large');
  expect(rounding.map((finding) => finding.severity)).toEqual(['refusal']);
});

test('a torque target needs no friction, but the load behind it is then not known', () => {
  const card = settingCard(
    changed(completeInput('tightening'), (input) => {
      input.joint.data.target = { mode: 'torque', torque: typed('380', 'N.m'), basis: 'fixture' };
      input.joint.data.lubricant = null;
    }),
  );
  expect(card.dial?.value).toBe(260);
  expect(card.load).toBeNull();
  expect(card.issuable).toBe(true);
  expect(card.findings.map((finding) => [finding.code, finding.severity])).toEqual([
    ['friction_unknown', 'warning'],
  ]);
});

test('bolting that differs from the standard for a stated reason is a note that tells it', () => {
  const differing = (reason: string) =>
    settingCard(
      changed(completeInput('tightening'), ({ joint: { data } }) => {
        Object.assign(data.bolting, { count: 16, reason });
      }),
    ).findings.filter((finding) => finding.code === 'count_differs');
  expect(differing('').map(({ severity }) => severity)).toEqual(['warning']);
  const [note] = differing('flange drilled to drawing 12');
  expect(note?.severity).toBe('note');
  expect(note?.detail).toContain('Reason: flange drilled to drawing 12');
});
