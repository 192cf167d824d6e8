import { driftOf } from '../../core/breakout/drift.ts';
import { type Random, randomOf } from './plants.ts';

/** How soon a service that moves is found. */
export interface DriftFinding {
  readonly services: number;
  /** Openings of the service before it began to move. */
  readonly quiet: number;
  /** ln R by which each opening lies above the one before. */
  readonly slope: number;
  /** Part of the services that was called moving while it was not. */
  readonly falseAlarms: number;
  /** Part of the others that was found within the openings that were looked at. */
  readonly found: number;
  /** Openings after the move began: half and nine tenths of those found were found within. */
  readonly half: number;
  readonly nineTenths: number;
}

const WATCHED = 24;
/** Spread of ln R between middles of openings of one service: joints and openings together. */
const SPREAD = 0.13;

/** Services that stand still for a while and then take more at every opening. */
export function driftFinding(
  services: number,
  firstSeed: number,
  quiet: number,
  slope: number,
): DriftFinding {
  let falseAlarms = 0;
  const after: number[] = [];
  for (let seed = firstSeed; seed < firstSeed + services; seed++) {
    const { seenAt } = driftOf(series(randomOf(seed), quiet, slope));
    if (seenAt === null) continue;
    if (seenAt < quiet || slope === 0) falseAlarms += 1;
    else after.push(seenAt - quiet + 1);
  }
  const rising = after.toSorted((a, b) => a - b);
  const at = (part: number) => rising[Math.ceil(part * rising.length) - 1] ?? Number.NaN;
  return {
    services,
    quiet,
    slope,
    falseAlarms: falseAlarms / services,
    found: rising.length / Math.max(1, services - falseAlarms),
    half: at(0.5),
    nineTenths: at(0.9),
  };
}

function series(random: Random, quiet: number, slope: number): number[] {
  return Array.from(
    { length: quiet + WATCHED },
    (_, index) => 0.1 + SPREAD * random.normal() + slope * Math.max(0, index - quiet + 1),
  );
}
