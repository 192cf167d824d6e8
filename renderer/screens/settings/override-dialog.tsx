import { useEffect, useRef } from 'react';
import { mayOverride } from '../../../core/access/overrides.ts';
import { rolesInWords } from '../../../core/access/roles.ts';
import type { RequestError } from '../../../core/contract/errors.ts';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { Failure } from '../../components/failure.tsx';
import { SeverityMark } from '../../components/marks.tsx';

type Finding = SettingCard['findings'][number];

/** Refusals of one code are set aside together, with one reason. */
export const refusalsOf = (card: SettingCard): [Finding['code'], Finding[]][] => [
  ...Map.groupBy(
    card.findings.filter(({ severity }) => severity === 'refusal'),
    ({ code }) => code,
  ),
];

interface OverrideDialogProps {
  readonly card: SettingCard;
  readonly name: string;
  readonly reasons: Readonly<Record<string, string>>;
  readonly onReason: (code: string, reason: string) => void;
  readonly busy: boolean;
  readonly error: RequestError | null;
  readonly onIssue: () => void;
  readonly onLeave: () => void;
}

/** Each refusal with who may set it aside and what they answer for; one that nobody may leaves nothing to issue. */
export function OverrideDialog(props: OverrideDialogProps) {
  const { card, name, reasons, onReason, busy, error, onIssue, onLeave } = props;
  const frame = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = frame.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  const refusals = refusalsOf(card);
  const barred = refusals.filter(([code]) => mayOverride(code) === null);
  const open = refusals.filter(([code]) => mayOverride(code) !== null);
  const told = open.every(([code]) => (reasons[code] ?? '').trim() !== '');
  return (
    <dialog className="sheet stack" aria-labelledby="override" ref={frame} onClose={onLeave}>
      <h2 id="override">Override refusals, {card.tag}</h2>
      <p className="small">
        The refusal stays on the setting, with the reason and your name, wherever it is shown. The number does
        not become another by it.
      </p>
      {barred.map(([code, findings]) => (
        <Refusal key={code} findings={findings}>
          <p>
            <b>Nobody may override this.</b> {findings[0]?.remedy}
          </p>
        </Refusal>
      ))}
      {open.map(([code, findings]) => (
        <Refusal key={code} findings={findings}>
          <p className="small">
            {rolesInWords(mayOverride(code)?.roles ?? [])} may; they answer for it{' '}
            {mayOverride(code)?.answersFor}.
          </p>
          {barred.length === 0 && (
            <div className="field">
              <label htmlFor={`reason-${code}`}>Reason to override: {findings[0]?.title}</label>
              <textarea
                id={`reason-${code}`}
                rows={2}
                maxLength={500}
                value={reasons[code] ?? ''}
                onChange={(event) => onReason(code, event.target.value)}
              />
            </div>
          )}
        </Refusal>
      ))}
      {error && <Failure error={error} what="The setting was not issued." />}
      <div className="row">
        {barred.length === 0 && (
          <button type="button" className="act" disabled={!told || busy} onClick={onIssue}>
            Override and issue as {name}
          </button>
        )}
        <button type="button" className="quiet" onClick={onLeave}>
          Leave it refused
        </button>
      </div>
    </dialog>
  );
}

interface RefusalProps {
  readonly findings: readonly Finding[];
  readonly children: React.ReactNode;
}

function Refusal({ findings, children }: RefusalProps) {
  return (
    <article className="f refusal">
      <SeverityMark severity="refusal" />
      <div className="stack tight">
        <h3>{findings[0]?.title}</h3>
        {findings.map(({ subject, detail }) => (
          <p key={`${subject} ${detail}`}>{detail}</p>
        ))}
        {children}
      </div>
    </article>
  );
}
