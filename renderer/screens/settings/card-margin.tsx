import type { ReactNode } from 'react';
import type { SettingCard, Working } from '../../../core/contract/setting.ts';
import { FindingList } from './finding-list.tsx';
import { UncertaintySection } from './uncertainty-section.tsx';
import { WorkingSection } from './working-section.tsx';

interface CardMarginProps {
  readonly card: SettingCard;
  readonly working: Working | null;
  readonly stale: boolean;
  readonly issued: boolean;
  /** What can be done with the card. */
  readonly children: ReactNode;
}

export function CardMargin({ card, working, stale, issued, children }: CardMarginProps) {
  return (
    <>
      <div className={stale ? 'stack stale' : 'stack'} aria-busy={stale}>
        <FindingList findings={card.findings} jointId={card.jointId} confirmable={!issued} />
        {working && (
          <div className="no-print">
            <WorkingSection working={working} card={card} />
          </div>
        )}
        {card.uncertainty && <UncertaintySection uncertainty={card.uncertainty} />}
      </div>
      {children}
    </>
  );
}
