import { Link } from 'wouter';
import type { Materials } from '../../../core/contract/materials.ts';
import { useAsk } from '../../app/ask.ts';
import { count } from '../../app/text/number.ts';
import { Asked } from '../../components/asked.tsx';
import { Desk, Title } from '../../components/desk.tsx';
import { ExportList } from '../../components/export-list.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';
import { PlanIndex } from './plan-index.tsx';

/** What the jobs of a campaign need: gaskets, studs with spares, nuts and lubricant. */
export function MaterialsPage({ id }: { readonly id: string }) {
  const campaign = useAsk('campaign.get', { id });
  const materials = useAsk('campaign.materials', { id });
  return (
    <Desk indexLabel="Plan" index={<PlanIndex campaignId={id} />}>
      <Title name="Materials" under={campaign.data?.data.name} />
      <Asked asking={materials} what="the materials">
        {(list) => <List list={list} />}
      </Asked>
    </Desk>
  );
}

function List({ list: { finding, rows, notKnown } }: { readonly list: Materials }) {
  return (
    <>
      <p role="status">{finding}</p>
      <p className="small">
        A new gasket for each joint that is closed; a nut at each end of a stud. Spares are the studs the
        forecasts expect cut or stuck, rounded up: the site’s own stock rule comes first.
      </p>
      {rows.length > 0 && (
        <>
          <SideScroll>
            <table className="tab">
              <thead>
                <tr>
                  <th scope="col">Kind</th>
                  <th scope="col">What</th>
                  <th scope="col" className="num">
                    Pieces
                  </th>
                  <th scope="col" className="num">
                    Spare
                  </th>
                  <th scope="col">For jobs</th>
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={`${row.kind} ${row.what}`}>
                    <td>{row.kind}</td>
                    <th scope="row">{row.what}</th>
                    <td className="num">
                      {count(row.pieces)}
                      {row.kind === 'lubricant' && <span className="unit"> bolts</span>}
                    </td>
                    <td className="num">{row.kind === 'stud' || row.kind === 'nut' ? row.spare : ''}</td>
                    <td className="small">{row.jobs.join(', ')}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </SideScroll>
          <ExportList
            name="materials"
            headings={['Kind', 'What', 'Pieces', 'Spare', 'For jobs']}
            rows={async () => rows}
            cells={(row) => [row.kind, row.what, row.pieces, row.spare, row.jobs.join(' ')]}
          />
        </>
      )}
      {notKnown.length > 0 && (
        <section aria-labelledby="not-known">
          <h2 id="not-known">Not known, and not in the list</h2>
          <ul className="plain-list">
            {notKnown.map(({ jobId, number, tag, words }) => (
              <li key={jobId}>
                <Link href={`/plan/jobs/${jobId}`}>
                  {number}, {tag}
                </Link>
                : {words}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}
