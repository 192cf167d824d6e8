import type { ImportReport } from '../../../core/contract/import.ts';
import { count } from '../../app/text/number.ts';
import { csv, saveText } from './file-text.ts';

interface ReportProps {
  readonly report: ImportReport;
  readonly fileName: string;
}

/** What the file holds as it was read: counts, the first rows, and every fault with its line. */
export function ImportReportView({ report, fileName }: ReportProps) {
  return (
    <>
      <section aria-labelledby="preview">
        <h2 id="preview">Preview of {fileName}</h2>
        {report.fileFault !== null && (
          <div className="failure" role="alert">
            <p>{report.fileFault}</p>
          </div>
        )}
        <ColumnWords report={report} />
        <dl className="lines narrow">
          <Count name="Rows in the file" value={report.rows} />
          <Count name="Read without fault" value={report.good} />
          <Count name="New" value={report.added} />
          <Count name="Changed" value={report.changed} />
          <Count name="Already so on the register" value={report.unchanged} />
          <Count name="Rows with a fault" value={report.faultyRows} />
        </dl>
      </section>
      {report.sample.length > 0 && <Sample sample={report.sample} />}
      {report.faults.length > 0 && <FaultTable report={report} fileName={fileName} />}
    </>
  );
}

function Count({ name, value }: { readonly name: string; readonly value: number }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{count(value)}</dd>
    </div>
  );
}

function ColumnWords({ report }: { readonly report: ImportReport }) {
  return (
    <>
      {report.missingColumns.length > 0 && (
        <p className="flag">Columns that are needed and missing: {report.missingColumns.join(', ')}.</p>
      )}
      {report.unknownColumns.length > 0 && (
        <p className="flag">
          Columns this book does not know and leaves out: {report.unknownColumns.join(', ')}.
        </p>
      )}
    </>
  );
}

function Sample({ sample }: { readonly sample: ImportReport['sample'] }) {
  const filled = new Set(sample.flatMap((row) => Object.keys(row).filter((heading) => row[heading] !== '')));
  const headings = [...filled];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table must be scrollable by keyboard
    <section className="scroll" tabIndex={0} aria-labelledby="sample">
      <h2 id="sample">First rows as they will be read</h2>
      <table className="tab nowrap">
        <thead>
          <tr>
            {headings.map((heading) => (
              <th scope="col" key={heading}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sample.map((row, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows of a file have no other identity
            <tr key={at}>
              {headings.map((heading) => (
                <td key={heading}>{row[heading] ?? ''}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function FaultTable({ report, fileName }: ReportProps) {
  const { faults, faultCount } = report;
  const save = () =>
    saveText(
      `faults of ${fileName.replace(/\.[^.]*$/, '')}.csv`,
      csv([
        ['line', 'column', 'value', 'allowed'],
        ...faults.map((fault) => [String(fault.line), fault.column, fault.value, fault.allowed]),
      ]),
    );
  return (
    <section aria-labelledby="faults">
      <div className="spread">
        <h2 id="faults">
          {faultCount === 1 ? 'One fault' : `${count(faultCount)} faults`}
          {faults.length < faultCount && `, the first ${count(faults.length)} shown`}
        </h2>
        <button type="button" className="link" onClick={save}>
          Save the faults as a file
        </button>
      </div>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col" className="num">
              Line
            </th>
            <th scope="col">Column</th>
            <th scope="col">What stands there</th>
            <th scope="col">Allowed</th>
          </tr>
        </thead>
        <tbody>
          {faults.map((fault, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a file's faults never change place
            <tr key={at}>
              <td className="num">{count(fault.line)}</td>
              <th scope="row">{fault.column}</th>
              <td>{fault.value === '' ? <span className="small">nothing</span> : fault.value}</td>
              <td>{fault.allowed}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
