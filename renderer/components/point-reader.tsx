import { useId } from 'react';

interface PointReaderProps {
  /** What one point is: "Opening read out below". */
  readonly label: string;
  readonly count: number;
  readonly place: number;
  /** The chosen point in words. */
  readonly words: string;
  readonly onPlace: (place: number) => void;
}

/** Steps through the points of a chart with the arrow keys or a finger, and reads each out. */
export function PointReader({ label, count, place, words, onPlace }: PointReaderProps) {
  const id = useId();
  if (count < 2) return null;
  return (
    <div className="field whole no-print">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="range"
        min={0}
        max={count - 1}
        value={place}
        aria-valuetext={words}
        onChange={(event) => onPlace(Number(event.target.value))}
      />
    </div>
  );
}
