import type { ToolInput } from '../core/contract/tool.ts';
import { HIGH_GAUGE, HIGH_GAUGE_DAYS } from './absences.ts';
import { addDays, siteMoment } from './calendar.ts';
import { WEAK_WRENCH } from './faults.ts';
import { ENGINEER, KEEPER, SUPERVISOR } from './people.ts';
import { HIGH_GAUGE_CHECK, roomChecks } from './room-checks.ts';
import { roomKits, roomMoves } from './room-moves.ts';
import { CHECKLISTS, RULES_SINCE_DAYS, TOOL_RULES } from './room-rules.ts';
import type { DemoAttachment, DemoCase, DemoCertificate, DemoEvent, DemoRoom } from './types.ts';

const BEFORE_WORK = 6 * 60;
const AFTERNOON = 15 * 60;
const KITS_SINCE_DAYS = 4;

interface Site {
  readonly today: string;
  readonly timeZone: string;
}

/** The tool room of the invented plant: rules, checks, custody, kits, papers and one case that is closed. */
export function demoRoom(
  tools: readonly ToolInput[],
  certificates: readonly DemoCertificate[],
  events: readonly DemoEvent[],
  { today, timeZone }: Site,
  seed: number,
): DemoRoom {
  const at = (daysAgo: number, minute: number) => siteMoment(addDays(today, -daysAgo), minute, timeZone);
  return {
    rulesAt: at(RULES_SINCE_DAYS, BEFORE_WORK),
    rules: TOOL_RULES,
    checklists: CHECKLISTS,
    checks: roomChecks(tools, today, timeZone, seed),
    moves: roomMoves(events, today, timeZone),
    kitsAt: at(KITS_SINCE_DAYS, AFTERNOON),
    kits: roomKits(today),
    attachments: papers(certificates),
    cases: [gaugeCase((daysAgo) => at(daysAgo, AFTERNOON))],
  };
}

function gaugeCase(at: (daysAgo: number) => string): DemoCase {
  const { opened, decided, closed } = HIGH_GAUGE_DAYS;
  return {
    tool: HIGH_GAUGE,
    check: HIGH_GAUGE_CHECK,
    opened: { at: at(opened), person: KEEPER, remarks: 'Invented demo case.' },
    decided: {
      at: at(decided),
      person: ENGINEER,
      decision: 'accept',
      reason: 'about 3 % less load; no leak found and no limit broken by it alone (invented)',
    },
    closed: {
      at: at(closed),
      person: SUPERVISOR,
      conclusion:
        'The pointer had moved on its spindle; every load it was in has been decided on (invented).',
      measures: 'Pointer set and compared; zero looked at with the other gauges (invented).',
    },
  };
}

/** The planted wrench's newest certificate as the laboratory's table, and a note beside the one before. */
function papers(certificates: readonly DemoCertificate[]): DemoAttachment[] {
  const [newest, before] = certificates.filter(({ tool }) => tool === WEAK_WRENCH).toReversed();
  return [
    ...(newest === undefined
      ? []
      : [
          {
            certificate: newest.number,
            person: KEEPER,
            name: `${newest.number}.csv`,
            mediaType: 'text/csv',
            text: pointTable(newest),
            remarks: 'Invented demo file: points as found and as left.',
          } as const,
        ]),
    ...(before === undefined
      ? []
      : [
          {
            certificate: before.number,
            person: KEEPER,
            name: `${before.number}-note.txt`,
            mediaType: 'text/plain',
            text: `Invented demo file.\nCertificate ${before.number}: nothing was adjusted.\n`,
            remarks: 'Invented demo file.',
          } as const,
        ]),
  ];
}

function pointTable({ number, asFound, measured }: DemoCertificate): string {
  const lines = (['as found', 'as left'] as const).flatMap((series) => {
    const points = series === 'as found' ? asFound : measured;
    if (points?.kind !== 'pressure-torque') return [];
    return points.points.map(({ pressure, torque }) =>
      [series, pressure.text, pressure.unit, torque.text, torque.unit].join(','),
    );
  });
  return `# ${number} (invented demo data)\nseries,pressure,unit,torque,unit\n${lines.join('\n')}\n`;
}
