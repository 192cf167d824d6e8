import type { KeyboardEvent } from 'react';
import type { SettingCard } from '../../../core/contract/setting.ts';
import type { Step } from '../../../core/sequence/pass-steps.ts';
import { boltWords } from '../../../core/text/bolts.ts';
import { BoltCircle } from '../../components/bolt-circle.tsx';
import { back, forward, type Place } from './order-steps.ts';

interface OrderFigureProps {
  readonly card: SettingCard;
  readonly steps: readonly (readonly Step[])[];
  readonly place: Place;
  readonly onPlace: (place: Place) => void;
}

/** The joint's bolt circle with the bolt to be turned now; forward and back with the buttons or the arrow keys. */
export function OrderFigure({ card, steps, place, onPlace }: OrderFigureProps) {
  if (card.boltCount === null) {
    return <p className="small">The number of studs is not known, so there is no order to show.</p>;
  }
  const order = steps[place.pass] ?? [];
  const pass = card.passes[place.pass];
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'ArrowRight' && event.key !== 'ArrowLeft') return;
    event.preventDefault();
    onPlace(event.key === 'ArrowRight' ? forward(place, steps) : back(place, steps));
  };
  const atEnd = place.pass + 1 >= steps.length && place.step + 1 >= order.length;
  return (
    <figure className="order">
      <BoltCircle count={card.boltCount} order={order} at={place.step} />
      {order.length > 0 && (
        // biome-ignore lint/a11y/noStaticElementInteractions: the arrow keys do what the two buttons inside do
        <div className="keys" onKeyDown={onKeyDown}>
          <button
            type="button"
            className="quiet"
            onClick={() => onPlace(back(place, steps))}
            disabled={place.pass === 0 && place.step === 0}
          >
            Previous bolt
          </button>
          <button
            type="button"
            className="quiet"
            onClick={() => onPlace(forward(place, steps))}
            disabled={atEnd}
          >
            Next bolt
          </button>
        </div>
      )}
      <figcaption className="small">
        {order.length > 0 && (
          <span role="status" className="no-print">
            {pass?.name}: {boltWords(order[place.step] ?? [])}, {place.step + 1} of {order.length}.{' '}
          </span>
        )}
        Numbered clockwise from the mark, seen from the nut side.
        <OrderWords card={card} />
      </figcaption>
    </figure>
  );
}

function OrderWords({ card }: { readonly card: SettingCard }) {
  if (card.toolOrder !== null) {
    const { tools, steps, exact, source } = card.toolOrder;
    return (
      <>
        {' '}
        {tools === 2 ? 'Two' : 'Four'} tools at the same time{' '}
        {steps.map((step) => (
          <span key={step.join('-')}>
            <span className="group">{step.map((bolt) => bolt ?? 'wait').join('+')}</span>{' '}
          </span>
        ))}
        ({exact ? 'exactly' : 'nearly'} opposite, {source}).
      </>
    );
  }
  if (card.order === null) return null;
  const origin = card.order.origin === 'published' ? 'published list' : 'rule of this program';
  return (
    <>
      {' '}
      Star order{' '}
      {card.order.groups.map((group, at) => (
        <span className="group" key={group.join('-')}>
          {at > 0 && ' · '}
          {group.join('-')}
        </span>
      ))}{' '}
      ({origin}: {card.order.source}).
    </>
  );
}
