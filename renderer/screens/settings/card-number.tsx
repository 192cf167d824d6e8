import type { ReactNode } from 'react';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { type NumberName, restsOnAssumed } from './use-working.ts';

export interface Choosing {
  readonly chosen: NumberName;
  readonly onChoose: (of: NumberName) => void;
}

interface CardNumberProps extends Choosing {
  readonly card: SettingCard;
  readonly of: NumberName;
  readonly children: ReactNode;
}

/** A number on the card; pressing it opens how it came about. */
export function CardNumber({ card, of, chosen, onChoose, children }: CardNumberProps) {
  const assumed = restsOnAssumed(card, of);
  if (!card.workings.some((working) => working.of === of)) return <>{children}</>;
  return (
    <button
      type="button"
      className={assumed ? 'figure assumed' : 'figure'}
      aria-pressed={chosen === of}
      onClick={() => onChoose(of)}
    >
      {children}
      <span className="unseen">{assumed ? ', rests on an assumed value' : ''}, show its working</span>
    </button>
  );
}
