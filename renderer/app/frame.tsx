import { useEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { Who } from '../screens/access/who.tsx';
import { Boundary } from './boundary.tsx';
import { useRegister } from './register.ts';
import { useRemembered } from './remember.ts';
import { Pages } from './routes.tsx';
import { applyTheme, type Theme, theme } from './theme.ts';

/** Only doors that lead somewhere. */
const DOORS = [
  { words: 'Plan', to: '/plan/campaigns', holds: /^\/(plan\/|import\/jobs)/ },
  {
    words: 'Tool room',
    to: '/tool-room',
    holds:
      /^\/(tool-room|tools|due|custody|kits|labels|checks|checklists|tool-rules|cases|import\/(tools|certificate))/,
  },
  {
    words: 'Joints',
    to: '/joints',
    holds: /^\/($|joints|tags|leaks|breakout|deviations|settings|events|units|import\/joints)/,
  },
  { words: 'At the joint', to: '/at', holds: /^\/at/ },
  {
    words: 'Evidence',
    to: '/evidence',
    holds:
      /^\/(evidence|friction|replay|verify|audit|records|people|site-tables|plans|class-rules|sign-in|secret)/,
  },
];

export function Frame() {
  const register = useRegister();
  const [location] = useLocation();
  usePageFocus(location);
  // At the joint the whole window is one decision.
  if (/^\/(at|is-this)($|\/)/.test(location)) {
    return (
      <Boundary key={location}>
        <Pages />
      </Boundary>
    );
  }
  return (
    <>
      <button
        type="button"
        className="skip quiet no-print"
        onClick={() => document.getElementById('page')?.focus()}
      >
        To the page
      </button>
      <header className="top">
        <Link className="name" href="/joints">
          Studbook
        </Link>
        <nav aria-label="Doors">
          {DOORS.map((door) => (
            <Link key={door.to} href={door.to} aria-current={door.holds.test(location) ? 'page' : undefined}>
              {door.words}
            </Link>
          ))}
        </nav>
        <div className="who">
          {register.demo ? (
            <span className="demo-mark">Demo plant, invented</span>
          ) : (
            <span className="site small">{register.siteName}</span>
          )}
          <Who />
          <ThemeChoice />
        </div>
      </header>
      {register.state === 'read only' && (
        <p className="band" role="status">
          <b>This register is open for reading only.</b> {register.problem?.message} Nothing can be saved or
          issued.
        </p>
      )}
      <Boundary key={location}>
        <Pages />
      </Boundary>
    </>
  );
}

/** Moving to another page moves the reading position there too, as a page load would; a field for scans takes it. */
function usePageFocus(location: string) {
  const last = useRef(location);
  useEffect(() => {
    if (last.current === location) return;
    last.current = location;
    window.scrollTo(0, 0);
    const page = document.getElementById('page');
    const scans = page?.querySelector<HTMLElement>('[data-scans]');
    (scans ?? page)?.focus({ preventScroll: true });
  }, [location]);
}

const NEXT: Record<Theme, Theme> = { 'as the system': 'light', light: 'dark', dark: 'as the system' };

function ThemeChoice() {
  const [chosen, choose] = useRemembered(theme);
  return (
    <button
      type="button"
      className="link small"
      onClick={() => {
        choose(NEXT[chosen]);
        applyTheme();
      }}
    >
      Desk: {chosen}
    </button>
  );
}
