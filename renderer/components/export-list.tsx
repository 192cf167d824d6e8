import { useState } from 'react';
import type { RequestFailure } from '../app/ask.ts';
import { csv } from './csv.ts';
import { Failure } from './failure.tsx';

interface ExportListProps<R> {
  /** Name of the file, without its ending. */
  readonly name: string;
  readonly headings: readonly string[];
  /** Every row that the list's filter lets through, not only the page shown. */
  readonly rows: () => Promise<readonly R[]>;
  readonly cells: (row: R) => readonly (string | number | null)[];
  /** What the button says where a page has several lists; printing is then left to the page. */
  readonly label?: string;
}

/** The list as a file for a spreadsheet, and on paper. */
export function ExportList<R>({ name, headings, rows, cells, label }: ExportListProps<R>) {
  const [busy, setBusy] = useState(false);
  const [failure, setFailure] = useState<RequestFailure | null>(null);
  const onExport = () => {
    setBusy(true);
    setFailure(null);
    rows()
      .then((all) => save(`${name}.csv`, csv(headings, all.map(cells))))
      .catch(setFailure)
      .finally(() => setBusy(false));
  };
  return (
    <div className="exports no-print">
      <button type="button" className="link small" disabled={busy} onClick={onExport}>
        {label ?? 'Export this list as CSV'}
      </button>
      {label === undefined && (
        <button type="button" className="link small" onClick={() => window.print()}>
          Print this page
        </button>
      )}
      {failure && <Failure error={failure.error} what="The list was not exported." />}
    </div>
  );
}

/** The mark at the front tells spreadsheets that the text is UTF-8. */
function save(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob(['\ufeff', text], { type: 'text/csv;charset=utf-8' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
