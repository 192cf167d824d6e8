import { expect, test } from 'vitest';
import type { Head } from '../../core/setting/input.ts';
import { suitsOf } from '../../core/setting/suits.ts';
import { typed } from '../truth/entered.ts';
import { changed, completeInput, type InputDraft } from './complete-input.ts';
import { chosen } from './tool-room-cases.ts';

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
  suitsOf(from, { drives: [], heads }).map(({ number, state, reasons }) => [
    number,
    state,
    reasons.join('; '),
  ]);

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
  const [row] = suitsOf(withReducer('2', '1-7/16'), { drives: [], heads: [large] });
  expect(row).toMatchObject({ state: 'suits', reducerIds: ['018f0000-0000-7000-8000-000000000031'] });
});

test('a drive unit is held to torque, certificate, custody and the family of the chosen head', () => {
  const drive = (change: (own: InputDraft) => void) => {
    const { set } = changed(input, change);
    if (set.drive === null) throw new Error('fixture: no drive unit');
    const [row] = suitsOf(input, { drives: [set.drive], heads: [] });
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
