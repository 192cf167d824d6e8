import { useState } from 'react';
import type { Answer, RequestError } from '../../../core/contract/errors.ts';
import type { ExportPart, HistoryExport } from '../../../core/contract/history.ts';
import { send } from '../../app/send.ts';
import { inFours } from '../../app/text/head.ts';
import { count, counted } from '../../app/text/number.ts';
import { Failure } from '../../components/failure.tsx';

interface ExportDoneProps {
  readonly exported: HistoryExport;
  readonly when: string;
}

export function ExportDone({ exported, when }: ExportDoneProps) {
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<RequestError | null>(null);
  const onSave = async () => {
    setBusy(true);
    setError(null);
    const failed = await saveCopy(exported);
    setError(failed);
    setBusy(false);
  };
  return (
    <>
      <h2>The export is written</h2>
      <p role="status">
        <b>{exported.name}</b> in {exported.folder}: {counted(exported.events, 'record')},{' '}
        {counted(exported.attachments, 'kept file')} named, {count(exported.bytes)} bytes.{' '}
        <span className="small">{when}</span>
      </p>
      <p className="small seal">Head: {exported.head === null ? 'no records' : inFours(exported.head)}</p>
      <p className="small">
        Keep it where somebody who can write this register can not reach it. The script verify-history.mjs in
        the program’s docs folder verifies it on any PC with Node, without this program.
      </p>
      {error && <Failure error={error} what="No copy was saved." />}
      <div className="row no-print">
        <button type="button" className="quiet" disabled={busy} onClick={() => void onSave()}>
          Save a copy
        </button>
      </div>
    </>
  );
}

/** Hands the file on piece by piece; null when it worked. */
async function saveCopy({ name }: HistoryExport): Promise<RequestError | null> {
  const pieces: Uint8Array<ArrayBuffer>[] = [];
  for (let from: number | null = 0; from !== null; ) {
    const answer: Answer<ExportPart> = await send('history.exportPart', { name, from });
    if (!answer.ok) return answer.error;
    pieces.push(Uint8Array.from(atob(answer.value.content), (letter) => letter.charCodeAt(0)));
    from = answer.value.next;
  }
  const address = URL.createObjectURL(new Blob(pieces, { type: 'application/x-ndjson' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
  return null;
}
