import { useState } from 'react';
import { Link } from 'wouter';
import { allRows, useAsk } from '../../app/ask.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { Pager } from '../../components/pager.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { Use, UseHeadings } from './record-uses.tsx';
import { ToolIndex } from './tool-index.tsx';

const ROWS = 50;

/** Every recorded use of one tool, page by page. */
export function ToolUses({ id }: { readonly id: string }) {
  const [page, setPage] = useState(1);
  const tool = useAsk('tool.get', { id });
  const uses = useAsk('tool.uses', { id, page, pageSize: ROWS }, { keep: true });
  return (
    <Desk indexLabel="Tools" index={<ToolIndex current={id} />}>
      <Asked asking={tool} what="the tool">
        {({ data }) => (
          <>
            <Title
              name={`Uses of ${data.number}`}
              beside={data.properties.class}
              kind={
                <Link className="quiet no-print" href={`/tools/${id}`}>
                  Back to {data.number}
                </Link>
              }
            />
            <Asked asking={uses} what="the uses">
              {({ rows, total }) =>
                rows.length === 0 ? (
                  <p className="empty">Not used in a recorded event yet.</p>
                ) : (
                  <>
                    <SideScroll>
                      <table className="tab">
                        <thead>
                          <UseHeadings />
                        </thead>
                        <tbody>
                          {rows.map((use) => (
                            <Use key={`${use.eventId} ${use.role}`} use={use} />
                          ))}
                        </tbody>
                      </table>
                    </SideScroll>
                    <Pager page={page} pageSize={ROWS} total={total} noun="use" onPage={setPage} />
                    <ExportList
                      name={`uses-${data.number}`}
                      headings={[
                        'Done (ISO 8601)',
                        'Joint',
                        'What',
                        'As',
                        'Dialled (Pa)',
                        'Torque (N m)',
                        'Flags',
                      ]}
                      rows={() => allRows('tool.uses', { id, page: 1, pageSize: ROWS })}
                      cells={(row) => [
                        row.happenedAt,
                        row.tag,
                        row.kind,
                        row.role,
                        row.pressure,
                        row.torque,
                        row.flags,
                      ]}
                    />
                  </>
                )
              }
            </Asked>
          </>
        )}
      </Asked>
    </Desk>
  );
}
