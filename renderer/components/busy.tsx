import { useEffect, useState } from 'react';

const PATIENCE_MS = 300;

/** Says what is being done; stays silent for the first moment so that quick work doesn't flicker. */
export function Busy({ what }: { readonly what: string }) {
  const [seconds, setSeconds] = useState<number | null>(null);
  useEffect(() => {
    const started = Date.now();
    const show = setTimeout(() => setSeconds(0), PATIENCE_MS);
    const tick = setInterval(() => setSeconds(Math.floor((Date.now() - started) / 1000)), 1000);
    return () => {
      clearTimeout(show);
      clearInterval(tick);
    };
  }, []);
  if (seconds === null) return null;
  return (
    <div className="busy">
      <p role="status">{what}</p>
      <progress aria-label={what} />
      {seconds > 1 && <p className="small">{seconds} s</p>}
    </div>
  );
}
