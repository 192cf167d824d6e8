import { type ReactNode, useEffect, useRef } from 'react';
import { useWatch } from 'react-hook-form';
import { counted } from '../app/text/number.ts';
import { useFaultsUnder } from './faults.ts';
import { filledIn } from './fold-count.ts';

interface FoldProps {
  readonly title: string;
  /** Beginnings of the field names inside. */
  readonly under: readonly string[];
  /** Fields that begin so but stand elsewhere. */
  readonly except?: readonly string[];
  readonly children: ReactNode;
}

/** A part of a form that most records leave empty. It says what it holds, and opens by itself on a fault inside. */
export function Fold({ title, under, except = [], children }: FoldProps) {
  const values = useWatch() as Record<string, unknown>;
  const filled = filledIn(values, under, except);
  const faults = useFaultsUnder('').filter(({ field }) => {
    const name = field.replace(/^data\./, '');
    return under.some((start) => name.startsWith(start)) && !except.some((each) => name.startsWith(each));
  });
  const frame = useRef<HTMLDetailsElement>(null);
  const faulty = faults.length > 0;
  useEffect(() => {
    if (faulty && frame.current) frame.current.open = true;
  }, [faulty]);
  return (
    <details className="folded" ref={frame}>
      <summary>
        {title} <span className="small">{filled === 0 ? 'nothing entered' : counted(filled, 'value')}</span>
        {faulty && <span className="fault-line"> {counted(faults.length, 'fault')} inside</span>}
      </summary>
      <div className="fold">{children}</div>
    </details>
  );
}
