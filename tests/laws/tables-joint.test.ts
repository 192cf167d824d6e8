import { describe, expect, test } from 'vitest';
import { findNut } from '../../core/bolting/nut.ts';
import { studThread } from '../../core/bolting/thread.ts';
import { type JointData, jointData } from '../../core/contract/joint.ts';
import { standardGrip } from '../../core/joint/facing.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { ASME_B16_5_RING_JOINT } from '../../core/reference/asme-b16-5-ring-joint.ts';
import { findFlange } from '../../core/reference/flanges.ts';
import { tableCells } from '../../core/reference/table-cells.ts';
import { settingCard } from '../../core/setting/card.ts';
import { changed, completeInput } from './complete-input.ts';

type Standard = Extract<JointData['flange'], { kind: 'standard' }>;

/** A joint with nothing entered but its flange and, where given, its gasket. */
function joint(flange: Omit<Standard, 'kind'>, gasket: object | null = null): JointData {
  const blank = {
    tag: 'X-1',
    unitId: '00000000-0000-4000-8000-000000000001',
    location: '',
    service: '',
    serviceTemperature: null,
    flange: { kind: 'standard', ...flange },
    bolting: {
      count: null,
      thread: null,
      circle: null,
      grade: null,
      yieldStrength: null,
      yieldOrigin: '',
      studLength: null,
      grip: null,
      nutSeries: null,
    },
    gasket,
    lubricant: null,
    target: null,
    limits: {
      boltStressMax: null,
      boltStressMin: null,
      boltStressArea: 'root',
      flangeBoltStressMax: null,
      source: '',
    },
    space: { radialGap: null },
    remarks: '',
  };
  return jointData.parse(blank);
}

const raised = { standard: 'ASME B16.5', size: '8', rating: '300', facing: 'raised face' } as const;
const ringed = { ...raised, facing: 'ring joint' } as const;

const line = (data: JointData, name: string) =>
  resolveJoint(data)
    .values()
    .find((one) => one.name === name);

describe('raised face', () => {
  test('the flange alone fills studs, circle, nut, stud length and the gap to its hub', () => {
    const found = resolveJoint(joint(raised));
    expect(found.boltCount).toBe(12);
    expect(found.thread?.value.designation).toBe('7/8-9 UNC');
    expect(found.circle?.value).toBeCloseTo(0.3302, 9);
    expect(found.nut?.value.acrossFlats).toBeCloseTo(0.0365125, 9);
    expect(found.studLength?.value).toBeCloseTo(0.1397, 9);
    expect(found.radialGap).toMatchObject({
      origin: 'calculated',
      source: expect.stringContaining('fillet'),
    });
    expect(found.radialGap?.value).toBeCloseTo((0.3302 - 0.2603) / 2, 9);
    expect(found.ring).toBeNull();
  });

  test('a spiral-wound gasket’s sealing element, with where it comes from', () => {
    const data = joint(raised, { type: 'spiral wound', kind: 'spiral wound', thickness: null });
    const inside = line(data, 'Gasket, inside of the sealing element');
    expect(inside?.si).toBeCloseTo(0.2334, 9);
    expect(inside).toMatchObject({
      origin: 'standard',
      source: 'ASME B16.20, spiral wound, NPS 8 Class 300',
      status: null,
    });
  });

  test('a row with one source says so', () => {
    const data = joint({ ...raised, rating: '150' }, { type: 'x', kind: 'spiral wound', thickness: null });
    expect(line(data, 'Gasket, outside of the sealing element')?.status).toBe('one source only');
  });

  test('a flat ring is pressed as far as the face goes, not out to the studs', () => {
    const data = joint(raised, { type: 'flat', kind: 'flat', thickness: null });
    const outside = line(data, 'Gasket, outside of the sealing element');
    expect(outside?.si).toBeCloseTo(0.2697, 9);
    expect(outside?.source).toContain('raised face');
  });

  test('what was entered stays in force', () => {
    const data = joint(raised, {
      type: 'x',
      kind: 'spiral wound',
      thickness: null,
      contactInside: { text: '230', unit: 'mm' },
    });
    expect(line(data, 'Gasket, inside of the sealing element')).toMatchObject({
      si: 0.23,
      origin: 'entered',
    });
    data.space.radialGap = { text: '60', unit: 'mm', si: 0.06 };
    expect(resolveJoint(data).radialGap).toMatchObject({ value: 0.06, origin: 'entered' });
  });

  test('no dimension without the kind of gasket, and none for a European flange’s grip', () => {
    const data = joint(raised, { type: 'x', thickness: { text: '4.5', unit: 'mm' } });
    expect(line(data, 'Gasket, inside of the sealing element')).toMatchObject({ text: null, si: null });
    const european = joint(
      { standard: 'EN 1092-1', size: '200', rating: '16', facing: 'raised face' },
      { type: 'x', kind: 'flat', thickness: { text: '2', unit: 'mm' } },
    );
    expect(resolveJoint(european)).toMatchObject({ grip: null, radialGap: null, studLength: null });
    expect(line(european, 'Gasket, inside of the sealing element')?.si).toBeCloseTo(0.22, 9);
  });
});

