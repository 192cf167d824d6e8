import type { BreakoutInput, TighteningInput } from '../../../core/contract/event.ts';
import type { IssuedSetting, ToolSetInput } from '../../../core/contract/setting.ts';
import { withOffset } from '../../app/text/time.ts';
import { orNull, type Typed } from '../../components/typed.ts';

/** What every record of work asks for. */
export interface CommonForm {
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
  /** The setting the work followed; it says the method and which studs, which can't be chosen here. */
  readonly setting: IssuedSetting | null;
  readonly timeZone: string;
}

function common(form: CommonForm, about: About) {
  return {
    jointId: about.jointId,
    settingId: about.setting?.id ?? null,
    ...(about.setting === null ? {} : methodOf(about.setting)),
    happenedAt: form.happenedAt === '' ? '' : withOffset(form.happenedAt, about.timeZone),
    personIds: form.personIds,
    tools: form.tools,
    remarks: form.remarks,
  };
}

function methodOf({ input: { method, torqueTool, boltSet } }: IssuedSetting) {
  return { method, torqueTool, boltSet };
}

export function tighteningInput(form: TighteningForm, about: About): TighteningInput {
  return {
    ...common(form, about),
    dialled: orNull(form.dialled) as TighteningInput['dialled'],
    torque: orNull(form.torque) as TighteningInput['torque'],
    load: orNull(form.load) as TighteningInput['load'],
    boltsTightened: form.boltsTightened.trim() === '' ? Number.NaN : Number(form.boltsTightened),
    finalPassNoTurn: form.finalPassNoTurn,
  };
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
