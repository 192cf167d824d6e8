import type { BatchUsed, BreakoutInput, TighteningInput } from '../../../core/contract/event.ts';
import type { JointDetail } from '../../../core/contract/joint.ts';
import type { IssuedSetting, Method, ToolSetInput } from '../../../core/contract/setting.ts';
import { nowLocal, withOffset } from '../../app/text/time.ts';
import { recordedTool, type TorqueToolForm, torqueToolForm } from '../../components/torque-tool-form.ts';
import { orNull, type Typed } from '../../components/typed.ts';
import { EMPTY_SET, takesToolSet, takesTorqueTool, toolFor } from '../../components/work-method.ts';

/** What every record of work asks for. */
export interface CommonForm {
  method: Method;
  /** Number of the bolt set, as its choice holds it; "0" is the joint's own bolting. */
  boltSet: string;
  torqueTool: TorqueToolForm;
  happenedAt: string;
  personIds: string[];
  tools: ToolSetInput;
  remarks: string;
}

export interface TighteningForm extends CommonForm {
  dialled: Typed;
  torque: Typed;
  /** Residual load of one stud; asked for only where studs are tensioned. */
  load: Typed;
  boltsTightened: string;
  finalPassNoTurn: boolean;
  /** Numbers as read off what went on; a blank one is not known. */
  batches: Record<BatchUsed['kind'], Omit<BatchUsed, 'kind'>>;
}

export type Outcome = BreakoutInput['readings'][number]['outcome'];

export interface ReadingRow {
  text: string;
  outcome: '' | Outcome;
}

export interface BreakoutForm extends CommonForm {
  /** What was read on each stud: the gauge's pressure or a torque. */
  readAs: 'dialled' | 'torque';
  unit: string;
  readings: ReadingRow[];
}

interface About {
  readonly jointId: string;
  /** The setting the work followed. What was done may differ from it, and is then flagged. */
  readonly setting: IssuedSetting | null;
  readonly timeZone: string;
}

export function freshCommon(setting: IssuedSetting | null, timeZone: string): CommonForm {
  return {
    method: setting?.input.method ?? 'hydraulic wrench',
    boltSet: String(setting?.input.boltSet ?? 0),
    torqueTool: torqueToolForm(setting?.input.torqueTool ?? null),
    happenedAt: nowLocal(timeZone),
    personIds: [],
    tools: setting?.input.tools ?? EMPTY_SET,
    remarks: '',
  };
}

/** Studs of a bolt set; null where their number is not known. */
export function studsOf({ boltCount, data }: JointDetail, boltSet: string): number | null {
  return boltSet === '0' ? boltCount : (data.boltSets[Number(boltSet) - 1]?.bolting.count ?? null);
}

/** What belongs to another method than the chosen one is not sent. */
function common(form: CommonForm, { jointId, setting, timeZone }: About) {
  const { method } = form;
  return {
    jointId,
    settingId: setting?.id ?? null,
    method,
    torqueTool: takesTorqueTool(method) ? toolFor(method, recordedTool(form.torqueTool)) : null,
    boltSet: Number(form.boltSet),
    happenedAt: form.happenedAt === '' ? '' : withOffset(form.happenedAt, timeZone),
    personIds: form.personIds,
    tools: takesToolSet(method) ? form.tools : EMPTY_SET,
    remarks: form.remarks,
  };
}

/** What the joint's data plan, to be corrected to what the parts really say. */
export function plannedBatches({
  data: { bolting, gasket, lubricant },
}: Pick<JointDetail, 'data'>): TighteningForm['batches'] {
  return {
    stud: { name: bolting.grade ?? 'grade not known', number: '' },
    nut: { name: bolting.nutGrade ?? 'grade not known', number: '' },
    gasket: { name: gasket?.type ?? 'type not known', number: gasket?.batch ?? '' },
    lubricant: { name: lubricant?.name ?? 'product class not known', number: lubricant?.batch ?? '' },
  };
}

const BATCH_KINDS: readonly BatchUsed['kind'][] = ['stud', 'nut', 'gasket', 'lubricant'];

function batchesInput(batches: TighteningForm['batches']): TighteningInput['batches'] {
  return BATCH_KINDS.map((kind) => ({ kind, ...batches[kind] })).filter(({ number }) => number.trim() !== '');
}

export function tighteningInput(form: TighteningForm, about: About): TighteningInput {
  return {
    ...common(form, about),
    dialled: (takesToolSet(form.method) ? orNull(form.dialled) : null) as TighteningInput['dialled'],
    torque: (form.method === 'tensioner' ? null : orNull(form.torque)) as TighteningInput['torque'],
    load: (form.method === 'tensioner' ? orNull(form.load) : null) as TighteningInput['load'],
    boltsTightened: form.boltsTightened.trim() === '' ? Number.NaN : Number(form.boltsTightened),
    finalPassNoTurn: form.finalPassNoTurn,
    batches: batchesInput(form.batches),
  };
}

/** What can be read on a stud: a tensioner has no torque, a tool without pressure no gauge. */
export function readableAs(method: Method): BreakoutForm['readAs'][] {
  if (takesTorqueTool(method)) return ['torque'];
  return takesToolSet(method) ? ['dialled', 'torque'] : ['dialled'];
}

const BLANK: ReadingRow = { text: '', outcome: '' };

/** One row a stud; rows that hold something are never cut off. */
export function rowsFor(studs: number, rows: readonly ReadingRow[] = []): ReadingRow[] {
  const last = rows.findLastIndex(({ text, outcome }) => text.trim() !== '' || outcome !== '');
  return Array.from({ length: Math.max(studs, last + 1) }, (_, at) => rows[at] ?? BLANK);
}

/** A stud with neither a reading nor an outcome was not worked on and is left out. */
export function breakoutInput(form: BreakoutForm, about: About): BreakoutInput {
  const readings = form.readings.flatMap((row, index) => {
    const read = row.text.trim() !== '';
    if (!read && row.outcome === '') return [];
    const value = read ? { text: row.text, unit: form.unit as never } : null;
    return [
      {
        bolt: index + 1,
        outcome: row.outcome === '' ? ('turned' as const) : row.outcome,
        torque: form.readAs === 'torque' ? value : null,
        dialled: form.readAs === 'dialled' ? value : null,
      },
    ];
  });
  return { ...common(form, about), readings };
}
