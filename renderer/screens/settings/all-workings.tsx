import type { SettingCard } from '../../../core/contract/setting.ts';
import { keyOf } from './use-working.ts';
import { WorkingSection } from './working-section.tsx';

/** On paper nothing can be pressed: the sheet lists how every number came about. */
export function AllWorkings({ card }: { readonly card: SettingCard }) {
  return (
    <section className="only-print all-workings" aria-label="Workings">
      <h2>Workings</h2>
      {card.workings.map((working, at) => (
        <WorkingSection key={keyOf(working)} working={working} card={card} id={`working-${at + 1}`} />
      ))}
    </section>
  );
}
