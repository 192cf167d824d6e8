import { useRef, useState } from 'react';
import { Link } from 'wouter';
import { useAskAll, useAskEach, useWrite } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { useRemembered } from '../../app/remember.ts';
import { counted } from '../../app/text/number.ts';
import { nowAtSite, withOffset } from '../../app/text/time.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { Faults } from '../../components/faults.ts';
import { ScanField } from '../../components/scan-field.tsx';
import { ToolPicker } from '../../components/tool-picker.tsx';
import { RoomIndex } from '../tools/room-index.tsx';
import { against } from './against.ts';
import { CustodyCautions } from './custody-cautions.tsx';
import { DeskFields } from './desk-fields.tsx';
import { type DeskLine, DeskLines } from './desk-lines.tsx';
import { cleared, type DeskState, deskState, EMPTY_DESK } from './desk-state.ts';
import { moveInput, named, STEPS, stepWords } from './steps.ts';

/** Everything that happens to tools between two jobs: choose the step, scan the tools, record one act. */
export function CustodyDesk() {
  const [desk, setDesk] = useRemembered(deskState);
  const [done, setDone] = useState<DeskState | null>(null);
  const change = (part: Partial<DeskState>) => {
    setDone(null);
    setDesk({ ...desk, ...part });
  };
  const lines = useDeskLines(desk);
  return (
    <Desk
      indexLabel="Tool room"
      index={<RoomIndex />}
      margin={<CustodyCautions step={desk.step} classes={classesOf(lines)} condition={desk.condition} />}
    >
      <Title
        name="Custody desk"
        under="One act for all tools in the list. It is recorded under the date and the names given, and not changed later."
        kind={
          <button type="button" className="quiet no-print" onClick={() => change(EMPTY_DESK)}>
            Clear the desk
          </button>
        }
      />
      <fieldset>
        <legend>What happens</legend>
        <div className="steps">
          {STEPS.map(({ step, name }) => (
            <label key={step} className="check">
              <input
                type="radio"
                name="step"
                value={step}
                checked={desk.step === step}
                onChange={() => change({ step })}
              />
              {name}
            </label>
          ))}
        </div>
      </fieldset>
      <TakeTools desk={desk} onChange={change} />
      {desk.kit && desk.step === 'issue' && (
        <p className="small">
          With the kit <Link href={`/kits/${desk.kit.id}`}>{desk.kit.name}</Link>.{' '}
          <button type="button" className="link small" onClick={() => change({ kit: null })}>
            Not with this kit
          </button>
        </p>
      )}
      {desk.tools.length === 0 ? (
        <p className="empty">No tool is on the desk. Scan one, or choose it from the list.</p>
      ) : (
        <DeskLines
          lines={lines}
          onRemove={(id) => change({ tools: desk.tools.filter((tool) => tool.id !== id) })}
        />
      )}
      <RecordMove
        desk={desk}
        lines={lines}
        onChange={change}
        onDone={(recorded) => {
          setDone(recorded);
          setDesk(cleared(recorded));
        }}
      />
      {done && <Done move={done} />}
    </Desk>
  );
}

function useDeskLines(desk: DeskState): DeskLine[] {
  const { today } = useRegister();
  const kits = useAskAll('kit.list', { closed: false, page: 1, pageSize: 200 });
  const records = useAskEach(
    'tool.record',
    desk.tools.map(({ id }) => ({ id })),
  );
  const on = desk.happenedAt === '' ? today : desk.happenedAt.slice(0, 10);
  const act = { step: desk.step, kitId: desk.kit?.id ?? null, on };
  return desk.tools.map((tool, at) => {
    const record = records[at]?.data;
    return {
      tool,
      record,
      error: records[at]?.error ?? null,
      against: record ? against(record, kits.data ?? [], act) : [],
    };
  });
}

const classesOf = (lines: readonly DeskLine[]) =>
  lines.flatMap(({ record }) => (record ? [record.data.properties.class] : []));

interface PartProps {
  readonly desk: DeskState;
  readonly onChange: (part: Partial<DeskState>) => void;
}

function TakeTools({ desk, onChange }: PartProps) {
  const field = useRef<HTMLInputElement>(null);
  const add = (tool: { id: string; number: string }) => {
    if (desk.tools.some(({ id }) => id === tool.id)) return `${tool.number} is in the list already.`;
    onChange({ tools: [...desk.tools, tool] });
    return `${tool.number} is in the list, ${counted(desk.tools.length + 1, 'tool')} now.`;
  };
  return (
    <div className="take">
      <ScanField label="Scan or type a tool" act="Add" onFound={add} field={field} />
      <ChooseTool without={desk.tools.map(({ id }) => id)} onChoose={add} />
    </div>
  );
}

