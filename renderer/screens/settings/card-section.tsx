import { type ReactNode, useId } from 'react';
import type { SettingCard } from '../../../core/contract/setting.ts';
import type { Choosing } from './card-number.tsx';

export interface SectionProps extends Choosing {
  readonly card: SettingCard;
}

interface CardSectionProps {
  readonly title: string;
  /** What the section comes to, beside its title. */
  readonly finding?: ReactNode;
  readonly children: ReactNode;
}

/** A section under the pass table: open, and folded away by whoever wants the page short. */
export function CardSection({ title, finding, children }: CardSectionProps) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <details className="folded" open>
        <summary>
          <h2 id={id}>{title}</h2> {finding && <span className="small">{finding}</span>}
        </summary>
        <div className="fold">{children}</div>
      </details>
    </section>
  );
}
