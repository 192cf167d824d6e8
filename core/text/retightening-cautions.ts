import type { RetighteningKind } from '../contract/retightening.ts';

interface Caution {
  readonly text: string;
  readonly source: string;
}

const NEVER_ABOVE: Caution = {
  text: 'Back to the torque of the last full pass, never above it. A nut that goes on turning at that torque is no reason to raise it: stop and ask.',
  source: 'ASME PCC-1, from memory',
};

const CAUTIONS: Readonly<Record<RetighteningKind, readonly Caution[]>> = {
  'after the dwell': [NEVER_ABOVE],
  'during start-up': [
    NEVER_ABOVE,
    {
      text: 'The joint is warming and may come under pressure. Only by the site’s procedure, with its permit and its signatures.',
      source: 'common practice',
    },
    {
      text: 'Hot surfaces burn, and the tool’s hoses and seals have their own limit of temperature.',
      source: 'common practice',
    },
  ],
  'in service, under pressure': [
    {
      text: 'Turning a nut of a joint under pressure can break a stud or blow the gasket. It is outside this record: site procedure, competent person and signature decide, and reducing the pressure comes first.',
      source: 'common practice; ASME PCC-2, Article 311, for the subject (not read)',
    },
    {
      text: 'Never tighten a leaking joint to see whether it stops. The leak may be a stud that yields or a gasket that is failing.',
      source: 'common practice',
    },
    {
      text: 'One bolt at a time, in cross order, and nobody in line with a stud.',
      source: 'common practice',
    },
  ],
};

/**
 * What can hurt someone when nuts are turned again, before anything else is said of it.
 *
 * @param kind kind of retightening
 * @returns cautions in the order they matter
 * @example retighteningCautions('during start-up').length // 3
 * @source each names its own
 */
export function retighteningCautions(kind: RetighteningKind): readonly Caution[] {
  return CAUTIONS[kind];
}
