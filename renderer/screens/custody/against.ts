import type { DueState } from '../../../core/contract/check.ts';
import type { CustodyStep, KitRow } from '../../../core/contract/custody.ts';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import { custodyAfter } from '../../../core/tools/custody.ts';
import { day, span } from '../../app/text/time.ts';

/** Something that stands against a tool at the desk. */
export interface Against {
  /** Bars the step; the rest is told and left to the keeper. */
  readonly bars: boolean;
  readonly due: DueState | null;
  readonly text: string;
}

interface Act {
  readonly step: CustodyStep;
  /** Kit that the tools go out with. */
  readonly kitId: string | null;
  /** Day of the act at the site. */
  readonly on: string;
}

/** The tool as far as the desk looks at it. */
export type AtDesk = Pick<ToolRecord, 'id' | 'due'> & {
  readonly data: Pick<ToolRecord['data'], 'status'>;
  readonly cases: readonly Pick<ToolRecord['cases'][number], 'number' | 'state'>[];
};

/** What bars a step and, where a tool goes out, what its holder should know of it. */
export function against(tool: AtDesk, kits: readonly KitRow[], act: Act): Against[] {
  const after = custodyAfter(tool.data.status, act.step);
  const barred = 'refused' in after ? [bar(sentence(after.refused))] : [];
  const open = tool.cases.filter(({ state }) => state === 'open');
  if (act.step === 'release from quarantine')
    return [...barred, ...open.map(({ number }) => bar(`Case ${number} is open. Close it first.`))];
  if (act.step !== 'issue') return barred;
  return [
    ...barred,
    ...reservations(tool.id, kits, act),
    ...open.map(({ number }) => ({ bars: false, due: null, text: `Case ${number} is open on it.` })),
    ...tool.due
      .filter(({ state }) => state !== 'in date')
      .map(({ what, state, on }) => ({
        bars: false,
        due: state,
        text: `${what}${on === null ? '' : `, ${state === 'overdue' ? 'was due' : 'due'} ${day(on)}`}`,
      })),
  ];
}

/** Open kits that hold the tool: on their days it goes out with them only, before that it is told. */
function reservations(toolId: string, kits: readonly KitRow[], { kitId, on }: Act): Against[] {
  return kits
    .filter(({ data }) => !data.closed && data.to >= on && data.toolIds.includes(toolId))
    .filter(({ id }) => id !== kitId)
    .map(({ data }) =>
      data.from <= on
        ? bar(`The kit ${data.name} holds it, ${span(data.from, data.to)}. Issue it with that kit.`)
        : { bars: false, due: null, text: `Needed for ${data.name}, ${span(data.from, data.to)}.` },
    );
}

const bar = (text: string): Against => ({ bars: true, due: null, text });

const sentence = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
