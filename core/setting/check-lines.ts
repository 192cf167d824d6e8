import type { Raised } from '../findings/finding.ts';
import { atSettings, raise } from '../findings/raise.ts';
import { partText } from './check-set.ts';
import type { AnyTool, CardInput, ToolOnRegister } from './input.ts';

type Coupled =
  | ToolOnRegister<'pump'>
  | ToolOnRegister<'hose'>
  | ToolOnRegister<'coupler'>
  | ToolOnRegister<'drive unit'>;

/**
 * Whether pump, hoses, couplers and drive units couple to each other, and whether the pump has room for every wrench.
 *
 * @param input input of the card
 * @returns findings; none when nothing stands against it
 * @example checkLines(complete).length // 0
 * @source couplings as the site names them; connections as entered
 */
export function checkLines(input: CardInput): Raised[] {
  return [...couplings(input), ...connections(input)];
}

function couplings({ set }: CardInput): Raised[] {
  const lines: Coupled[] = [];
  if (set.pump !== null) lines.push(set.pump);
  lines.push(...set.hoses, ...set.couplers);
  if (set.drive !== null) lines.push(set.drive);
  for (const { drive, hoses } of set.further) {
    lines.push(...hoses);
    if (drive !== null) lines.push(drive);
  }
  const unknown = lines.filter((part) => nameOf(part) === '');
  const first = lines.find((part) => nameOf(part) !== '');
  const other = lines.find(
    (part) => nameOf(part) !== '' && first !== undefined && nameOf(part) !== nameOf(first),
  );
  const findings: Raised[] = [];
  if (first !== undefined && other !== undefined) {
    const names = { first: first.data.properties.coupling, other: other.data.properties.coupling };
    findings.push(
      raise(
        'coupling_differs',
        () => ({ first: partText(first), other: partText(other), names: [names.first, names.other] }),
        {
          severity: 'refusal',
          subject: other.data.number,
          place: atSettings('couplerIds'),
          source: 'couplings as the site names them',
          value: names.other,
          limit: names.first,
        },
      ),
    );
  }
  if (unknown.length > 0) {
    findings.push(
      raise(
        'coupling_unknown',
        () => ({ parts: unknown.map(({ data }) => `${data.properties.class} ${data.number}`) }),
        {
          severity: 'note',
          subject: unknown[0]?.data.number ?? '',
          place: { screen: 'tool', id: unknown[0]?.id ?? null, field: 'coupling' },
          source: 'couplings as the site names them',
        },
      ),
    );
  }
  return findings;
}

/** Two spellings of a name are one coupling; a tool entered before couplings were has none. */
function nameOf({ data: { properties } }: Coupled): string {
  return properties.coupling.trim().toLowerCase();
}

function connections({ set: { pump, further } }: CardInput): Raised[] {
  if (pump === null) return [];
  const wrenches = 1 + further.length;
  const room = pump.data.properties.connections;
  if (room >= wrenches) return [];
  return [
    raise('pump_connections_few', () => ({ pump: partText(pump as AnyTool), connections: room, wrenches }), {
      severity: 'refusal',
      subject: pump.data.number,
      place: atSettings('pumpId'),
      source: 'connections on the tool register',
      value: wrenches,
      limit: room,
      unit: 'one',
    }),
  ];
}
