import type { Recomputation } from '../../../core/contract/comparison.ts';
import { usePreview } from '../../app/ask.ts';
import { count } from '../../app/text/number.ts';
import { Busy } from '../../components/busy.tsx';
import { Failure } from '../../components/failure.tsx';
import { SideScroll } from '../../components/side-scroll.tsx';

/** Whether the calculations of today still come to the frozen sheet. */
export function RecomputeSection({ id }: { readonly id: string }) {
  const recompute = usePreview('setting.recompute');
  return (
    <section className="no-print recompute" aria-label="Recompute">
      <button
        type="button"
        className="quiet"
        disabled={recompute.isPending}
        onClick={() => recompute.mutate({ id })}
      >
        Recompute this sheet
      </button>
      {recompute.isPending && <Busy what="Recomputing the sheet" />}
      {recompute.error && <Failure error={recompute.error.error} what="The sheet was not recomputed." />}
      {recompute.data && <Recomputed recomputation={recompute.data} />}
    </section>
  );
}

function Recomputed({ recomputation }: { readonly recomputation: Recomputation }) {
  const { coreThen, coreNow, equal, differences, finding } = recomputation;
  return (
    <div role="status">
      <p>
        <b>{equal ? 'Equal.' : 'Not equal.'}</b> {finding}
      </p>
      <p className="faint">
        Calculations then {coreThen}, now {coreNow}. The issued sheet stays as it is.
      </p>
      {differences.length > 0 && (
        <SideScroll>
          <table className="tab">
            <thead>
              <tr>
                <th scope="col">Place</th>
                <th scope="col">Then</th>
                <th scope="col">Now</th>
              </tr>
            </thead>
            <tbody>
              {differences.map((difference) => (
                <tr key={difference.place}>
                  <th scope="row">{difference.place}</th>
                  <td>{difference.frozen}</td>
                  <td>{difference.now}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </SideScroll>
      )}
      {recomputation.count > differences.length && (
        <p className="small">
          The first {count(differences.length)} of {count(recomputation.count)} differences.
        </p>
      )}
    </div>
  );
}
