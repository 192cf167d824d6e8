import { describe, expect, test } from 'vitest';
import { FINDING_CODES, type FindingCode } from '../../core/findings/codes.ts';
import { settingCard } from '../../core/setting/card.ts';
import type { CardInput } from '../../core/setting/input.ts';
import { hoseLifeEnds } from '../../core/tools/hose.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import type { Case, Change } from './finding-case.ts';
import { L7M_CONFIRMED, SITE_PLAN } from './site-fixtures.ts';
import { TOOL_ROOM_CASES } from './tool-room-cases.ts';

function drive(input: InputDraft) {
  if (input.set.drive === null) throw new Error('fixture: no drive unit');
  return input.set.drive;
}

function driveCertificate(input: InputDraft) {
  const certificate = drive(input).certificates[0];
  if (certificate === undefined) throw new Error('fixture: no certificate');
  return certificate.data;
}

function cassette(input: InputDraft) {
  if (input.set.cassette === null) throw new Error('fixture: no cassette');
  return input.set.cassette.data.properties;
}

function gauge(input: InputDraft) {
  if (input.set.gauge === null) throw new Error('fixture: no gauge');
  return input.set.gauge.data.properties;
}

function lubricant(input: InputDraft) {
  if (input.joint.data.lubricant === null) throw new Error('fixture: no lubricant');
  return input.joint.data.lubricant;
}

function gasket(input: InputDraft) {
  if (input.joint.data.gasket === null) throw new Error('fixture: no gasket');
  return input.joint.data.gasket;
}

function handWrench(most: string): InputDraft['torqueTool'] {
  return {
    toolId: null,
    number: 'HW-1',
    scale: {
      by: 'torque',
      least: typed('40', 'N.m'),
      most: typed(most, 'N.m'),
      graduation: typed('5', 'N.m'),
    },
    certificate: 'invented 7',
    validUntil: '2027-01-09',
  };
}

const target =
  (share: string): Change =>
  (input) => {
    input.joint.data.target = {
      mode: 'percent of yield',
      percent: typed(share, 'percent'),
      area: 'tensile',
      basis: 'fixture',
    };
  };

const noLimits: Change = (input) => {
  Object.assign(input.joint.data.limits, { boltStressMax: null, flangeBoltStressMax: null });
};

const custom: Change = (input) => {
  input.joint.data.flange = { kind: 'custom', description: 'girth flange', siteRow: null };
};

function reducer(outer: string, inner: string): InputDraft['set']['reducers'][number] {
  return {
    id: '018f0000-0000-7000-8000-000000000031',
    data: {
      number: 'R-03',
      serial: '',
      status: 'available',
      place: '',
      remarks: '',
      owner: { kind: 'own' },
      weight: null,
      properties: {
        class: 'reducer',
        outerAcrossFlats: typed(outer, 'in'),
        acrossFlats: typed(inner, 'in'),
        looseness: typed('0.2', 'mm'),
        ratedTorque: typed('900', 'N.m'),
      },
    },
    certificates: [],
  };
}

