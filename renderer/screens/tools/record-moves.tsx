import type { MoveRow } from '../../../core/contract/custody.ts';
import { useRegister } from '../../app/register.ts';
import { moment } from '../../app/text/time.ts';
import { ShortList } from './short-list.tsx';

/** Where the tool has been: every step of custody, newest first. */
export function RecordMoves({ moves }: { readonly moves: readonly MoveRow[] }) {
  return (
    <section aria-label="Custody">
      <h2>Custody</h2>
      {moves.length === 0 ? (
        <p className="small">No issue, return or other step is recorded.</p>
      ) : (
        <ShortList
          rows={moves}
          noun="step"
          headings={
            <tr>
              <th scope="col">When</th>
              <th scope="col">Step</th>
              <th scope="col">By</th>
              <th scope="col">To</th>
              <th scope="col">Place, reference</th>
              <th scope="col">Condition, reason</th>
            </tr>
          }
          row={(move) => <Move key={move.id} move={move} />}
        />
      )}
    </section>
  );
}

function Move({ move }: { readonly move: MoveRow }) {
  const { timeZone } = useRegister();
  return (
    <tr>
      <td className="date">{moment(move.happenedAt, timeZone)}</td>
      <th scope="row">
        {move.step}
        {move.from !== move.to && (
          <div className="small">
            {move.from} to {move.to}
          </div>
        )}
      </th>
      <td>{move.person}</td>
      <td>{move.holder}</td>
      <td>{[move.place, move.reference].filter(Boolean).join(', ')}</td>
      <td>{[move.condition && `condition ${move.condition}`, move.reason].filter(Boolean).join('; ')}</td>
    </tr>
  );
}
