import type { FindingCode } from '../findings/codes.ts';
import type { FindingFacts, Wording, Words } from './finding-facts.ts';
import { JOINT_WORDS } from './finding-words-joint.ts';
import { LIMIT_WORDS } from './finding-words-limits.ts';
import { TOOL_WORDS } from './finding-words-tools.ts';

/** The words of every finding. A code without words does not compile. */
const WORDS: Words<FindingCode> = { ...JOINT_WORDS, ...LIMIT_WORDS, ...TOOL_WORDS };

/** Title, detail and remedy of a finding. */
export function wordFinding<C extends FindingCode>(code: C, facts: FindingFacts[C]): Wording {
  return WORDS[code](facts);
}