interface ChooseToolProps {
  readonly without: readonly string[];
  readonly onChoose: (tool: { id: string; number: string }) => void;
}

function ChooseTool({ without, onChoose }: ChooseToolProps) {
  return (
    <ToolPicker
      label="Or find it by number, serial or place"
      toolClass={null}
      chosen={null}
      without={without}
      onChoose={(id, number) => id !== null && onChoose({ id, number })}
    />
  );
}

interface RecordMoveProps extends PartProps {
  readonly lines: readonly DeskLine[];
  readonly onDone: (recorded: DeskState) => void;
}

function RecordMove({ desk, lines, onChange, onDone }: RecordMoveProps) {
  const { timeZone } = useRegister();
  const move = useWrite('tool.move');
  const [asking, setAsking] = useState(false);
  const { act } = stepWords(desk.step);
  const numbers = desk.tools.map(({ number }) => number);
  const barred = lines.filter((line) => line.against.some(({ bars }) => bars));
  // A second try of the same act keeps its moment, so that an answer lost on the way does not record it twice.
  const stamp = useRef<{ readonly of: DeskState; readonly at: string } | null>(null);
  const send = () => {
    if (stamp.current?.of !== desk)
      stamp.current = {
        of: desk,
        at: desk.happenedAt === '' ? nowAtSite(timeZone) : withOffset(desk.happenedAt, timeZone),
      };
    move.mutate(
      { data: moveInput(desk, stamp.current.at) },
      {
        onSuccess: () => {
          setAsking(false);
          onDone(desk);
        },
      },
    );
  };
  const onAct = () => (desk.step === 'scrap' ? setAsking(true) : send());
  return (
    <Faults value={move.error?.error.details ?? []}>
      <section aria-label="Record" className="stack">
        <DeskFields desk={desk} onChange={onChange} />
        {barred.length > 0 && (
          <p className="failure">
            {named(barred.map(({ tool }) => tool.number))} can not take this step. Take{' '}
            {barred.length === 1 ? 'it' : 'them'} off the list, or choose the step that fits.
          </p>
        )}
        {move.error && <Failure error={move.error.error} what="Nothing was recorded." />}
        {asking && desk.step === 'scrap' ? (
          <div className="failure" role="alertdialog" aria-label="Confirm scrapping">
            <p>
              <b>{named(numbers)}</b> will be scrapped. No setting takes a scrapped tool, and only quarantine
              with a reason leads back. The past of {numbers.length === 1 ? 'the tool' : 'the tools'} stays on
              the register.
            </p>
            <p className="row after">
              <button type="button" className="act" disabled={move.isPending} onClick={send}>
                Scrap {named(numbers)}
              </button>
              <button
                type="button"
                className="quiet"
                // The question takes the place of the button that was pressed; the harmless answer gets the focus.
                ref={(button) => button?.focus()}
                onClick={() => setAsking(false)}
              >
                Leave as it is
              </button>
            </p>
          </div>
        ) : (
          <div>
            <button
              type="button"
              className="act"
              disabled={move.isPending || desk.tools.length === 0 || barred.length > 0}
              onClick={onAct}
            >
              {desk.tools.length === 0 ? act.replace(/:$/, '') : `${act} ${named(numbers)}`}
            </button>
          </div>
        )}
      </section>
    </Faults>
  );
}

/** What was recorded, and the step that usually follows. */
function Done({ move }: { readonly move: DeskState }) {
  const numbers = named(move.tools.map(({ number }) => number));
  const several = move.tools.length > 1;
  return (
    <div className="said block" role="status">
      <p>
        Recorded: {numbers} {several ? 'are' : 'is'} {stepWords(move.step).done}.
      </p>
      {move.condition !== '' && move.condition !== 'good' && (
        <p>
          Condition “{move.condition}”: quarantined until somebody releases {several ? 'them' : 'it'}.
        </p>
      )}
      <p className="row">
        {move.tools.map((tool) => (
          <Link key={tool.id} href={`/tools/${tool.id}`}>
            {tool.number}
          </Link>
        ))}
      </p>
    </div>
  );
}
