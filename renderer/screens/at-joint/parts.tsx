import { type ReactNode, useEffect, useRef } from 'react';
import type { RequestError } from '../../../core/contract/errors.ts';
import type { WorkKind } from '../../../core/contract/setting.ts';
import { cautionsAt, type JointStep } from '../../../core/text/cautions.ts';
import { useRegister } from '../../app/register.ts';
import { Failure } from '../../components/failure.tsx';
import { WhoInWords } from '../access/who.tsx';
import type { DialNumber } from './pass-record.ts';

interface AtShellProps {
  readonly title: string;
  readonly beside?: string;
  readonly onStop?: (() => void) | undefined;
  readonly children: ReactNode;
}

/** The whole window at the joint: what it is about, the way to stop, and one decision. */
export function AtShell({ title, beside, onStop, children }: AtShellProps) {
  const register = useRegister();
  return (
    <div className="at">
      <header className="at-head">
        <h1>{title}</h1>
        {beside && <span>{beside}</span>}
        {register.demo && <span className="demo-mark">Demo plant, invented</span>}
        <WhoInWords />
        {onStop && (
          <button type="button" className="key stop" onClick={onStop}>
            Stop work
          </button>
        )}
      </header>
      <main className="at-page" id="page" tabIndex={-1}>
        {register.state === 'read only' && (
          <p className="at-said" role="status">
            This register is open for reading only. {register.problem?.message} Nothing can be recorded.
          </p>
        )}
        {children}
      </main>
    </div>
  );
}

interface StepProps {
  /** The question this view asks. */
  readonly asks: string;
  readonly children: ReactNode;
  readonly keys?: ReactNode;
}

/** One decision; its heading takes the reading position, so that it is read out when it comes up. */
export function Step({ asks, children, keys }: StepProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  const asked = useRef<string | null>(null);
  useEffect(() => {
    if (asked.current === asks) return;
    asked.current = asks;
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, [asks]);
  return (
    <section className="at-step" aria-labelledby="asks">
      <h2 id="asks" ref={heading} tabIndex={-1}>
        {asks}
      </h2>
      {children}
      {keys && <div className="keys">{keys}</div>}
    </section>
  );
}

interface CautionsProps {
  readonly kind: WorkKind;
  readonly step: JointStep;
}

/** What stands before this decision. */
export function StepCautions({ kind, step }: CautionsProps) {
  return (
    <ul className="at-cautions" aria-label="Caution">
      {cautionsAt(kind, step).map(({ text, source }) => (
        <li key={text} title={source}>
          {text}
        </li>
      ))}
    </ul>
  );
}

/** The number to be set, alone in the unit of what it is set on. */
export function BigNumber({ number, set }: { readonly number: DialNumber; readonly set?: ReactNode }) {
  return (
    <>
      <p className="at-number" data-long={number.value.length > 4 || undefined}>
        {number.value} <span>{number.unit}</span>
      </p>
      <p className="at-on">
        {number.unit !== 'kN' && 'on '}
        {number.on}
        {set}
      </p>
    </>
  );
}

interface KeyProps {
  readonly children: ReactNode;
  readonly onClick: () => void;
  readonly main?: boolean;
  readonly pressed?: boolean;
  readonly disabled?: boolean;
}

export function Key({ children, onClick, main, pressed, disabled }: KeyProps) {
  return (
    <button
      type="button"
      className={main ? 'key done' : 'key'}
      aria-pressed={pressed}
      disabled={disabled}
      onClick={onClick}
    >
      {children}
    </button>
  );
}

interface NotKeptProps {
  readonly error: RequestError | null;
  readonly onTakeUp: () => void;
}

/** What was typed last is not in the register: because it could not be written yet, or another window was faster. */
export function NotKept({ error, onTakeUp }: NotKeptProps) {
  if (error === null) return null;
  return (
    <>
      <Failure error={error} what="What was typed last is not in the register." />
      {error.code === 'conflict' && <Key onClick={onTakeUp}>Take up what it holds</Key>}
    </>
  );
}

interface TroubleProps {
  readonly error: RequestError | null;
  readonly what: string;
}

export function Trouble({ error, what }: TroubleProps) {
  return error && <Failure error={error} what={what} />;
}
