import type { ToolInput, ToolProperties } from '../core/contract/tool.ts';
import { enter } from '../core/units/entered.ts';
import type { Unit } from '../core/units/units.ts';
import { addDays } from './calendar.ts';

type Properties = ToolInput['properties'];
type Class = ToolProperties['class'];

/** One tool in the tool room. */
export const tool = (number: string, place: string, properties: Properties): ToolInput => ({
  number,
  serial: `demo ${number.toLowerCase()}`,
  status: 'available',
  place,
  properties,
  remarks: 'Invented demo data.',
});

export const inch = (text: string) => ({ text, unit: 'in' }) as const;
export const mm = (text: string) => ({ text, unit: 'mm' }) as const;
export const newtonMetres = (text: string) => ({ text, unit: 'N.m' }) as const;
export const bar = (text: string) => ({ text, unit: 'bar' }) as const;
/** How far an opening may measure above its mark; an invented tool-room limit. */
export const LOOSENESS = mm('0.4');
/** Coupling of the site's lines, as the invented site names it. */
export const COUPLING = 'screwed, site type 1 (invented)';
/** Weight of a drive unit in kg, distance from the nut to where it bears in mm, and height of its cassettes in mm. */
const SIZE_OF_FAMILY: Readonly<Record<string, readonly [weight: string, arm: string, height: string]>> = {
  S: ['2.4', '95', '34'],
  M: ['5.1', '140', '46'],
  L: ['10.8', '200', '60'],
  X: ['24', '290', '82'],
};
const [USUAL_WEIGHT, USUAL_ARM, USUAL_HEIGHT] = ['5.1', '140', '46'];

/** Families of drive units: S small to X largest; parts of one family fit each other. */
const DRIVES = [
  ['W-01', 'S', '1030', '22'],
  ['W-02', 'S', '1030', '22'],
  ['W-03', 'M', '2700', '30'],
  ['W-04', 'M', '2700', '30'],
  ['W-05', 'L', '5400', '38'],
  ['W-06', 'L', '5400', '38'],
  ['W-07', 'X', '14500', '52'],
] as const;

const CASSETTES = [
  ['K-01', 'S', mm('24'), '20'],
  ['K-02', 'S', inch('1-1/16'), '22'],
  ['K-03', 'S', inch('1-1/4'), '25'],
  ['K-04', 'S', mm('30'), '24'],
  ['K-05', 'S', mm('36'), '28'],
  ['K-06', 'S', inch('1-5/8'), '31'],
  ['K-07', 'M', inch('1-5/8'), '32'],
  ['K-08', 'M', mm('41'), '32'],
  ['K-09', 'M', inch('1-13/16'), '35'],
  ['K-10', 'M', inch('2'), '38'],
  ['K-11', 'M', inch('2-3/16'), '41'],
  ['K-12', 'L', inch('2-3/8'), '45'],
  ['K-13', 'L', inch('2-9/16'), '48'],
  ['K-14', 'L', inch('2-15/16'), '54'],
  ['K-15', 'X', inch('3-1/8'), '58'],
  ['K-16', 'X', inch('3-7/8'), '70'],
] as const;

const REDUCERS = [
  ['R-01', inch('1-5/8'), inch('1-7/16'), '1030'],
  ['R-02', inch('1-13/16'), inch('1-5/8'), '2700'],
  ['R-03', inch('2-3/8'), inch('2-3/16'), '5400'],
  ['R-04', inch('2-15/16'), inch('2-3/4'), '5400'],
] as const;

const GAUGES: readonly (readonly [number: string, unit: Unit, scale: string, graduation: string])[] = [
  ['G-01', 'bar', '1000', '10'],
  ['G-02', 'bar', '1000', '10'],
  ['G-03', 'bar', '1000', '20'],
  ['G-04', 'psi', '15000', '200'],
  ['G-05', 'psi', '10000', '100'],
];

