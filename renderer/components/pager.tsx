import { count, counted } from '../app/text/number.ts';

interface PagerProps {
  readonly page: number;
  readonly pageSize: number;
  readonly total: number;
  /** One of them: "joint". */
  readonly noun: string;
  readonly onPage: (page: number) => void;
}

export function Pager({ page, pageSize, total, noun, onPage }: PagerProps) {
  const last = Math.max(1, Math.ceil(total / pageSize));
  const first = total === 0 ? 0 : (page - 1) * pageSize + 1;
  return (
    <div className="pager">
      <span role="status">
        {total > pageSize
          ? `${count(first)} to ${count(Math.min(page * pageSize, total))} of ${counted(total, noun)}`
          : counted(total, noun)}
      </span>
      {last > 1 && (
        <>
          <button type="button" className="link" disabled={page <= 1} onClick={() => onPage(page - 1)}>
            Earlier<span className="unseen"> page</span>
          </button>
          <button type="button" className="link" disabled={page >= last} onClick={() => onPage(page + 1)}>
            Next<span className="unseen"> page</span>
          </button>
        </>
      )}
    </div>
  );
}
