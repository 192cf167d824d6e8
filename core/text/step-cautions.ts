import type { JointStep } from '../contract/life.ts';

interface StepCaution {
  readonly text: string;
  readonly source: string;
}

const COMMON = 'common practice';

const ISOLATION: readonly StepCaution[] = [
  {
    text: 'The isolation is made and proven as the site’s procedure says, by whoever it names. This book only keeps its reference.',
    source: 'rule of this program; HSE HSG253 for the subject',
  },
  {
    text: 'One closed valve may pass. Pressure can build again behind it, and heat, liquid or gas can stay trapped in between.',
    source: 'HSE HSG253, from memory',
  },
];

const LIVE_AGAIN: readonly StepCaution[] = [
  {
    text: 'Before the isolation is lifted, every open joint within it is looked at on the spot, and everybody who works there is told.',
    source: COMMON,
  },
];

/** What can hurt someone at a step, before it is taken. */
const CAUTIONS: Readonly<Partial<Record<JointStep, readonly StepCaution[]>>> = {
  isolate: ISOLATION,
  'lift isolation': LIVE_AGAIN,
  release: [
    {
      text: 'Two persons go to the joint, each by themselves, and read its tag, its side of the valve and a landmark. A drawing alone is no check.',
      source: 'published incident reports on opening the wrong joint',
    },
    {
      text: 'Zero energy is proven at this joint, not somewhere on the line. A gauge at zero may be blocked or closed off.',
      source: 'HSE HSG253, from memory',
    },
    {
      text: 'Supports of springs and hangers are locked as their procedure says before bolts come out: the pipe may move.',
      source: COMMON,
    },
    {
      text: 'This step is no permit. The permit and the competent person of the site say whether the joint may be opened.',
      source: 'rule of this program',
    },
  ],
  break: [
    {
      text: 'Check once more that this is the joint: tag, side of the valve, landmark, the permit at hand and in date.',
      source: COMMON,
    },
    {
      text: 'Treat the first opening as live. Loosen in stages, first the bolts on the side away from you, and stay out of line with the gap.',
      source: 'HSE HSG253 and common practice',
    },
    {
      text: 'Way out, gas test and protection as the permit says. Stop at anything that comes out, and close the gap again if that is safe.',
      source: COMMON,
    },
    {
      text: 'A flange that moves or a stud that will not come holds stored pipe load. Stop and have it supported.',
      source: COMMON,
    },
  ],
  inspect: [
    {
      text: 'Keep hands out of the gap: flanges can move while they are not bolted.',
      source: COMMON,
    },
    {
      text: 'Residue may burn, poison or ignite, also after purging. Protection and disposal as the permit says.',
      source: COMMON,
    },
  ],
  'make up': [
    {
      text: 'Keep fingers out of the gap while flanges are drawn together and while the gasket goes in.',
      source: COMMON,
    },
    {
      text: 'Flanges are not forced together with the bolts. Misalignment goes to the competent person.',
      source: 'ASME PCC-1, from memory',
    },
  ],
  'relaxation pass': [
    {
      text: 'Nobody tightens a joint that leaks or is under pressure by this step. Work in service is for the site’s own procedure and the competent person.',
      source: 'rule of this program; ASME PCC-2 for the subject (not read)',
    },
    {
      text: 'During start-up the bolts are hot and the line is being heated: protection, way out and temperature as the site’s procedure says.',
      source: COMMON,
    },
  ],
  test: [
    {
      text: 'Nobody stands at the joint while the pressure is raised. It is looked at only once it is held, from out of line.',
      source: COMMON,
    },
    {
      text: 'Gas stores far more energy than liquid. A test with gas is for whoever the site has named for it.',
      source: COMMON,
    },
    {
      text: 'A leak is never tightened under pressure: take the pressure off, see it on the gauge, then work.',
      source: COMMON,
    },
  ],
  reinstate: LIVE_AGAIN,
  'enter service': [
    {
      text: 'Stay away from the joint while pressure and temperature come up; look at it afterwards, from out of line.',
      source: COMMON,
    },
  ],
  'report leak': [
    {
      text: 'Get away from it first, warn the others and call as the site’s procedure says. This record can wait.',
      source: COMMON,
    },
    {
      text: 'Never feel for a leak. Steam and hydrogen may not be seen, and a fine jet goes through skin.',
      source: COMMON,
    },
  ],
};

/**
 * Cautions at a step of a joint, the ones that come first at the top.
 *
 * @param step name of the step
 * @returns texts with their sources; none for a step that is taken at a desk
 * @example stepCautions('schedule') // []
 * @source each caution names its own
 */
export function stepCautions(step: JointStep): readonly StepCaution[] {
  return CAUTIONS[step] ?? [];
}
