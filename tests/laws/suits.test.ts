import { expect, test } from 'vitest';
import type { Head } from '../../core/setting/input.ts';
import { suitsOf } from '../../core/setting/suits.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import { chosen } from './finding-parts.ts';

const input = completeInput('tightening');

function head(number: string, change: (tool: NonNullable<InputDraft['set']['cassette']>) => void): Head {
  const draft = changed(input, (own) => {
    const tool = chosen(own, 'cassette');
    Object.assign(tool, { id: `id of ${number}` });
    tool.data.number = number;
    change(tool);
  });
  if (draft.set.cassette === null) throw new Error('fixture: no cassette');
  return draft.set.cassette;
}

const states = (heads: readonly Head[], from = input) =>
  suitsOf(from, heads).map(({ number, state, reasons }) => [number, state, reasons.join('; ')]);

test('a head suits when nothing refuses it; each reason against it is told', () => {
  const rows = states([
    head('C-11', () => undefined),
    head('C-20', ({ data }) => Object.assign(data.properties, { acrossFlats: typed('36', 'mm') })),
    head('C-21', ({ data }) => Object.assign(data.properties, { ratedTorque: typed('300', 'N.m') })),
    head('C-22', ({ data }) => Object.assign(data.properties, { family: 'F9' })),
    head('C-23', ({ data }) => Object.assign(data, { status: 'quarantined' })),
    head('C-24', ({ data }) =>
      Object.assign(data.properties, { openThrough: false, studRoom: typed('5', 'mm') }),
    ),
  ]);
  expect(rows.map(([number, state]) => [number, state])).toEqual([
    ['C-11', 'suits'],
    ['C-20', 'does not suit'],
    ['C-21', 'does not suit'],
    ['C-22', 'does not suit'],
    ['C-23', 'does not suit'],
    ['C-24', 'does not suit'],
  ]);
  const texts = rows.map(([, , text]) => text);
  expect(texts[0]).toBe('');
  expect(texts.slice(1)).toEqual([
    expect.stringContaining('Opening too small'),
    expect.stringContaining('Torque above a rating'),
    expect.stringContaining('do not belong together'),
    expect.stringContaining('Barred from use'),
    expect.stringContaining('Stud stands out farther'),
  ]);
});

test('a head that is too large suits with a reducer of the register that brings it to the nut', () => {
  const large = head('C-30', ({ data }) => Object.assign(data.properties, { acrossFlats: typed('2', 'in') }));
  const reducer = (outer: string, inner: string): InputDraft['onRegister']['reducers'][number] => ({
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
  });
  const withReducer = (outer: string, inner: string) =>
    changed(input, (own) => {
      own.onRegister.reducers = [reducer(outer, inner)];
    });
  expect(states([large])[0]?.[1]).toBe('does not suit');
  expect(states([large], withReducer('2', '1-1/4'))[0]?.[1]).toBe('does not suit');
  const [row] = suitsOf(withReducer('2', '1-7/16'), [large]);
  expect(row).toMatchObject({ state: 'suits', reducerIds: ['018f0000-0000-7000-8000-000000000031'] });
});

test('a drive unit is held to torque, certificate, custody and the family of the chosen head', () => {
  const drive = (change: (own: InputDraft) => void) => {
    const { set } = changed(input, change);
    if (set.drive === null) throw new Error('fixture: no drive unit');
    const [row] = suitsOf(input, [set.drive]);
    return [row?.state, row?.reasons.join('; ') ?? ''];
  };
  const properties = (changes: object) => (own: InputDraft) =>
    Object.assign(chosen(own, 'drive').data.properties, changes);
  const certificate = (changes: object) => (own: InputDraft) =>
    Object.assign(chosen(own, 'drive').certificates[0]?.data ?? {}, changes);
  expect(drive(() => undefined)).toEqual(['suits', '']);
  expect(drive(properties({ ratedTorque: typed('300', 'N.m') }))[1]).toContain('Torque above a rating');
  expect(drive(properties({ ratedPressure: typed('200', 'bar') }))[1]).toContain('Pressure above a rating');
  expect(drive(properties({ family: 'F9' }))[1]).toContain('family “F9”');
  expect(drive(certificate({ validUntil: '2026-03-01' }))[1]).toContain('Certificate lapsed');
  expect(drive(certificate({ result: 'outside limits' }))[0]).toBe('does not suit');
});

test('while nut or torque is not known nothing suits', () => {
  const bare = changed(input, (own) => {
    own.joint.data.target = null;
  });
  expect(states([head('C-11', () => undefined)], bare)).toEqual([['C-11', 'not known', 'torque not known']]);
});

type Role = 'pump' | 'gauge' | 'counterhold';

/** State and reasons of one part of the set after a change to it, held against the unchanged rest. */
function part(role: Role, change: (tool: NonNullable<InputDraft['set'][Role]>) => void, from = input) {
  const tool = changed(from, (own) => change(chosen(own, role))).set[role];
  if (tool === null) throw new Error('fixture: no such part');
  const [row] = suitsOf(from, [tool]);
  return [row?.state, row?.reasons.join('; ') ?? ''];
}
const properties = (changes: object) => (tool: NonNullable<InputDraft['set'][Role]>) =>
  Object.assign(tool.data.properties, changes);

