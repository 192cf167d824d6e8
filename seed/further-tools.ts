import type { ToolInput } from '../core/contract/tool.ts';
import { addDays } from './calendar.ts';
import { bar, COUPLING, inch, LOOSENESS, mm, newtonMetres, tool } from './tools.ts';

export const HIRED_WRENCH = 'W-09';
const HIRED_PUMP = 'P-04';
/** A line of another coupling, which does not go with the rest. */
const OTHER_COUPLING = 'flat face, coloured ring (invented)';
const HIRE_FIRM = 'Invented hire firm';
const HOSE_LIFE_DAYS = 6 * 365;

const COUNTERHOLDS = [
  ['CH-01', mm('41'), '2700'],
  ['CH-02', inch('1-5/8'), '2700'],
  ['CH-03', inch('2-3/8'), '5400'],
] as const;

const HAND_WRENCHES = [
  ['T-01', '40', '200', '1'],
  ['T-02', '60', '340', '2'],
  ['T-03', '20', '100', '0.5'],
] as const;

/**
 * Tools beside those the records of work were made with: tools to hold against, hand torque wrenches, couplers, spare
 * and hired tools.
 */
export function furtherTools(today: string): ToolInput[] {
  const hired = {
    kind: 'hired',
    from: HIRE_FIRM,
    returnBy: addDays(today, 12),
  } as const;
  const counterholds = COUNTERHOLDS.map(([number, acrossFlats, torque]) => ({
    ...tool(number, 'tool room, rack 5', {
      class: 'counterhold wrench',
      acrossFlats,
      looseness: LOOSENESS,
      ratedTorque: newtonMetres(torque),
    }),
    weight: { text: '4.5', unit: 'kg' } as const,
  }));
  const handWrenches = HAND_WRENCHES.map(([number, least, most, graduation]) => ({
    ...tool(number, 'tool room, cabinet 4', {
      class: 'hand torque wrench',
      least: newtonMetres(least),
      most: newtonMetres(most),
      torqueGraduation: newtonMetres(graduation),
      square: inch('1/2'),
    }),
    weight: { text: '1.6', unit: 'kg' } as const,
  }));
  const couplers = ['CP-01', 'CP-02', 'CP-03', 'CP-04'].map((number, index) =>
    tool(number, 'tool room, drawer 6', {
      class: 'coupler',
      ratedPressure: bar('700'),
      coupling: index === 3 ? OTHER_COUPLING : COUPLING,
    }),
  );
  const hose = (number: string, age: number, coupling: string) =>
    tool(number, 'tool room, hooks', {
      class: 'hose',
      ratedPressure: bar('700'),
      madeOn: addDays(today, -age),
      firstUsedOn: addDays(today, 30 - age),
      coupling,
    });
  return [
    {
      ...tool('SD-01', 'tool room, rack 2', {
        class: 'square-drive head',
        square: inch('1'),
        acrossFlats: mm('41'),
        looseness: LOOSENESS,
        headRadius: mm('33'),
        height: mm('128'),
        bore: mm('29'),
        studRoom: mm('45'),
        ratedTorque: newtonMetres('2700'),
        family: 'M',
        reactionArm: mm('140'),
      }),
      weight: { text: '6.2', unit: 'kg' },
    },
    ...counterholds,
    ...handWrenches,
    ...couplers,
    hose('H-06', 760, COUPLING),
    hose('H-07', 420, OTHER_COUPLING),
    hose('H-08', HOSE_LIFE_DAYS + 190, COUPLING),
    {
      ...tool(HIRED_WRENCH, 'tool room, shelf 1', {
        class: 'drive unit',
        ratedTorque: newtonMetres('5400'),
        ratedPressure: bar('690'),
        family: 'L',
        headRadius: mm('38'),
        reactionArm: mm('210'),
        coupling: COUPLING,
      }),
      owner: hired,
      weight: { text: '11.5', unit: 'kg' },
    },
    {
      ...tool(HIRED_PUMP, 'tool room, floor', {
        class: 'pump',
        ratedPressure: bar('700'),
        connections: 4,
        coupling: COUPLING,
      }),
      owner: hired,
      weight: { text: '28', unit: 'kg' },
    },
  ];
}
