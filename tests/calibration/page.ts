import { type Coverage, coverageOf, inside } from './coverage.ts';
import { type DriftFinding, driftFinding } from './drift.ts';

/** What is shown on the page and held to its bounds by the test: the same plants, drawn once. */
export interface Calibration {
  readonly coverage: Coverage;
  readonly still: DriftFinding;
  readonly moving: readonly DriftFinding[];
}

export const PLANTS = 200;
const FIRST_SEED = 1;
const PER_PLANT = 8;
const SERVICES = 1000;
const QUIET = 16;

export function calibration(): Calibration {
  return {
    coverage: coverageOf(PLANTS, FIRST_SEED, PER_PLANT),
    still: driftFinding(SERVICES, FIRST_SEED, QUIET, 0),
    moving: [0.02, 0.03, 0.04, 0.06].map((slope) => driftFinding(SERVICES, FIRST_SEED, QUIET, slope)),
  };
}

const percent = (part: number) => `${(100 * part).toFixed(1)} %`;
const times = (width: number) => `${Math.exp(width).toFixed(2)} times`;

/** The page of how forecasts come out on invented plants whose truth is known. */
export function calibrationPage({ coverage, still, moving }: Calibration): string {
  const { worst, bolts, byOwn, width } = coverage;
  const own = Object.entries(byOwn).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `${[
    '# How the forecast of breakout comes out',
    '',
    'Written by `npm run docs:forecast`; a test fails when it is out of date. Every plant here is drawn by lot from a fixed seed and its truth is known; no plant is a real one.',
    '',
    `${coverage.plants} plants of 2 to 7 services with 2 to 16 joints of 4 to 24 bolts, each opened none to four times, in part with only some of the bolts read. Middles, spreads between joints, between openings and between bolts differ from service to service. From what the register of each plant knows, the next opening of up to ${PER_PLANT} of its joints is forecast and held against what then happens.`,
    '',
    '| 90 % interval of | Cases | Inside | Below | Above |',
    '| --- | ---: | ---: | ---: | ---: |',
    line('the worst bolt', worst),
    ...own.map(([name, hits]) => line(`the worst bolt, ${name} of the joint’s own openings known`, hits)),
    line('one bolt', bolts),
    '',
    `Sharpness: the interval of the worst bolt reaches on average over ${times(width.forecast)} its lower end; for somebody who knew the truth of each service, but not of the joint, over ${times(width.knowing)}; without any history over ${times(width.nothing)}.`,
    '',
    '## A service that moves',
    '',
    `${still.services} services of which the middles of openings scatter by 13 %. After ${still.quiet} openings that stand still, each opening takes a part more than the one before. Of services that never move, ${percent(still.falseAlarms)} are called moving within ${still.quiet + 24} openings.`,
    '',
    '| More at each opening | Found | Half of them within | Nine tenths within |',
    '| ---: | ---: | ---: | ---: |',
    ...moving.map(
      ({ slope, found, half, nineTenths }) =>
        `| ${percent(Math.expm1(slope))} | ${percent(found)} | ${half} openings | ${nineTenths} openings |`,
    ),
  ].join('\n')}\n`;
}

function line(name: string, hits: Coverage['worst']): string {
  const { openings, below, above } = hits;
  const cells = [
    String(openings),
    percent(inside(hits)),
    percent(below / openings),
    percent(above / openings),
  ];
  return `| ${name} | ${cells.join(' | ')} |`;
}
