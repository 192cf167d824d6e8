import { Component, type ErrorInfo, type ReactNode } from 'react';

interface BoundaryProps {
  readonly children: ReactNode;
}

interface BoundaryState {
  readonly error: Error | null;
}

/** Catches a page that can't be drawn, so that the rest of the book stays open. The library offers this as a class only. */
export class Boundary extends Component<BoundaryProps, BoundaryState> {
  override state: BoundaryState = { error: null };

  static getDerivedStateFromError(error: Error): BoundaryState {
    return { error };
  }

  override componentDidCatch(error: Error, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (error === null) return this.props.children;
    return (
      <main className="alone" id="page" tabIndex={-1}>
        <h1>This page could not be drawn</h1>
        <p>Nothing on the register was changed, and what was typed is kept.</p>
        <div className="failure" role="alert">
          {error.message}
        </div>
        <div>
          <button type="button" className="act" onClick={() => window.location.reload()}>
            Open the window again
          </button>
        </div>
      </main>
    );
  }
}