describe('ring joint', () => {
  test('fills ring number, ring, stud length and grip', () => {
    const data = joint(ringed, { type: 'soft iron ring', kind: 'ring joint', thickness: null });
    const found = resolveJoint(data);
    expect(found.ring).toMatchObject({ value: 'R49', origin: 'standard' });
    expect(line(data, 'Ring')?.text).toBe('R49');
    expect(line(data, 'Gasket, pitch diameter of the ring')?.si).toBeCloseTo(0.26988, 9);
    expect(line(data, 'Gasket, width of the ring')?.si).toBeCloseTo(0.01113, 9);
    expect(found.studLength?.value).toBeCloseTo(0.15, 9);
    expect(found.grip).toMatchObject({ origin: 'calculated' });
  });

  test('stays open where no source has it', () => {
    const class400 = resolveJoint(joint({ ...ringed, rating: '400' }));
    expect(class400.ring).toBeNull();
    expect(class400.grip).toBeNull();
    expect(class400.studLength?.value).toBeCloseTo(0.17, 9);
    expect(resolveJoint(joint({ ...ringed, size: '1/2', rating: '150' })).studLength).toBeNull();
    expect(
      resolveJoint(joint({ standard: 'ASME B16.47 A', size: '36', rating: '300', facing: 'ring joint' })),
    ).toMatchObject({ ring: null, studLength: null, grip: null });
  });

  test('the grip from flange, groove and stand-off leaves the listed stud half a thread to four out of each nut', () => {
    // Stud lengths come from another column than thickness, groove and stand-off: the two prove each other.
    let seen = 0;
    for (const [class_, nps, studLength] of ASME_B16_5_RING_JOINT) {
      const row = findFlange('ASME B16.5', nps, String(class_));
      const thread = row?.studIn == null ? null : studThread(row.studIn);
      const height = thread === null ? null : (findNut('ASME B18.2.2 heavy hex', thread)?.height ?? null);
      const flange: Standard = { kind: 'standard', ...ringed, size: nps, rating: String(class_) };
      const grip = row === null ? null : standardGrip(flange, row, null);
      if (grip === null || studLength === null || thread === null || height === null) continue;
      seen += 1;
      const threads = (studLength / 1000 - grip.value - 2 * height) / 2 / thread.pitch;
      expect(threads, `${nps} class ${class_}`).toBeGreaterThan(0.5);
      expect(threads, `${nps} class ${class_}`).toBeLessThan(4);
    }
    expect(seen).toBe(39);
  });
});

describe('open cells', () => {
  test('a disputed hub leaves the gap open', () => {
    expect(resolveJoint(joint({ ...raised, size: '22', rating: '600' })).radialGap).toBeNull();
    expect(
      resolveJoint(joint({ standard: 'ASME B16.47 A', size: '40', rating: '300', facing: 'raised face' }))
        .radialGap,
    ).toBeNull();
  });

  test('no face diameter, no contact outside', () => {
    const data = joint(
      { ...raised, size: '22', rating: '300' },
      { type: 'x', kind: 'flat', thickness: null },
    );
    expect(line(data, 'Gasket, outside of the sealing element')).toMatchObject({ si: null });
  });
});

describe('on the card', () => {
  const card = (flange: Omit<Standard, 'kind'>, kind: 'spiral wound' | 'ring joint') => {
    const { gasket } = joint(flange, { type: 'x', kind, thickness: null });
    const input = changed(completeInput('tightening'), (draft) => {
      draft.joint.data.flange = { kind: 'standard', ...flange };
      draft.joint.data.gasket = gasket;
    });
    return settingCard(input);
  };
  const unconfirmed = (found: ReturnType<typeof settingCard>) =>
    found.findings.filter(({ code }) => code === 'table_value_unconfirmed');

  test('a gasket row with one source waits for a person, and names the cells to confirm', () => {
    const found = unconfirmed(card({ ...raised, rating: '150' }, 'spiral wound')).find(({ source }) =>
      source.startsWith('ASME B16.20'),
    );
    expect(found).toMatchObject({ severity: 'refusal', value: 'one source only' });
    const { table, key, values } = found?.confirm ?? { table: '', key: '', values: [] };
    const cells = tableCells(table, key).map(({ field, value }) => ({ field, value }));
    expect(values).toHaveLength(2);
    expect(cells).toEqual(expect.arrayContaining(values));
  });

  test('a row that two sources print does not', () => {
    const sources = unconfirmed(card(raised, 'spiral wound')).map(({ source }) => source);
    expect(sources.filter((source) => source.startsWith('ASME B16.20'))).toEqual([]);
  });
});
