import type { ReactNode } from 'react';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { findWorking, keyOf, type NumberName, restsOnAssumed } from './use-working.ts';

export interface Choosing {
  readonly chosen: string;
  readonly onChoose: (key: string) => void;
}

interface CardNumberProps extends Choosing {
  readonly card: SettingCard;
  readonly of: NumberName;
  /** Words of the working's title, where the card has several of its kind. */
  readonly about?: readonly string[];
  readonly children: ReactNode;
}

/** A number on the card; pressing it opens how it came about. */
export function CardNumber({ card, of, about = [], chosen, onChoose, children }: CardNumberProps) {
  const working = findWorking(card, of, about);
  if (working === undefined) return <>{children}</>;
  const assumed = restsOnAssumed(working);
  const key = keyOf(working);
  return (
    <button
      type="button"
      className={assumed ? 'figure assumed' : 'figure'}
      aria-pressed={chosen === key || chosen === of}
      onClick={() => onChoose(key)}
    >
      {children}
      <span className="unseen">{assumed ? ', rests on an assumed value' : ''}, show its working</span>
    </button>
  );
}
