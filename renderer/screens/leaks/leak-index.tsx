import { Link, useLocation } from 'wouter';

const PAGES = [
  { to: '/leaks', words: 'Leaks', detail: 'what leaked, and what became of it' },
  { to: '/leaks/verify', words: 'Which joints to verify first', detail: 'and why' },
  { to: '/breakout', words: 'Breakout', detail: 'openings of the whole plant' },
  { to: '/breakout/forecasts', words: 'Forecasts', detail: 'the next opening of every joint' },
  { to: '/deviations', words: 'Deviations', detail: 'work out of order' },
  { to: '/joints', words: 'Joints', detail: 'all of them' },
];

export function LeakIndex() {
  const [location] = useLocation();
  return (
    <>
      <h2>Joints</h2>
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
