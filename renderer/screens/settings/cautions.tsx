import { useState } from 'react';
import type { SettingCard } from '../../../core/contract/setting.ts';

interface CautionsProps {
  readonly cautions: SettingCard['cautions'];
  /** While a setting is worked out only the first are open; an issued sheet and the paper show all of them. */
  readonly folded: boolean;
}

const OPEN_AT_FIRST = 4;

export function Cautions({ cautions, folded }: CautionsProps) {
  const [open, setOpen] = useState(!folded);
  if (cautions.length === 0) return null;
  const hidden = cautions.length - OPEN_AT_FIRST;
  return (
    <section className={open ? 'caution-list' : 'caution-list folded-list'} aria-label="Cautions">
      <h2>Caution</h2>
      <ul>
        {cautions.map((caution) => (
          <li key={caution.text} title={caution.source}>
            {caution.text}
          </li>
        ))}
      </ul>
      {hidden > 0 && folded && (
        <button
          type="button"
          className="link small no-print"
          aria-expanded={open}
          onClick={() => setOpen(!open)}
        >
          {open ? 'Fold the cautions' : `${hidden} more cautions, all on the sheet`}
        </button>
      )}
    </section>
  );
}
