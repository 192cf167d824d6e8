import { Link } from 'wouter';
import type { SettingCard } from '../../../core/contract/setting.ts';
import { unknownParts } from './unknown-parts.ts';

interface UnknownSectionProps {
  readonly card: SettingCard;
  /** An issued sheet is frozen: nothing entered now would fill it. */
  readonly frozen: boolean;
}

/** What the card does not say, one line each, and what would make it known. */
export function UnknownSection({ card, frozen }: UnknownSectionProps) {
  const parts = unknownParts(card);
  if (parts.length === 0) return null;
  return (
    <section aria-labelledby="not-known">
      <h2 id="not-known">Not known on this card</h2>
      <dl className="lines wide unknown-parts">
        {parts.map((part) => (
          <div key={part.name}>
            <dt>{part.name}</dt>
            <dd>
              <span className="unknown">not known</span>
            </dd>
            <dd className="from">
              {frozen ? (
                <>It takes {part.takes}.</>
              ) : (
                <Link href={`/joints/${card.jointId}/edit/${part.field}`}>It takes {part.takes}</Link>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
