import { useState } from 'react';
import type { ToolDetail } from '../../../core/contract/tool.ts';
import { scanCode } from '../../../core/text/scan-code.ts';
import { useAskEach } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { remembered, useRemembered } from '../../app/remember.ts';
import { counted } from '../../app/text/number.ts';
import { Desk, Title } from '../../components/desk.tsx';
import { Failure } from '../../components/failure.tsx';
import { QrCode } from '../../components/qr-code.tsx';
import { ScanField } from '../../components/scan-field.tsx';
import { ToolPicker } from '../../components/tool-picker.tsx';
import { RoomIndex } from './room-index.tsx';

const SIZES = [
  { name: 'small', words: '40 × 20 mm' },
  { name: 'middle', words: '50 × 30 mm' },
  { name: 'large', words: '70 × 40 mm' },
] as const;
type Size = (typeof SIZES)[number]['name'];

interface Sheet {
  readonly toolIds: readonly string[];
  readonly size: Size;
  /** Each label on a page of its own size, for a label printer; otherwise many on a sheet of A4. */
  readonly single: boolean;
}

const sheetState = remembered<Sheet>('labels', { toolIds: [], size: 'middle', single: false });

/** Labels to print; a tool's own page leads here with that tool alone. */
export function LabelSheet({ id }: { readonly id: string | undefined }) {
  const [sheet, setSheet] = useRemembered(sheetState);
  const [toolIds, setToolIds] = useState(() => (id === undefined ? sheet.toolIds : [id]));
  const tools = useAskEach(
    'tool.get',
    toolIds.map((each) => ({ id: each })),
  );
  const put = (next: readonly string[]) => {
    setToolIds(next);
    setSheet({ ...sheet, toolIds: next });
  };
  const add = (tool: { id: string; number: string }) => {
    if (toolIds.includes(tool.id)) return `${tool.number} is on the sheet already.`;
    put([...toolIds, tool.id]);
    return `${tool.number} is on the sheet.`;
  };
  const failed = tools.find(({ error }) => error !== null)?.error;
  return (
    <Desk indexLabel="Tool room" index={<RoomIndex />}>
      <div className="no-print">
        <Title
          name="Labels"
          under="Number, class, serial and site in writing, and the number once more as a code. Print at full size, without scaling."
          kind={
            <button
              type="button"
              className="act"
              disabled={toolIds.length === 0}
              onClick={() => window.print()}
            >
              Print {counted(toolIds.length, 'label')}
            </button>
          }
        />
        <div className="take">
          <ScanField label="Scan or type a tool" act="Add" onFound={add} />
          <ToolPicker
            label="Or find it by number, serial or place"
            toolClass={null}
            chosen={null}
            without={toolIds}
            onChoose={(tool, number) => tool !== null && add({ id: tool, number })}
          />
        </div>
        <div className="filters">
          <div className="field">
            <label htmlFor="label-size">Size of a label</label>
            <select
              id="label-size"
              value={sheet.size}
              onChange={(event) => {
                const size = SIZES.find(({ name }) => name === event.target.value)?.name;
                if (size) setSheet({ ...sheet, size });
              }}
            >
              {SIZES.map(({ name, words }) => (
                <option key={name} value={name}>
                  {words}
                </option>
              ))}
            </select>
          </div>
          <label className="check">
            <input
              type="checkbox"
              checked={sheet.single}
              onChange={(event) => setSheet({ ...sheet, single: event.target.checked })}
            />
            Each label on a page of its own
          </label>
          <button type="button" className="quiet" disabled={toolIds.length === 0} onClick={() => put([])}>
            Empty the sheet
          </button>
        </div>
        {failed && <Failure error={failed.error} what="A tool could not be read." />}
        {toolIds.length === 0 && <p className="empty">No tool is on the sheet.</p>}
      </div>
      <ul className={`plain-list labels size-${sheet.size}${sheet.single ? ' single' : ''}`}>
        {tools.map(
          ({ data }) =>
            data && (
              <li key={data.id}>
                <Label tool={data} />
                <button
                  type="button"
                  className="link small no-print"
                  onClick={() => put(toolIds.filter((each) => each !== data.id))}
                >
                  Take off<span className="unseen"> {data.data.number}</span>
                </button>
              </li>
            ),
        )}
      </ul>
    </Desk>
  );
}

function Label({ tool }: { readonly tool: ToolDetail }) {
  const { siteName, demo } = useRegister();
  const { number, serial, properties } = tool.data;
  const code = scanCode('T', number);
  return (
    <div className="tool-label">
      <QrCode text={code} label={`Code of ${number}`} />
      <div className="written">
        <b>{number}</b>
        <span>{properties.class}</span>
        {serial !== '' && <span>serial {serial}</span>}
        <span>{demo ? 'invented demo tool' : siteName}</span>
      </div>
    </div>
  );
}
