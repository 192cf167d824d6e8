import type { RegisterState } from '../../../core/contract/register.ts';

/** What a person can do about each named problem. Nothing here touches the file. */
const NEXT_STEPS: Record<string, string> = {
  register_not_sqlite:
    'Move that file away and put the register file of the last backup in its place, or start Studbook on another folder.',
  register_foreign: 'Start Studbook on a folder of its own.',
  register_newer: 'Open it with the newer version of Studbook that wrote it.',
  register_locked: 'Close the other program that holds the file, then try again.',
  register_damaged: 'Keep the file as it is, and put the register file of the last backup in its place.',
  register_location: 'Move the register to a folder on a disk of this PC.',
  disk_full: 'Make room on the disk, then try again.',
};

interface RegisterProblemProps {
  readonly state: RegisterState;
  readonly onRetry: () => void;
}

export function RegisterProblem({ state, onRetry }: RegisterProblemProps) {
  const code = state.problem?.code ?? 'internal';
  return (
    <main className="alone" id="page">
      <h1>The register could not be opened</h1>
      <div className="failure" role="alert">
        <p>{state.problem?.message ?? 'The service gave no reason; its log has it.'}</p>
      </div>
      <dl className="lines">
        <div>
          <dt>Folder</dt>
          <dd>{state.folder}</dd>
        </div>
        <div>
          <dt>Problem</dt>
          <dd>{code.replaceAll('_', ' ')}</dd>
        </div>
      </dl>
      {NEXT_STEPS[code] && <p>{NEXT_STEPS[code]}</p>}
      <p className="small">Nothing in the folder was changed.</p>
      <div>
        <button type="button" className="act" onClick={onRetry}>
          Try to open it again
        </button>
      </div>
    </main>
  );
}
