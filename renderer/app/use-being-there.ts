import { useEffect } from 'react';
import { lookWhetherHere, stay } from './sign-in.ts';

const LOOK_MS = 30_000;
const STAY_MS = 60_000;

/** Typing and pressing count as being there, although nothing is asked; and a session that is over covers the page soon. */
export function useBeingThere(here: boolean): void {
  useEffect(() => {
    if (!here) return;
    let told = Date.now();
    const onDoing = () => {
      if (Date.now() - told < STAY_MS) return;
      told = Date.now();
      void stay();
    };
    const looking = setInterval(lookWhetherHere, LOOK_MS);
    window.addEventListener('keydown', onDoing);
    window.addEventListener('pointerdown', onDoing);
    return () => {
      clearInterval(looking);
      window.removeEventListener('keydown', onDoing);
      window.removeEventListener('pointerdown', onDoing);
    };
  }, [here]);
}
