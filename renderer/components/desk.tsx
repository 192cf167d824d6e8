import type { ReactNode } from 'react';
import { PrintFoot, PrintHead } from '../print/print-foot.tsx';

interface DeskProps {
  /** What this person works with now, on the left. */
  readonly index: ReactNode;
  readonly indexLabel: string;
  /** The left side holds choices for the page instead of ways to other pages. */
  readonly choices?: boolean;
  /** What can be done with what is on the page: beside it on a wide desk, above it on a narrow one. */
  readonly doings?: ReactNode;
  /** The page; where there is a `below`, only its heading and what the margin speaks of first. */
  readonly children: ReactNode;
  /** What the book has to say about the page; without it the page takes the room. */
  readonly margin?: ReactNode;
  /** The sections of a long page: on a narrow desk and on paper the margin comes before them. */
  readonly below?: ReactNode;
}

/** The open notebook: index, page, margin. */
export function Desk({ index, indexLabel, choices, doings, children, margin, below }: DeskProps) {
  const Side = choices ? 'section' : 'nav';
  return (
    <div className="desk">
      <Side className="index" aria-label={indexLabel}>
        {index}
      </Side>
      <main className={margin || doings ? 'page' : 'page plain'} id="page" tabIndex={-1}>
        <div className="leaf">
          <PrintHead />
          {children}
        </div>
        {(margin || doings) && (
          <div className="side">
            {doings && (
              <section className="doings" aria-label="What can be done">
                {doings}
              </section>
            )}
            {margin && (
              <section className="margin" aria-label="Margin">
                {margin}
              </section>
            )}
          </div>
        )}
        {below && <div className="leaf below">{below}</div>}
        <PrintFoot />
      </main>
    </div>
  );
}

interface TitleProps {
  readonly name: string;
  readonly beside?: ReactNode;
  readonly under?: ReactNode;
  readonly kind?: ReactNode;
}

/** Heading with the identity of what is on the page; the same on every page. */
export function Title({ name, beside, under, kind }: TitleProps) {
  return (
    <header className="title">
      <div>
        <h1>
          {name}
          {beside && <span className="small"> {beside}</span>}
        </h1>
        {under && <p className="small">{under}</p>}
      </div>
      {kind && <div className="kind">{kind}</div>}
    </header>
  );
}
