import { describe, expect, test } from 'vitest';
import type { WorkKind } from '../../core/contract/setting.ts';
import { type Confirmation, confirmData } from '../../core/contract/site.ts';
import { proofCells } from '../../core/reference/nut-proof.ts';
import { ratingCells } from '../../core/reference/ratings.ts';
import { tableCells } from '../../core/reference/table-cells.ts';
import { temperatureCells } from '../../core/reference/temperature.ts';
import { settingCard } from '../../core/setting/card.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import { L7M_CONFIRMED } from './site-fixtures.ts';

type Change = (input: InputDraft) => void;

const card = (change: Change, kind: WorkKind = 'tightening') =>
  settingCard(changed(completeInput(kind), change));

const about = (change: Change, kind: WorkKind = 'tightening') =>
  card(change, kind).findings.filter(({ code }) => code.startsWith('table_value'));

/** Only the yield strength is left to the table. */
const withGrade: Change = ({ joint: { data } }) => {
  data.bolting.grade = 'ASTM A320 L7M';
  data.bolting.tensileStrength = typed('690', 'MPa');
};

/** What a standard flange fills in, but for its grip length, is left to its table. */
const ofStandard =
  (flange: Omit<Extract<InputDraft['joint']['data']['flange'], { kind: 'standard' }>, 'kind'>): Change =>
  ({ joint: { data } }) => {
    data.flange = { kind: 'standard', ...flange };
    Object.assign(data.bolting, { count: null, thread: null, circle: null, studLength: null });
    data.space.radialGap = null;
  };

/** What the findings ask for, as a person would confirm it. */
function confirmedAll(input: Change): Confirmation[] {
  return about(input).flatMap(({ confirm }) =>
    (confirm?.values ?? []).map((value) => ({
      ...value,
      table: confirm?.table ?? '',
      key: confirm?.key ?? '',
      person: 'A. Person',
      sourceSeen: 'own copy',
      at: '2026-03-16T09:00:00+01:00',
    })),
  );
}

describe('a strength with one source', () => {
  test.each(['tightening', 'breakout'] as const)('refuses a %s until it is confirmed', (kind) => {
    const [found, ...more] = about(withGrade, kind);
    expect(more).toEqual([]);
    expect(found).toMatchObject({
      severity: 'refusal',
      title: 'Yield strength: one source only, not confirmed',
      confirm: {
        table: L7M_CONFIRMED.table,
        key: L7M_CONFIRMED.key,
        values: [{ field: 'yield', value: '80 ksi' }],
      },
    });
    expect(card(withGrade, kind).issuable).toBe(false);
  });

  test('is in use once a person confirmed it', () => {
    const confirmed: Change = (input) => {
      withGrade(input);
      input.site.confirmations = [structuredClone(L7M_CONFIRMED)];
    };
    expect(about(confirmed).map(({ severity }) => severity)).toEqual(['note']);
    expect(card(confirmed).findings.filter(({ severity }) => severity === 'refusal')).toEqual([]);
  });

  test('is not asked for where the joint has a strength of its own', () => {
    const own: Change = (input) => {
      withGrade(input);
      input.joint.data.bolting.yieldStrength = typed('550', 'MPa');
      input.joint.data.bolting.yieldOrigin = 'mill certificate 4';
    };
    expect(about(own)).toEqual([]);
  });
});

describe('a flange row with one source', () => {
  // ASME B16.47 series A, class 400: one source for bolting and hub.
  const large = ofStandard({ standard: 'ASME B16.47 A', size: '26', rating: '400', facing: 'raised face' });
  const refused = (change: Change) => about(change).filter(({ severity }) => severity === 'refusal');

  test('names each value once, with the row it stands in', () => {
    const fields = refused(large).map(({ confirm }) => confirm?.values.map(({ field }) => field));
    expect(fields).toEqual([['count', 'thread', 'circle', 'studLength'], ['hub']]);
    expect(refused(large).map(({ confirm }) => confirm?.key)).toEqual(['26 | 400', '26 | 400']);
  });

  test('is in use once all of it is confirmed, and not before', () => {
    const all = confirmedAll(large);
    const confirming =
      (confirmations: Confirmation[]): Change =>
      (input) => {
        large(input);
        input.site.confirmations = confirmations;
      };
    expect(all).toHaveLength(5);
    expect(refused(confirming(all))).toEqual([]);
    for (const left of all) {
      const rest = refused(confirming(all.filter((one) => one !== left)));
      expect(rest.map(({ confirm }) => confirm?.values)).toEqual([
        [{ field: left.field, value: left.value }],
      ]);
    }
  });

  test('asks for circle and hub only where a wrench’s head has to pass', () => {
    const noHead: Change = (input) => {
      large(input);
      if (input.set.cassette !== null) input.set.cassette.data.properties.headRadius = null;
      if (input.set.drive !== null) input.set.drive.data.properties.headRadius = null;
    };
    expect(refused(noHead).map(({ confirm }) => confirm?.values.map(({ field }) => field))).toEqual([
      ['count', 'thread', 'studLength'],
    ]);
    const notes = about(noHead).filter(({ severity }) => severity === 'note');
    expect(notes.map(({ detail }) => detail.includes('does not rest on it'))).toEqual([true]);
  });

  test('is not asked for where everything was counted and measured', () => {
    const measured: Change = (input) => {
      const { bolting, space } = structuredClone(input.joint.data);
      large(input);
      Object.assign(input.joint.data, { bolting, space });
    };
    expect(about(measured)).toEqual([]);
  });
});