test('a pump, a hose and a coupler are held to the pressure, their coupling and custody', () => {
  expect(part('pump', () => undefined)).toEqual(['suits', '']);
  expect(part('pump', properties({ ratedPressure: typed('200', 'bar') }))[1]).toContain(
    'Pressure above a rating',
  );
  expect(part('pump', properties({ coupling: 'S2' }))[1]).toContain('S2');
  expect(part('pump', ({ data }) => Object.assign(data, { status: 'quarantined' }))[1]).toContain('Barred');
  const two = changed(input, (own) => {
    own.set.further = [{ drive: null, cassette: null, reducers: [], hoses: [] }];
  });
  expect(part('pump', properties({ connections: 1 }), two)[0]).toBe('does not suit');
  expect(part('pump', properties({ connections: 2 }), two)[0]).toBe('suits');
  const line = (change: (own: InputDraft) => void) => {
    const { set } = changed(input, change);
    return suitsOf(input, [...set.hoses, ...set.couplers]).map(({ class: of, state }) => [of, state]);
  };
  expect(line(() => undefined)).toEqual([
    ['hose', 'suits'],
    ['coupler', 'suits'],
  ]);
  const weak = line(({ set }) => {
    for (const { data } of [...set.hoses, ...set.couplers])
      data.properties.ratedPressure = typed('100', 'bar');
  });
  expect(weak.map(([, state]) => state)).toEqual(['does not suit', 'does not suit']);
});

test('what two chosen parts have against each other says nothing of a third', () => {
  const mixed = changed(input, (own) => {
    for (const { data } of own.set.couplers) data.properties.coupling = '';
    for (const { data } of own.set.hoses) data.properties.coupling = '';
    chosen(own, 'drive').data.properties.coupling = 'S2';
    own.set.further = [{ drive: null, cassette: null, reducers: [], hoses: [] }];
    chosen(own, 'pump').data.properties.connections = 2;
  });
  // The chosen pump couples by S1 and the drive unit by S2: a coupler that names neither is held against none.
  const [row] = suitsOf(mixed, mixed.set.couplers);
  expect(row).toMatchObject({ state: 'suits', reasons: [] });
});

test('a gauge is held to its scale, certificate and custody', () => {
  expect(part('gauge', () => undefined)).toEqual(['suits', '']);
  expect(part('gauge', properties({ scaleMax: typed('160', 'bar') }))[1]).toContain('scale');
  expect(part('gauge', (gauge) => gauge.certificates.splice(0))[1]).toContain('No certificate');
  expect(part('gauge', ({ data }) => Object.assign(data, { status: 'scrapped' }))[0]).toBe('does not suit');
});

test('a counterhold wrench is held to the nut and the torque', () => {
  expect(part('counterhold', () => undefined)).toEqual(['suits', '']);
  expect(part('counterhold', properties({ acrossFlats: typed('36', 'mm') }))[0]).toBe('does not suit');
  expect(part('counterhold', properties({ ratedTorque: typed('300', 'N.m') }))[1]).toContain('Torque above');
});

test('without a drive unit the pressure is not known, and no pump suits', () => {
  const bare = changed(input, (own) => {
    own.set.drive = null;
  });
  expect(part('pump', () => undefined, bare)).toEqual([
    'not known',
    'pressure not known: no drive unit is chosen',
  ]);
});

test('a reducer is held to the chosen head, to the nut and to the torque, alone or after another', () => {
  const reducer = (number: string, outer: string, inner: string, torque = '900') => ({
    id: `id of ${number}`,
    data: {
      number,
      serial: '',
      status: 'available' as const,
      place: '',
      remarks: '',
      owner: { kind: 'own' as const },
      weight: null,
      properties: {
        class: 'reducer' as const,
        outerAcrossFlats: typed(outer, 'in'),
        acrossFlats: typed(inner, 'in'),
        looseness: typed('0.2', 'mm'),
        ratedTorque: typed(torque, 'N.m'),
      },
    },
    certificates: [],
  });
  const wide = changed(input, (own) => {
    Object.assign(chosen(own, 'cassette').data.properties, { acrossFlats: typed('2', 'in') });
  });
  const tools = [
    reducer('R-1', '2', '1-7/16'),
    reducer('R-2', '1-13/16', '1-7/16'),
    reducer('R-3', '2', '1-7/16', '300'),
    reducer('R-4', '2', '1-13/16'),
  ];
  const found = suitsOf(wide, tools).map(({ number, state, reasons }) => [number, state, reasons.join('; ')]);
  expect(found.map(([number, state]) => [number, state])).toEqual([
    ['R-1', 'suits'],
    ['R-2', 'does not suit'],
    ['R-3', 'does not suit'],
    ['R-4', 'does not suit'],
  ]);
  expect(found[1]?.[2]).toContain('does not fit');
  expect(found[2]?.[2]).toContain('Torque above');
  const stepped = changed(wide, (own) => {
    own.set.reducers = [reducer('R-4', '2', '1-13/16')];
  });
  expect(suitsOf(stepped, tools).map(({ state }) => state)).toEqual([
    'suits',
    'suits',
    'does not suit',
    'does not suit',
  ]);
});

test('a hand torque wrench is no part of a hydraulic set', () => {
  const wrench = {
    id: 'id of HW-1',
    data: {
      number: 'HW-1',
      serial: '',
      status: 'available' as const,
      place: '',
      remarks: '',
      owner: { kind: 'own' as const },
      weight: null,
      properties: {
        class: 'hand torque wrench' as const,
        least: typed('100', 'N.m'),
        most: typed('500', 'N.m'),
        torqueGraduation: typed('5', 'N.m'),
        square: null,
      },
    },
    certificates: [],
  };
  expect(suitsOf(input, [wrench])).toEqual([]);
});
