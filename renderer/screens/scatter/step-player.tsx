import { useEffect, useState } from 'react';

interface PlayerProps {
  readonly most: number;
  readonly place: number;
  readonly onPlace: (place: number) => void;
}

const STEP_MS = 700;

/** Plays the steps one after the other; where motion is not wanted they are stepped through by hand alone. */
export function Player({ most, place, onPlace }: PlayerProps) {
  const [playing, setPlaying] = useState(false);
  const still = useStillness();
  const atEnd = place >= most - 1;
  useEffect(() => {
    if (!playing || still) return;
    if (atEnd) {
      setPlaying(false);
      return;
    }
    const timer = setTimeout(() => onPlace(place + 1), STEP_MS);
    return () => clearTimeout(timer);
  }, [playing, still, atEnd, place, onPlace]);
  const stop = (next: number) => {
    setPlaying(false);
    onPlace(next);
  };
  return (
    <div className="row no-print">
      <button type="button" className="quiet" disabled={place === 0} onClick={() => stop(place - 1)}>
        Step back
      </button>
      {!still && (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            if (!playing && atEnd) onPlace(0);
            setPlaying(!playing);
          }}
        >
          {playing ? 'Pause' : 'Play the steps'}
        </button>
      )}
      <button type="button" className="quiet" disabled={atEnd} onClick={() => stop(place + 1)}>
        Step on
      </button>
    </div>
  );
}

const QUERY = '(prefers-reduced-motion: reduce)';

function useStillness(): boolean {
  const [still, setStill] = useState(() => window.matchMedia(QUERY).matches);
  useEffect(() => {
    const asked = window.matchMedia(QUERY);
    const onChange = () => setStill(asked.matches);
    asked.addEventListener('change', onChange);
    return () => asked.removeEventListener('change', onChange);
  }, []);
  return still;
}
