import { Link, useLocation } from 'wouter';

const PAGES = [
  { to: '/tool-room', words: 'Tool room', detail: 'what is due, who has what' },
  { to: '/tools', words: 'Tools', detail: 'every tool, with its certificates' },
  { to: '/due', words: 'Due list', detail: 'certificates, checks, hoses' },
  { to: '/custody', words: 'Custody desk', detail: 'issue, return, quarantine' },
  { to: '/kits', words: 'Kits', detail: 'tools put aside for a job' },
  { to: '/checklists', words: 'Checklists', detail: 'what is looked at, and how often' },
  { to: '/tool-rules', words: 'Rules', detail: 'what the site asks of each class' },
  { to: '/cases', words: 'Out of tolerance', detail: 'what a wrong tool or batch reached' },
  { to: '/labels', words: 'Labels', detail: 'codes to scan' },
] as const;

/** Pages of the tool room. */
export function RoomIndex() {
  const [location] = useLocation();
  const here = PAGES.findLast(({ to }) => location === to || location.startsWith(`${to}/`));
  return (
    <>
      <h2>Tool room</h2>
      <ol>
        {PAGES.map((page) => (
          <li key={page.to}>
            <Link className="entry" href={page.to} aria-current={here === page ? 'page' : undefined}>
              <b>{page.words}</b>
              <span className="small">{page.detail}</span>
            </Link>
          </li>
        ))}
      </ol>
    </>
  );
}
