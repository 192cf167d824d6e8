import { certificateInForce } from '../calibration/validity.ts';
import type { Raised } from '../findings/finding.ts';
import { atTool, raise } from '../findings/raise.ts';
import { duesOf } from '../tools/due.ts';
import type { Due } from '../tools/due-state.ts';
import type { ToolFacts } from '../tools/facts.ts';
import { chosenTools, partText } from './check-set.ts';
import type { AnyTool, CardInput } from './input.ts';

/**
 * What the tool room knows against the chosen tools on the job's days: open cases, failed and overdue checks, hoses by
 * the site's rule, overloads, hire and kits.
 *
 * @param input input of the card
 * @returns findings; none when nothing stands against it
 * @example checkToolRoom(input).length // 0
 * @source the site’s own rules, each finding naming its own
 */
export function checkToolRoom(input: CardInput): Raised[] {
  const { rules, checklists, facts } = input.toolRoom;
  const silent = rules.length === 0 && checklists.length === 0 && facts.length === 0;
  const tools = input.handWrench === null ? chosenTools(input) : [...chosenTools(input), input.handWrench];
  const asked = silent ? tools.filter(({ data }) => data.owner.kind === 'hired') : tools;
  return asked.flatMap((tool) => {
    const known = facts.find(({ toolId }) => toolId === tool.id) ?? null;
    return [
      ...(known === null ? [] : [...cases(tool, known), ...kits(input, tool, known)]),
      ...dues(input, tool, known),
    ];
  });
}

function cases(tool: AnyTool, { openCases }: ToolFacts): Raised[] {
  if (openCases.length === 0) return [];
  const numbers = openCases.map(({ number }) => number);
  return [
    raise('tool_in_case', () => ({ part: partText(tool), cases: numbers }), {
      severity: 'refusal',
      subject: tool.data.number,
      place: atTool(tool, 'cases'),
      source: 'open case on the register',
      value: numbers.join(', '),
    }),
  ];
}

function kits({ joint, startsOn, endsOn }: CardInput, tool: AnyTool, known: ToolFacts): Raised[] {
  const overlapping = known.kits.filter(({ from, to }) => from <= endsOn && to >= startsOn);
  return overlapping
    .filter(({ jointIds }) => !jointIds.includes(joint.id))
    .map(({ name, from, to, jointIds }) =>
      raise('kit_reserved', () => ({ part: partText(tool), kit: name, from, to, joints: jointIds.length }), {
        // A kit that names no joints may well be this job's own.
        severity: jointIds.length === 0 ? 'note' : 'warning',
        subject: tool.data.number,
        place: atTool(tool, 'kits'),
        source: `kit ${name}`,
        value: from,
        limit: to,
      }),
    );
}

function dues(input: CardInput, tool: AnyTool, known: ToolFacts | null): Raised[] {
  return duesOf(tool, known, input.toolRoom, input.startsOn)
    .filter((due) => !saidElsewhere(due, tool, input))
    .flatMap((due) => {
      const state = standsOn(due, input.endsOn);
      if (state === null) return [];
      const { what, on, reason, refuses } = due;
      return [
        raise('tool_due', () => ({ part: partText(tool), what, state, reason, on, endsOn: input.endsOn }), {
          severity: refuses && state !== 'lapses' ? 'refusal' : 'warning',
          subject: tool.data.number,
          place: atTool(tool, 'due'),
          source: reason,
          value: on ?? state,
          limit: state === 'lapses' ? input.endsOn : input.startsOn,
        }),
      ];
    });
}

function standsOn({ state, on }: Due, endsOn: string): 'overdue' | 'not known' | 'lapses' | null {
  if (state === 'overdue' || state === 'not known') return state;
  return on !== null && on < endsOn ? 'lapses' : null;
}

/** What the checks of certificate and hose say already, with the certificate's own words. */
function saidElsewhere({ what, on, usesLeft, state }: Due, tool: AnyTool, input: CardInput): boolean {
  if (what === 'Hose, age') {
    return (input.toolRoom.rules.find((rule) => rule.class === 'hose')?.hoseAgeMonths ?? null) === null;
  }
  if (what !== 'Certificate') return false;
  const inForce = certificateInForce(tool.certificates, input.startsOn);
  const checked = input.handWrench?.id === tool.id || HYDRAULIC.includes(tool.data.properties.class);
  if (!checked) return false;
  if (inForce === null) return true;
  return on === inForce.data.validUntil && (usesLeft === null || usesLeft > 0) && state !== 'not known';
}

const HYDRAULIC: readonly string[] = ['drive unit', 'gauge'];
