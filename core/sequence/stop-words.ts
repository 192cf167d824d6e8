import type { Method } from '../contract/setting.ts';
import { NO_TURN, STALL } from './plans.ts';

const POWERED = 'the tool stops at the set torque and one more run does not move the nut';

const DONE: Readonly<Record<Method, string>> = {
  'hydraulic wrench': STALL,
  'hand torque wrench': 'the wrench shows the set torque and one more pull does not move the nut',
  'battery torque tool': POWERED,
  'pneumatic torque tool': POWERED,
  tensioner: 'the nut is run down to firm contact while the load stands, before the tensioner is let off',
};

const TENSIONED_AGAIN = 'every stud has been brought to this load once more';

/**
 * When a nut is done in a pass, in the terms of the method. What a site wrote into its own plan stays as written.
 *
 * @param method what the load is brought in with
 * @param stopWhen words of the plan
 * @returns words for the sheet
 * @example stopWords('tensioner', 'no nut turns') // 'no nut turns'
 * @source common practice; the tool's own instructions come first
 */
export function stopWords(method: Method, stopWhen: string): string {
  const words = stopWhen.replace(STALL, DONE[method]);
  return method === 'tensioner' ? words.replace(NO_TURN, TENSIONED_AGAIN) : words;
}
