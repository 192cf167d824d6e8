import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SiteFlange, siteRowData } from '../../core/contract/site.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { NO_SITE_TABLES, type SiteTables, siteStrength } from '../../core/joint/site-tables.ts';
import { BOLT_STRENGTHS } from '../../core/reference/bolt-strength.ts';
import { FLANGE_STANDARDS, findFlange, flangeSizes } from '../../core/reference/flanges.ts';
import { shippedPlanNamed, shippedRowNamed } from '../../core/reference/shipped-names.ts';
import { flangeCells, strengthCells, tableCells } from '../../core/reference/table-cells.ts';
import { PASS_PLANS } from '../../core/sequence/plans.ts';
import { settingCard } from '../../core/setting/card.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import { L7M_CONFIRMED, SITE_PLAN } from './site-fixtures.ts';

const codes = (change: (input: InputDraft) => void) =>
  settingCard(changed(completeInput('tightening'), change)).findings.map(({ code }) => code);

const approved = { personId: SITE_PLAN.id, person: 'A. Person', at: '2026-03-16T09:00:00+01:00' };

describe('a site’s plan', () => {
  const withPlan = (input: InputDraft) => {
    input.planId = SITE_PLAN.id;
    input.site.plan = structuredClone({ ...SITE_PLAN, approved });
  };

  test('once approved has nothing against it, begins snug and ends at the whole target', () => {
    const card = settingCard(changed(completeInput('tightening'), withPlan));
    expect(card.findings).toEqual([]);
    expect(card.issuable).toBe(true);
    expect(card.passes.map(({ name, fraction }) => [name, fraction])).toEqual([
      ['Snug', null],
      ['Half', 0.5],
      ['Full', 1],
    ]);
    expect(card.rules).toContainEqual({
      kind: 'plan check',
      text: 'gap at four places',
      source: 'invented procedure 7',
    });
  });

  test('that nobody approved stands against a setting only where it is the plan chosen', () => {
    const found = codes((input) => {
      input.site.plan = structuredClone(SITE_PLAN);
    });
    expect(found).toEqual([]);
  });

  test('turns every stud once in its groups, for every number of studs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 100 }), (count) => {
        const input = changed(completeInput('tightening'), (draft) => {
          withPlan(draft);
          draft.joint.data.bolting.count = count;
        });
        const turned = settingCard(input).passes[1]?.groups?.flat() ?? [];
        expect(turned.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i + 1));
      }),
    );
  });
});

describe('a confirmation', () => {
  const confirming = (change: Partial<typeof L7M_CONFIRMED>) =>
    codes((input) => {
      input.joint.data.bolting.grade = 'ASTM A320 L7M';
      input.joint.data.bolting.tensileStrength = typed('690', 'MPa');
      input.site.confirmations = [{ ...L7M_CONFIRMED, ...change }];
    });

  test('counts for the value it was given for', () => {
    expect(confirming({})).toContain('table_value_confirmed');
    expect(confirming({})).not.toContain('table_value_unconfirmed');
  });

  test.each([
    { value: '81 ksi' },
    { field: 'tensile' },
    { key: 'ASTM A320 L7 | inch | over 0 to 63.5 mm' },
    { table: 'ASTM A193/A193M, inch table' },
  ])('does not count for another one: %o', (change) => {
    expect(confirming(change)).toContain('table_value_unconfirmed');
    expect(confirming(change)).not.toContain('table_value_confirmed');
  });
});

test('every flange and strength row is found again by the cells that name it', () => {
  const flanges = FLANGE_STANDARDS.flatMap((standard) =>
    flangeSizes(standard).flatMap(({ size, ratings }) =>
      ratings.flatMap((rating) => findFlange(standard, size, rating) ?? []),
    ),
  );
  expect(flanges.length).toBeGreaterThan(300);
  for (const cells of [...flanges.map(flangeCells), ...BOLT_STRENGTHS.map(strengthCells)]) {
    const [first] = cells;
    expect(cells.length).toBeGreaterThan(0);
    expect(tableCells(first?.table ?? '', first?.key ?? '')).toEqual(expect.arrayContaining([...cells]));
  }
});

test('whatever a row is called, the lookup answers', () => {
  fc.assert(
    fc.property(fc.string(), fc.string(), (table, key) => {
      expect(tableCells(table, key)).toEqual([]);
    }),
  );
});

test('names of what ships are taken, other names are free', () => {
  expect(shippedRowNamed('stud grade', 'A193 Gr. B7')).toBe('ASTM A193 B7');
  expect(shippedRowNamed('flange', 'EN 1092-1  dn 200 pn 16')).toBe('EN 1092-1 DN 200 PN 16');
  for (const kind of ['flange', 'stud grade', 'gasket', 'lubricant'] as const) {
    expect(shippedRowNamed(kind, 'something of the site')).toBeNull();
  }
  for (const { id, name } of PASS_PLANS) {
    expect(shippedPlanNamed(id)).toBe(name);
    expect(shippedPlanNamed(name.toUpperCase())).toBe(name);
  }
  expect(shippedPlanNamed('something of the site')).toBeNull();
});

test('a value entered for the joint stays in force over the site’s row', () => {
  const flange = siteRowData.parse({
    kind: 'flange',
    key: 'Girth flange',
    source: 'drawing 12',
    count: 36,
    thread: 'M30x3.5',
    circle: null,
    studLength: null,
    grip: null,
  }) as SiteFlange;
  const site: SiteTables = { ...NO_SITE_TABLES, flanges: [flange] };
  const { data } = changed(completeInput('tightening'), (input) => {
    input.joint.data.flange = { kind: 'custom', description: 'girth', siteRow: 'girth  FLANGE' };
    input.joint.data.bolting.count = null;
    input.joint.data.bolting.circle = null;
  }).joint;
  const { count, thread, circle } = resolveJoint(data, site);
  expect(count).toMatchObject({ value: 36, source: 'Girth flange, site table: drawing 12' });
  expect(thread?.value.designation).toBe('7/8-9 UNC');
  expect(circle).toBeNull();
});

test('a diameter at the edge of two ranges belongs to the lower one', () => {
  const grade = siteRowData.parse({
    kind: 'stud grade',
    key: 'Site alloy',
    source: 'sheet',
    bands: [
      ['0', '1', '640'],
      ['1', '2', '600'],
    ].map(([over = '', upTo = '', mpa = '']) => ({
      over: { text: over, unit: 'in' },
      upTo: { text: upTo, unit: 'in' },
      yieldStrength: { text: mpa, unit: 'MPa' },
    })),
  });
  const site = { ...NO_SITE_TABLES, grades: grade.kind === 'stud grade' ? [grade] : [] };
  const at = (inches: number) => siteStrength(site, 'site ALLOY', inches * 0.0254)?.yieldStrength.si ?? null;
  expect([at(0.5), at(1), at(1.125), at(2), at(2.25)]).toEqual([640e6, 640e6, 600e6, 600e6, null]);
});