describe('a ring number with one source', () => {
  // ASME B16.5, NPS 10 class 300: groove and stand-off agree, the ring's number has one source.
  const ringed: Change = (input) => {
    ofStandard({ standard: 'ASME B16.5', size: '10', rating: '300', facing: 'ring joint' })(input);
    Object.assign(input.joint.data.bolting, { studLength: typed('190', 'mm'), grip: null });
  };

  test('is what the grip length waits for', () => {
    const found = about(ringed).filter(({ severity }) => severity === 'refusal');
    expect(found.map(({ title, confirm }) => [title, confirm?.values])).toEqual([
      ['Grip length: one source only, not confirmed', [{ field: 'ring', value: 'R53' }]],
    ]);
  });

  test('is of no use to a breakout', () => {
    expect(about(ringed, 'breakout').map(({ severity }) => severity)).not.toContain('refusal');
  });
});

describe('a material value with one source', () => {
  const refused = (change: Change) => about(change).filter(({ severity }) => severity === 'refusal');
  const confirming =
    (change: Change): Change =>
    (input) => {
      change(input);
      input.site.confirmations = confirmedAll(change);
    };

  const tensile: Change = ({ joint: { data } }) => {
    Object.assign(data.bolting, { grade: 'ASTM A320 L7M', yieldStrength: typed('550', 'MPa') });
  };
  const nut: Change = ({ joint: { data } }) => {
    Object.assign(data.bolting, { nutGrade: 'ASTM A194 4', nutTensileStrength: null });
  };
  // Printed at 200 °C by two sources and at 225 °C by one.
  const expansion: Change = ({ joint: { data } }) => {
    data.hot.boltExpansion = null;
    data.hot.boltTemperature = typed('210', 'degC');
  };
  // Printed at 775, 800 and 816 °C by one source.
  const rating: Change = ({ joint: { data } }) => {
    data.flangeMaterial = '2.1';
    data.pressures.design.temperature = typed('785', 'degC');
    data.pressures.operating.temperature = typed('810', 'degC');
  };

  test.each([
    ['the strip margin', tensile, ['Tensile strength'], ['100 ksi']],
    ['the strip margin, by the nut', nut, ['Proof stress of the nut'], ['175 ksi']],
    ['the load hot', expansion, ['Expansion of the studs'], ['12.9 µm/(m·K)']],
  ] as const)('is what %s waits for', (_, change, what, values) => {
    const found = refused(change);
    expect(found.map(({ title }) => title)).toEqual(
      what.map((name) => `${name}: one source only, not confirmed`),
    );
    expect(found.flatMap(({ confirm }) => confirm?.values.map(({ value }) => value))).toEqual(values);
    expect(refused(confirming(change))).toEqual([]);
    expect(about(confirming(change)).map(({ code }) => code)).toContain('table_value_confirmed');
  });

  test('is what the flange’s rating waits for, temperature by temperature', () => {
    const found = refused(rating);
    expect(found.map(({ confirm }) => confirm?.key)).toEqual([
      '2.1 | 300 | 775 °C',
      '2.1 | 300 | 800 °C',
      '2.1 | 300 | 816 °C',
    ]);
    expect(new Set(found.map(({ title }) => title))).toEqual(
      new Set(['Flange rating: one source only, not confirmed']),
    );
    expect(refused(confirming(rating))).toEqual([]);
  });

  test.each([
    ['tensile', tensile],
    ['nut', nut],
    ['expansion', expansion],
    ['rating', rating],
  ] as const)('is found again in its table by what the finding names: %s', (_, change) => {
    const asked = refused(change).flatMap(({ confirm }) => (confirm === null ? [] : [confirm]));
    expect(asked.length).toBeGreaterThan(0);
    for (const { table, key, values } of asked) {
      const cells = tableCells(table, key).map(({ field, value }) => ({ field, value }));
      expect(cells).toEqual(expect.arrayContaining(values));
    }
  });

  test('is of no use where nothing was computed from it', () => {
    const noStrip: Change = (input) => {
      tensile(input);
      Object.assign(input.joint.data.bolting, { nutGrade: null, nutTensileStrength: null });
    };
    expect(about(noStrip).map(({ severity }) => severity)).toEqual(['note']);
  });

  test('has a name of its own that a confirmation can keep', () => {
    const cells = [...temperatureCells(), ...ratingCells(), ...proofCells()];
    expect(cells.length).toBeGreaterThan(500);
    expect(new Set(cells.map(({ table, key, field }) => `${table}|${key}|${field}`)).size).toBe(cells.length);
    for (const { table, key, field, value } of cells) {
      expect(
        confirmData.safeParse({ ...someone, table, key, values: [{ field, value }] }).error,
      ).toBeUndefined();
    }
  });
});

const someone = { personId: '018f0000-0000-7000-8000-000000000001', sourceSeen: 'own copy' };

test('a gasket row with one source is of no use to a breakout', () => {
  const gasket: Change = ({ joint: { data } }) => {
    data.flange = {
      kind: 'standard',
      standard: 'ASME B16.5',
      size: '8',
      rating: '150',
      facing: 'raised face',
    };
    if (data.gasket === null) throw new Error('fixture: no gasket');
    Object.assign(data.gasket, { contactInside: null, contactOutside: null });
  };
  expect(about(gasket).map(({ severity }) => severity)).toContain('refusal');
  expect(about(gasket, 'breakout').map(({ severity }) => severity)).toEqual(['note']);
});

test('a value two sources agree on is silent', () => {
  const agreed = ofStandard({ standard: 'ASME B16.5', size: '6', rating: '300', facing: 'raised face' });
  const sources = about(agreed).filter(({ severity }) => severity === 'refusal');
  expect(sources).toEqual([]);
});
