import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import { useAsk } from '../../app/ask.ts';
import { Failure } from '../../components/failure.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { JOINTS_ON_A_PAGE, useJointSearch } from './joint-search.ts';

/** The joints last searched for, beside the one that is open. */
export function JointIndex({ current }: { readonly current?: string }) {
  const { search, found, change } = useJointSearch();
  const units = useAsk('unit.list', {});
  const slash = useSlash();
  const here = useRef<HTMLAnchorElement>(null);
  const rows = found.data?.rows ?? [];
  const shown = rows.some((row) => row.id === current);
  useEffect(() => {
    if (shown) here.current?.scrollIntoView({ block: 'nearest' });
  }, [shown]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside
    <div onKeyDown={walkEntries}>
      <h2>
        <Link href="/joints">Joints</Link>
      </h2>
      <div className="tools">
        <input
          type="search"
          aria-label="Find a joint"
          aria-keyshortcuts="/"
          placeholder="Tag, place, service"
          ref={slash}
          value={search.text}
          onChange={(event) => change({ text: event.target.value })}
        />
        <select
          aria-label="Plant unit"
          value={search.unitId ?? ''}
          onChange={(event) => change({ unitId: event.target.value || null })}
        >
          <option value="">All plant units</option>
          {units.data?.rows.map((unit) => (
            <option key={unit.id} value={unit.id}>
              {unit.name}
            </option>
          ))}
        </select>
      </div>
      {found.error && <Failure error={found.error.error} />}
      <ol>
        {rows.map((row) => (
          <li key={row.id}>
            <Link
              className="entry"
              data-entry
              href={`/joints/${row.id}`}
              aria-current={row.id === current ? 'page' : undefined}
              ref={row.id === current ? here : undefined}
            >
              <b>{row.tag}</b>
              <span className="small">{row.flange}</span>
            </Link>
          </li>
        ))}
      </ol>
      <Pager
        page={search.page}
        pageSize={JOINTS_ON_A_PAGE}
        total={found.data?.total ?? 0}
        noun="joint"
        onPage={(page) => change({ page })}
      />
    </div>
  );
}
