import { Link } from 'wouter';
import { Failure } from '../../components/failure.tsx';
import { useSlash, walkEntries } from '../../components/list-keys.ts';
import { Pager } from '../../components/pager.tsx';
import { TOOL_CLASSES } from '../../components/tool-classes.ts';
import { TOOLS_ON_A_PAGE, useToolSearch } from './tool-search.ts';

export function ToolIndex({ current }: { readonly current?: string }) {
  const { search, found, change } = useToolSearch();
  const slash = useSlash();
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: arrow keys only carry the focus between the links inside
    <div onKeyDown={walkEntries}>
      <h2>
        <Link href="/tools">Tool room</Link>
      </h2>
      <div className="tools">
        <input
          type="search"
          aria-label="Find a tool"
          aria-keyshortcuts="/"
          placeholder="Number, serial, place"
          ref={slash}
          value={search.text}
          onChange={(event) => change({ text: event.target.value })}
        />
        <select
          aria-label="Class of tool"
          value={search.class ?? ''}
          onChange={(event) =>
            change({ class: TOOL_CLASSES.find((each) => each === event.target.value) ?? null })
          }
        >
          <option value="">All classes</option>
          {TOOL_CLASSES.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </div>
      {found.error && <Failure error={found.error.error} />}
      <ol>
        {found.data?.rows.map((row) => (
          <li key={row.id}>
            <Link
              className="entry"
              data-entry
              href={`/tools/${row.id}`}
              aria-current={row.id === current ? 'page' : undefined}
            >
              <b>{row.number}</b>
              <span className="small">{row.class}</span>
            </Link>
          </li>
        ))}
      </ol>
      <Pager
        page={search.page}
        pageSize={TOOLS_ON_A_PAGE}
        total={found.data?.total ?? 0}
        noun="tool"
        onPage={(page) => change({ page })}
      />
    </div>
  );
}
