import type { ReactNode } from 'react';

interface DeskProps {
  /** What this person works with now, on the left. */
  readonly index: ReactNode;
  readonly indexLabel: string;
  /** The left side holds choices for the page instead of ways to other pages. */
  readonly choices?: boolean;
  /** What can be done with what is on the page: beside it on a wide desk, above it on a narrow one. */
  readonly doings?: ReactNode;
  readonly children: ReactNode;
  /** What the book has to say about the page; without it the page takes the room. */
  readonly margin?: ReactNode;
}

/** The open notebook: index, page, margin. */
export function Desk({ index, indexLabel, choices, doings, children, margin }: DeskProps) {
  const Side = choices ? 'section' : 'nav';
  return (
    <div className={margin || doings ? 'desk' : 'desk plain'}>
      <Side className="index" aria-label={indexLabel}>
        {index}
      </Side>
      {doings && (
        <section className="doings" aria-label="What can be done">
          {doings}
        </section>
      )}
      <main className="page" id="page" tabIndex={-1}>
        {children}
      </main>
      {margin && (
        <aside className="margin" aria-label="Margin">
          {margin}
        </aside>
      )}
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
