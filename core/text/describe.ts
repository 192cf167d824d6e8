import type { JointData } from '../contract/joint.ts';
import type { ToolProperties } from '../contract/tool.ts';
import type { Entered } from '../units/entered.ts';
import { UNITS } from '../units/units.ts';
import { showEntered } from './number.ts';

type Flange = JointData['flange'];

/** "NPS 8 Class 300", "DN 200 PN 16", or what a custom joint is called. */
export function describeFlange(flange: Flange): string {
  if (flange.kind === 'custom') return flange.description;
  if (flange.standard === 'EN 1092-1') return `PN ${flange.rating} DN ${flange.size}`;
  const series = flange.standard.startsWith('ASME B16.47') ? ` series ${flange.standard.slice(-1)}` : '';
  return `NPS ${flange.size} Class ${flange.rating}${series}`;
}

/** "12 × 7/8-9 UNC"; the part that is not known says so. */
export function describeBolting(bolting: { count: number | null; thread: string | null }): string {
  if (bolting.count === null && bolting.thread === null) return 'not known';
  return `${bolting.count ?? 'not known'} × ${bolting.thread ?? 'not known'}`;
}

/** "690 bar, 5400 N·m", "1-7/16 in opening", "0–1000 bar, marks every 10 bar". */
export function describeTool(properties: ToolProperties): string {
  switch (properties.class) {
    case 'drive unit':
      return `${showEntered(properties.ratedPressure)}, ${showEntered(properties.ratedTorque)}`;
    case 'cassette':
      return withRating(`${showEntered(properties.acrossFlats)} opening`, properties.ratedTorque);
    case 'reducer':
      return withRating(
        `${showEntered(properties.outerAcrossFlats)} to ${showEntered(properties.acrossFlats)}`,
        properties.ratedTorque,
      );
    case 'gauge':
      return `0–${properties.scaleMax.text} ${UNITS[properties.scaleMax.unit].label}, marks every ${showEntered(properties.graduation)}`;
    case 'pump':
    case 'hose':
      return showEntered(properties.ratedPressure);
  }
}

function withRating(text: string, rating: Entered | null): string {
  return rating === null ? text : `${text}, ${showEntered(rating)}`;
}
