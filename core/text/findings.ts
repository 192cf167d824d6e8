import type { FindingCode } from '../findings/codes.ts';
import type { FindingFacts, Wording, Words } from './finding-facts.ts';
import { JOINT_WORDS } from './finding-words-joint.ts';
import { LIMIT_WORDS } from './finding-words-limits.ts';
import { TOOL_ROOM_WORDS } from './finding-words-tool-room.ts';
import { TOOL_WORDS } from './finding-words-tools.ts';

/** The words of every finding. A code without words does not compile. */
const WORDS: Words<FindingCode> = { ...JOINT_WORDS, ...LIMIT_WORDS, ...TOOL_WORDS, ...TOOL_ROOM_WORDS };

/**
 * Chooses title, detail and remedy of a finding.
 *
 * @param code code of the closed list
 * @param facts what the words speak of
 * @returns wording
 * @example wordFinding('bolt_set_unknown', { index: 3, sets: 1 }).title // 'No such bolt set'
 * @source rule of this program
 */
export function wordFinding<C extends FindingCode>(code: C, facts: FindingFacts[C]): Wording {
  return WORDS[code](facts);
}
