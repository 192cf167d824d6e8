import { type ReactNode, useEffect, useRef } from 'react';

interface CoverProps {
  readonly label: string;
  readonly children: ReactNode;
}

/**
 * Lies over the whole window: the page beneath is neither seen nor reached, and keeps what was typed. It is there for a
 * secret, and begins at its field.
 */
export function Cover({ label, children }: CoverProps) {
  const frame = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = frame.current;
    if (dialog === null) return;
    const show = () => {
      if (dialog.open) return;
      dialog.showModal();
      dialog.querySelector<HTMLInputElement>('input[type="password"]')?.focus();
    };
    show();
    // A second Escape closes a dialog whatever the page says.
    dialog.addEventListener('close', show);
    return () => {
      dialog.removeEventListener('close', show);
      dialog.close();
    };
  }, []);
  return (
    <dialog className="cover" aria-label={label} ref={frame} onCancel={(event) => event.preventDefault()}>
      <div className="alone">{children}</div>
    </dialog>
  );
}
