import type { JointData } from '../contract/joint.ts';
import type { ToolProperties } from '../contract/tool.ts';
import type { Entered } from '../units/entered.ts';
import { UNITS } from '../units/units.ts';
import { showEntered } from './number.ts';

type Flange = JointData['flange'];

/**
 * Names a flange as it is spoken of, or as a custom joint is called.
 *
 * @param flange flange as stored
 * @returns standard size and rating, or the description
 * @example describeFlange(data.flange) // 'NPS 8 Class 300'
 * @source ASME B16.5, ASME B16.47 and EN 1092-1 for the designations
 */
export function describeFlange(flange: Flange): string {
  if (flange.kind === 'custom') return flange.description;
  if (flange.standard === 'EN 1092-1') return `PN ${flange.rating} DN ${flange.size}`;
  const series = flange.standard.startsWith('ASME B16.47') ? ` series ${flange.standard.slice(-1)}` : '';
  return `NPS ${flange.size} Class ${flange.rating}${series}`;
}

/**
 * Names number and thread of the studs; the part that is not known says so.
 *
 * @param bolting count and thread, each null when not known
 * @returns short text
 * @example describeBolting({ count: 12, thread: null }) // '12 × not known'
 * @source rule of this program
 */
export function describeBolting(bolting: { count: number | null; thread: string | null }): string {
  if (bolting.count === null && bolting.thread === null) return 'not known';
  return `${bolting.count ?? 'not known'} × ${bolting.thread ?? 'not known'}`;
}

/**
 * Names what matters of a tool: ratings, opening, or scale and marks.
 *
 * @param properties properties as stored, in the units they were typed in
 * @returns short text
 * @example describeTool(set.drive.data.properties) // '690 bar, 1100 N·m'
 * @source rule of this program
 */
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
    case 'square-drive head':
      return withRating(
        `${showEntered(properties.square)} square, socket ${showEntered(properties.acrossFlats)}`,
        properties.ratedTorque,
      );
    case 'counterhold wrench':
      return withRating(`${showEntered(properties.acrossFlats)} opening`, properties.ratedTorque);
    case 'hand torque wrench':
      return `${showEntered(properties.least)} to ${showEntered(properties.most)}, marks every ${showEntered(properties.torqueGraduation)}`;
    case 'pump':
    case 'hose':
    case 'coupler':
      return showEntered(properties.ratedPressure);
  }
}

function withRating(text: string, rating: Entered | null): string {
  return rating === null ? text : `${text}, ${showEntered(rating)}`;
}