const TORQUE_OF_FAMILY: Readonly<Record<string, string>> = { S: '1030', M: '2700', L: '5400', X: '14500' };

/** The tool room; `today` sets the ages of the hoses. */
export function demoTools(today: string): ToolInput[] {
  const drives = DRIVES.map(([number, family, torque, radius]) => {
    const [weight = USUAL_WEIGHT, arm = USUAL_ARM] = SIZE_OF_FAMILY[family] ?? [];
    return weighing(
      weight,
      tool(number, 'tool room, shelf 1', {
        class: 'drive unit',
        ratedTorque: newtonMetres(torque),
        ratedPressure: bar('690'),
        family,
        headRadius: mm(radius),
        reactionArm: mm(arm),
        coupling: COUPLING,
      }),
    );
  });
  // One drive unit came with its rating in pounds and inches, as such tools do.
  const inchDrive = tool('W-08', 'tool room, shelf 1', {
    class: 'drive unit',
    ratedTorque: { text: '2000', unit: 'lbf.ft' },
    ratedPressure: { text: '10000', unit: 'psi' },
    family: 'M',
    headRadius: mm('30'),
    reactionArm: mm('140'),
    coupling: COUPLING,
  });
  const cassettes = CASSETTES.map(([number, family, acrossFlats, radius]) =>
    tool(number, 'tool room, rack 2', {
      class: 'cassette',
      acrossFlats,
      looseness: LOOSENESS,
      ratedTorque: newtonMetres(TORQUE_OF_FAMILY[family] ?? '1030'),
      family,
      headRadius: mm(radius),
      height: mm(SIZE_OF_FAMILY[family]?.[2] ?? USUAL_HEIGHT),
      bore: boreFor(acrossFlats),
      openThrough: true,
    }),
  );
  const reducers = REDUCERS.map(([number, outerAcrossFlats, acrossFlats, torque]) =>
    tool(number, 'tool room, drawer 3', {
      class: 'reducer',
      outerAcrossFlats,
      acrossFlats,
      looseness: LOOSENESS,
      ratedTorque: newtonMetres(torque),
    }),
  );
  const pumps = ['P-01', 'P-02', 'P-03'].map((number) =>
    tool(number, 'tool room, floor', {
      class: 'pump',
      ratedPressure: bar('700'),
      connections: number === 'P-03' ? 4 : 1,
      coupling: COUPLING,
    }),
  );
  const gauges = GAUGES.map(([number, unit, scale, graduation]) =>
    tool(number, 'tool room, cabinet 4', {
      class: 'gauge',
      scaleMax: { text: scale, unit },
      graduation: { text: graduation, unit },
      accuracy: { text: '1', unit: 'percent' },
    }),
  );
  const hoses = [250, 600, 980, 1500, 2300].map((age, index) =>
    tool(`H-0${index + 1}`, 'tool room, hooks', {
      class: 'hose',
      ratedPressure: bar('700'),
      madeOn: addDays(today, -age),
      firstUsedOn: addDays(today, 10 - age),
      coupling: COUPLING,
    }),
  );
  return [...drives, inchDrive, ...cassettes, ...reducers, ...pumps, ...gauges, ...hoses];
}

function weighing(weight: string, one: ToolInput): ToolInput {
  return { ...one, weight: { text: weight, unit: 'kg' } };
}

/** A nut is about one and a half times as wide across its flats as its stud is thick; the bore lets the stud through. */
function boreFor(acrossFlats: { readonly text: string; readonly unit: Unit }) {
  const si = enter(acrossFlats.text, acrossFlats.unit)?.si ?? 0;
  return mm(String(Math.ceil((si * 1000) / 1.5) + 2));
}

/** Tools of one class, with their properties narrowed to it. */
export function toolsOf<C extends Class>(tools: readonly ToolInput[], wanted: C) {
  return tools.filter(
    (each): each is ToolInput & { properties: Extract<Properties, { class: C }> } =>
      each.properties.class === wanted,
  );
}
