import { useState } from 'react';
import type { AttachmentData, AttachmentRow, AttachmentState } from '../../../core/contract/attachment.ts';
import type { RequestOutput } from '../../../core/contract/requests.ts';
import { usePreview } from '../../app/ask.ts';
import { useRegister } from '../../app/register.ts';
import { counted } from '../../app/text/number.ts';
import { moment } from '../../app/text/time.ts';
import { Failure } from '../../components/failure.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { AddAttachment } from './add-attachment.tsx';
import { sizeWords } from './file-kinds.ts';

interface AttachmentsProps {
  readonly owner: AttachmentData['owner'];
  readonly rows: readonly AttachmentRow[];
}

type Content = RequestOutput<'attachment.get'>;

/** Files kept beside the register under their hash: read back, checked against it, and handed out. */
export function Attachments({ owner, rows }: AttachmentsProps) {
  const read = usePreview('attachment.get');
  // What was seen since the list was read, by hash.
  const [seen, setSeen] = useState<Readonly<Record<string, AttachmentState>>>({});
  const stateOf = ({ hash, state }: AttachmentRow) => seen[hash] ?? state;
  const note = (hash: string, content: Content) => {
    const state = stateRead(content);
    setSeen((known) => ({ ...known, [hash]: state }));
    return state === 'intact';
  };
  const onSave = (row: AttachmentRow) =>
    read.mutate(
      { hash: row.hash },
      { onSuccess: (content) => note(row.hash, content) && saveFile(row, content) },
    );
  const onCheck = async () => {
    for (const { hash } of rows) {
      const content = await read.mutateAsync({ hash }).catch(() => null);
      if (content === null) return;
      note(hash, content);
    }
  };
  const broken = rows.filter((row) => stateOf(row) === 'missing' || stateOf(row) === 'changed');
  return (
    <section aria-label="Files">
      <div className="spread">
        <h2>Files</h2>
        {rows.length > 0 && (
          <button
            type="button"
            className="link small no-print"
            disabled={read.isPending}
            onClick={() => void onCheck()}
          >
            Check every file against its hash
          </button>
        )}
      </div>
      {rows.length === 0 ? (
        <p className="small">No file is kept with it.</p>
      ) : (
        <SideScroll>
          <table className="tab">
            <thead>
              <tr>
                <th scope="col">File</th>
                <th scope="col" className="num">
                  Size
                </th>
                <th scope="col">Added</th>
                <th scope="col">SHA-256</th>
                <th scope="col">State</th>
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <FileRow key={row.id} row={row} state={stateOf(row)} onSave={() => onSave(row)} />
              ))}
            </tbody>
          </table>
        </SideScroll>
      )}
      {read.error && <Failure error={read.error.error} what="The file was not read." />}
      {broken.length > 0 && (
        <p className="failure" role="alert">
          {counted(broken.length, 'file')} not as recorded:{' '}
          {broken.map((row) => `${row.name} (${STATE_WORDS[stateOf(row)]})`).join(', ')}. Nothing is handed
          out in its place. Bring it back from a backup, or add it anew.
        </p>
      )}
      <AddAttachment owner={owner} />
    </section>
  );
}

interface FileRowProps {
  readonly row: AttachmentRow;
  readonly state: AttachmentState;
  readonly onSave: () => void;
}

const HASH_SHOWN = 16;

const STATE_WORDS: Readonly<Record<AttachmentState, string>> = {
  intact: 'as recorded',
  missing: 'missing',
  changed: 'changed since it was recorded',
  'not checked': 'not checked now',
};

function stateRead({ content, intact }: Content): AttachmentState {
  if (content === null) return 'missing';
  return intact ? 'intact' : 'changed';
}

function FileRow({ row, state, onSave }: FileRowProps) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <th scope="row">
        <button type="button" className="link" onClick={onSave}>
          {row.name}
        </button>
        {row.remarks && <div className="small">{row.remarks}</div>}
      </th>
      <td className="num">{sizeWords(row.size)}</td>
      <td>
        {moment(row.addedAt, timeZone)}
        <div className="small">{row.person}</div>
      </td>
      <td className="small">
        <abbr title={row.hash}>{row.hash.slice(0, HASH_SHOWN)}…</abbr>
      </td>
      <td className="small">
        {state === 'missing' || state === 'changed' ? (
          <span className="due">
            <SeverityMark severity="refusal" />
            {STATE_WORDS[state]}
          </span>
        ) : (
          STATE_WORDS[state]
        )}
      </td>
    </tr>
  );
}

/** Hands the file to the person; the browser decides where it goes. */
function saveFile(row: AttachmentRow, content: Content): void {
  if (content.content === null) return;
  const bytes = Uint8Array.from(atob(content.content), (letter) => letter.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: row.mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = row.name;
  link.click();
  URL.revokeObjectURL(address);
}