/** For every code, a change of an input that has nothing against it which makes the finding appear. */
const CASES: Record<FindingCode, Case> = {
  ...TOOL_ROOM_CASES,
  thread_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.thread = '7/8-19 UNC';
    },
  },
  bolt_count_unknown: {
    severity: 'refusal',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.count = null;
    },
  },
  bolt_circle_unknown: {
    severity: 'note',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.circle = null;
    },
  },
  yield_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.grade = 'a grade of no table';
    },
  },
  nut_unknown: { severity: 'warning', change: custom },
  friction_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.lubricant = null;
    },
  },
  target_missing: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.target = null;
    },
  },
  limit_unknown: { severity: 'note', change: noLimits },
  looseness_unknown: {
    severity: 'note',
    change: (input) => {
      cassette(input).looseness = null;
    },
  },
  clearance_unknown: {
    severity: 'note',
    change: (input) => {
      input.joint.data.space.radialGap = null;
    },
  },
  protrusion_unknown: {
    severity: 'note',
    change: (input) => {
      custom(input);
      input.joint.data.bolting.nutSeries = 'ASME B18.2.2 heavy hex';
      input.joint.data.bolting.studLength = null;
    },
  },
  rating_unknown: {
    severity: 'warning',
    change: (input) => {
      cassette(input).ratedTorque = null;
    },
  },
  part_missing: {
    severity: 'refusal',
    change: (input) => {
      input.set.pump = null;
    },
  },
  gauge_certificate_points_missing: {
    severity: 'note',
    change: (input) => {
      const measured = input.set.gauge?.certificates[0]?.data.measured;
      if (measured?.kind === 'gauge') measured.points = [];
    },
  },
  plan_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.planId = 'a plan of nobody';
    },
  },
  plan_not_approved: {
    severity: 'refusal',
    change: (input) => {
      input.planId = SITE_PLAN.id;
      input.site.plan = structuredClone(SITE_PLAN);
    },
  },
  friction_assumed: {
    severity: 'warning',
    change: (input) => {
      lubricant(input).evidence = 'assumed';
    },
  },
  table_value_unconfirmed: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.grade = 'ASTM A320 L7M';
    },
  },
  table_value_confirmed: {
    severity: 'note',
    change: (input) => {
      input.joint.data.bolting.grade = 'ASTM A320 L7M';
      input.site.confirmations = [structuredClone(L7M_CONFIRMED)];
    },
  },
  count_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.count = 8;
    },
  },
  thread_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.thread = '3/4-10 UNC';
    },
  },
  circle_differs: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.circle = typed('331', 'mm');
    },
  },
  limits_conflict: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMin = typed('460', 'MPa');
    },
  },
  above_bolt_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMax = typed('360', 'MPa');
    },
  },
  below_bolt_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.boltStressMin = typed('400', 'MPa');
    },
  },
  above_flange_limit: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.limits.flangeBoltStressMax = typed('300', 'MPa');
    },
  },
  above_yield: {
    severity: 'refusal',
    change: (input) => {
      noLimits(input);
      target('99')(input);
    },
  },
  stud_short: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('130', 'mm');
    },
  },
  stud_protrusion_low: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('133', 'mm');
    },
  },
  stud_protrusion_unusual: {
    severity: 'note',
    change: (input) => {
      input.joint.data.bolting.studLength = typed('160', 'mm');
    },
  },
  opening_too_small: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).acrossFlats = typed('36', 'mm');
    },
  },
  opening_too_large: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).acrossFlats = typed('1-5/8', 'in');
    },
  },
  reducer_does_not_fit: {
    severity: 'refusal',
    change: (input) => {
      input.set.reducers = [reducer('2', '1-7/16')];
    },
  },
  family_differs: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).family = 'F2';
    },
  },
  neighbour_in_the_way: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).headRadius = typed('65', 'mm');
    },
  },
  hub_in_the_way: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.space.radialGap = typed('30', 'mm');
    },
  },
  torque_above_rating: {
    severity: 'refusal',
    change: (input) => {
      cassette(input).ratedTorque = typed('380', 'N.m');
    },
  },
  pressure_above_rating: {
    severity: 'refusal',
    change: (input) => {
      if (input.set.pump !== null) input.set.pump.data.properties.ratedPressure = typed('250', 'bar');
    },
  },
  breakout_above_wrench: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      drive(input).data.properties.ratedTorque = typed('600', 'N.m');
    },
  },
  breakout_above_stud: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      input.lastTightening = { torque: 384, happenedAt: '2025-05-04T10:00:00+02:00', eventId: 'invented' };
    },
  },
  installed_torque_unknown: {
    kind: 'breakout',
    severity: 'warning',
    change: (input) => {
      input.lastTightening = null;
    },
  },
  above_gauge_scale: {
    severity: 'refusal',
    change: (input) => {
      gauge(input).scaleMax = typed('250', 'bar');
    },
  },
  gauge_scale_end: {
    severity: 'warning',
    change: (input) => {
      gauge(input).scaleMax = typed('1600', 'bar');
    },
  },
  rounding_large: {
    severity: 'note',
    change: (input) => {
      gauge(input).graduation = typed('50', 'bar');
    },
  },
  certificate_missing: {
    severity: 'refusal',
    change: (input) => {
      drive(input).certificates = [];
    },
  },
  certificate_lapsed: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).validUntil = '2026-03-15';
    },
  },
  certificate_lapses_during_job: {
    severity: 'warning',
    change: (input) => {
      driveCertificate(input).validUntil = '2026-03-16';
    },
  },
  certificate_later_than_job: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).calibratedOn = '2026-03-17';
    },
  },
  certificate_outside_limits: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).result = 'outside limits';
    },
  },
  combination_not_certified: {
    severity: 'warning',
    change: (input) => {
      driveCertificate(input).withToolIds = [];
    },
  },
  certificate_not_straight: {
    severity: 'refusal',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind !== 'pressure-torque') return;
      measured.points = measured.points.map((point, index) =>
        index === 3 ? { ...point, torque: { ...point.torque, si: point.torque.si * 1.8 } } : point,
      );
    },
  },
  reference_uncertainty_unknown: {
    severity: 'note',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.expandedUncertainty = null;
    },
  },
  above_certified_points: {
    severity: 'refusal',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.points = measured.points.slice(0, 3);
    },
  },
  below_certified_points: {
    severity: 'warning',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.points = measured.points.slice(4);
    },
  },
  tool_not_available: {
    severity: 'warning',
    change: (input) => {
      drive(input).data.status = 'at the laboratory';
    },
  },
  hose_age: {
    severity: 'warning',
    change: (input) => {
      const hose = input.set.hoses[0];
      if (hose === undefined) throw new Error('fixture: no hose');
      hose.data.properties.madeOn = null;
    },
  },
  tool_barred: {
    severity: 'refusal',
    change: (input) => {
      drive(input).data.status = 'quarantined';
    },
  },
  job_ends_before_start: {
    severity: 'refusal',
    change: (input) => {
      input.endsOn = '2026-03-15';
    },
  },
  bolt_set_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.boltSet = 1;
    },
  },
  gasket_target_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.target = { mode: 'component limits', basis: 'fixture' };
      gasket(input).targetStress = null;
    },
  },
  check_not_made: {
    severity: 'note',
    change: (input) => {
      gasket(input).seatingStress = null;
    },
  },
  torque_tool_unknown: {
    severity: 'refusal',
    change: (input) => {
      input.method = 'hand torque wrench';
    },
  },
  gasket_target_not_reached: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.target = { mode: 'component limits', basis: 'fixture' };
      gasket(input).targetStress = typed('180', 'MPa');
    },
  },
  gasket_stress_low: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).seatingStress = typed('130', 'MPa');
    },
  },
  gasket_stress_high: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).stressMax = typed('100', 'MPa');
    },
  },
  flange_rotation_high: {
    severity: 'refusal',
    change: (input) => {
      gasket(input).rotationMax = typed('0.2', 'deg');
    },
  },
  joint_parts: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.pressures.test.pressure = typed('300', 'bar');
    },
  },
  below_code_minimum: {
    severity: 'warning',
    change: (input) => {
      gasket(input).stressY = typed('300', 'MPa');
    },
  },
  hot_load_low: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.hot.boltExpansion = typed('24', 'um/m.K');
    },
  },
  above_yield_hot: {
    severity: 'warning',
    change: (input) => {
      input.joint.data.hot.boltYieldHot = typed('300', 'MPa');
    },
  },
  strip_margin_low: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.bolting.nutTensileStrength = typed('150', 'MPa');
    },
  },
  flange_rating_exceeded: {
    severity: 'refusal',
    change: (input) => {
      input.joint.data.pressures.design.pressure = typed('45', 'bar');
    },
  },
  torque_tool_unsuitable: {
    severity: 'refusal',
    change: (input) => {
      input.method = 'hand torque wrench';
      input.torqueTool = handWrench('200');
    },
  },
  further_tools_unchecked: {
    severity: 'warning',
    change: (input) => {
      input.planId = 'two-tools-thirds';
    },
  },
  tension_has_no_torque: {
    severity: 'note',
    change: (input) => {
      input.method = 'tensioner';
    },
  },
};

function found(input: CardInput, code: FindingCode) {
  return settingCard(input).findings.filter((finding) => finding.code === code);
}

test.each(['tightening', 'breakout'] as const)('a complete %s has nothing against it', (kind) => {
  const card = settingCard(completeInput(kind));
  expect(card.findings).toEqual([]);
  expect(card.issuable).toBe(true);
});

describe.each(FINDING_CODES)('%s', (code) => {
  const { kind = 'tightening', severity, change } = CASES[code];

  test('is silent where nothing is wrong', () => {
    expect(found(completeInput(kind), code)).toEqual([]);
  });

  test(`appears as a ${severity}, in words, with a place to mend it`, () => {
    const input = changed(completeInput(kind), change);
    const findings = found(input, code);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.map((finding) => finding.severity)).toContain(severity);
    for (const finding of findings) {
      expect(finding.title.length).toBeGreaterThan(5);
      expect(finding.detail).not.toMatch(/NaN|undefined|null|Infinity/);
      expect(finding.remedy.length).toBeGreaterThan(10);
      expect(finding.source.length).toBeGreaterThan(2);
    }
    expect(settingCard(input).issuable).toBe(
      settingCard(input).findings.every((finding) => finding.severity !== 'refusal'),
    );
  });
});

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
