import { Link, useLocation } from 'wouter';

const PAGES = [
  { to: '/evidence', words: 'Issued settings', detail: 'and the register’s head' },
  { to: '/verify', words: 'Verify the history', detail: 'chain, earlier heads, export' },
  { to: '/audit', words: 'Audit trail', detail: 'overrides, refusals, sign-ins, edits' },
  { to: '/friction', words: 'Friction', detail: 'nut factors measured beside torques' },
  { to: '/replay', words: 'What if', detail: 'past work with something otherwise' },
  { to: '/site-tables', words: 'Site tables', detail: 'rows of the site’s own' },
  { to: '/plans', words: 'Pass plans', detail: 'shipped, and the site’s own' },
  { to: '/class-rules', words: 'Classes of joints', detail: 'what follows from each' },
  { to: '/people', words: 'People', detail: 'roles, competences, who is here' },
  { to: '/sign-in', words: 'Sign-in', detail: 'who may do what' },
];

export function EvidenceIndex() {
  const [location] = useLocation();
  return (
    <>
      <h2>Evidence</h2>
      <ol>
        {PAGES.map((page) => (
          <li key={page.to}>
            <Link className="entry" href={page.to} aria-current={location === page.to ? 'page' : undefined}>
              <b>{page.words}</b>
              <span className="small">{page.detail}</span>
            </Link>
          </li>
        ))}
      </ol>
    </>
  );
}
