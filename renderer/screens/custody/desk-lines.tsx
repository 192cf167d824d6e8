import { Link } from 'wouter';
import type { ToolRecord } from '../../../core/contract/tool-record.ts';
import type { RequestFailure } from '../../app/ask.ts';
import { DueShape } from '../../components/due-mark.tsx';
import { SeverityMark } from '../../components/marks.tsx';
import type { FoundTool } from '../../components/scan-field.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import type { Against } from './against.ts';

export interface DeskLine {
  readonly tool: FoundTool;
  readonly record: ToolRecord | undefined;
  readonly error: RequestFailure | null;
  readonly against: readonly Against[];
}

interface DeskLinesProps {
  readonly lines: readonly DeskLine[];
  readonly onRemove: (id: string) => void;
}

/** The tools on the desk, each with where it stands and what stands against the step. */
export function DeskLines({ lines, onRemove }: DeskLinesProps) {
  return (
    <SideScroll>
      <table className="tab">
        <thead>
          <tr>
            <th scope="col">Tool</th>
            <th scope="col">Status</th>
            <th scope="col">Place</th>
            <th scope="col">Stands against it</th>
            <th scope="col">
              <span className="unseen">Remove</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ tool, record, error, against }) => (
            <tr key={tool.id}>
              <th scope="row" className="tool-number">
                <Link href={`/tools/${tool.id}`}>{tool.number}</Link>
                {record && <div className="small">{record.data.properties.class}</div>}
              </th>
              <td>
                {record?.data.status}
                {record?.holder && <div className="small">with {record.holder}</div>}
              </td>
              <td>{record?.data.place}</td>
              <td>
                {error && <span className="fault-line">{error.error.message}</span>}
                {record && against.length === 0 && <span className="small">nothing known</span>}
                <ul className="plain-list against">
                  {against.map((each) => (
                    <li key={each.text} className={each.bars ? 'bars' : undefined}>
                      {each.due === null ? (
                        <SeverityMark severity={each.bars ? 'refusal' : 'warning'} />
                      ) : (
                        <DueShape state={each.due} />
                      )}
                      <span>
                        {each.bars && <b>Not possible. </b>}
                        {each.due && <b>{each.due}: </b>}
                        {each.text}
                      </span>
                    </li>
                  ))}
                </ul>
              </td>
              <td className="num">
                <button type="button" className="link" onClick={() => onRemove(tool.id)}>
                  Take off<span className="unseen"> {tool.number}</span>
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </SideScroll>
  );
}
