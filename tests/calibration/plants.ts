import { type OpeningTraits, temperatureBandOf } from '../../core/breakout/classes.ts';
import type { PlantOpening } from '../../core/breakout/plant.ts';
import { uniformSource } from '../../core/uncertainty/draw.ts';
import { normalQuantile } from '../../core/uncertainty/normal.ts';

/** A joint of an invented plant whose truth is known. */
interface TrueJoint {
  readonly name: string;
  readonly bolts: number;
  readonly traits: OpeningTraits;
  readonly level: number;
  readonly truth: TrueClass;
}

/** What ln R of one service really is. */
interface TrueClass {
  readonly mean: number;
  readonly joints: number;
  readonly openings: number;
  readonly bolts: number;
}

export interface SimulatedPlant {
  /** What the register knows, in order of time. */
  readonly past: readonly PlantOpening[];
  /** What then happens, one further opening of each joint. */
  readonly next: readonly NextOpening[];
}

export interface NextOpening {
  readonly joint: string;
  readonly traits: OpeningTraits;
  readonly bolts: number;
  readonly ratios: readonly number[];
  /** What somebody would expect who knew the truth of the service, not of the joint: middle and variances of ln R. */
  readonly truth: TrueClass;
}

const SERVICES = ['feed water', 'steam', 'crude', 'residue', 'amine', 'hydrogen', 'cooling water'];
const LUBRICANTS = ['nickel-based anti-seize', 'molybdenum paste'];
const BOLTS = [4, 8, 12, 16, 20, 24];

export interface Random {
  uniform(): number;
  normal(): number;
  /** Whole, `least` to `most`. */
  whole(least: number, most: number): number;
}

const WARM_UP = 40;

export function randomOf(seed: number): Random {
  const uniform = uniformSource(seed);
  // A seed of few bits needs some draws until they are spread over all of them.
  for (let draw = 0; draw < WARM_UP; draw++) uniform();
  return {
    uniform,
    normal: () => normalQuantile(uniform()),
    whole: (least, most) => least + Math.floor(uniform() * (most - least + 1)),
  };
}

/**
 * An invented plant: services with a middle, a spread between joints, between openings and between bolts of their own;
 * few or many joints, opened none to four times, not every bolt read.
 */
export function simulatePlant(seed: number): SimulatedPlant {
  const random = randomOf(seed);
  const past: PlantOpening[] = [];
  const next: NextOpening[] = [];
  const services = random.whole(2, SERVICES.length);
  const level = 0.12 + 0.08 * random.normal();
  for (let service = 0; service < services; service++) {
    const truth = {
      mean: level + 0.2 * random.normal(),
      joints: 0.02 + 0.16 * random.uniform(),
      openings: 0.02 + 0.14 * random.uniform(),
      bolts: 0.07 + 0.18 * random.uniform(),
    };
    const temperature = 40 + 400 * random.uniform();
    const joints = random.whole(2, 16);
    for (let index = 0; index < joints; index++) {
      const joint = jointOf(random, SERVICES[service] ?? '', index, temperature, truth);
      const openings = random.whole(0, 4);
      for (let one = 0; one < openings; one++) past.push(pastOpening(random, joint));
      const { name, bolts, traits } = joint;
      next.push({ joint: name, traits, bolts, ratios: ratiosOf(random, joint, bolts), truth });
    }
  }
  return { past, next };
}

function jointOf(
  random: Random,
  service: string,
  index: number,
  temperature: number,
  truth: TrueClass,
): TrueJoint {
  return {
    name: `${service} ${index}`,
    bolts: BOLTS[random.whole(0, BOLTS.length - 1)] ?? 8,
    traits: {
      service,
      band: temperatureBandOf(temperature),
      lubricant: LUBRICANTS[random.uniform() < 0.8 ? 0 : 1] ?? null,
      years: 1 + 3 * random.uniform(),
    },
    level: truth.mean + truth.joints * random.normal(),
    truth,
  };
}

function pastOpening(random: Random, joint: TrueJoint): PlantOpening {
  const read = random.uniform() < 0.3 ? random.whole(1, joint.bolts) : joint.bolts;
  const { name, traits } = joint;
  return { joint: name, traits, ratios: ratiosOf(random, joint, read), studs: read, seized: 0 };
}

function ratiosOf(random: Random, { level, truth }: TrueJoint, count: number): number[] {
  const middle = level + truth.openings * random.normal();
  return Array.from({ length: count }, () => Math.exp(middle + truth.bolts * random.normal()));
}
