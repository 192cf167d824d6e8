interface DraftNoteProps {
  readonly restored: boolean;
  readonly onDiscard: () => void;
}

export function DraftNote({ restored, onDiscard }: DraftNoteProps) {
  if (!restored) return null;
  return (
    <p className="said">
      This page holds what was typed before and not saved.{' '}
      <button type="button" className="link" onClick={onDiscard}>
        Discard what was typed
      </button>
    </p>
  );
}
