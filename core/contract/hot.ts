import * as z from 'zod';
import { entered, optionalText } from './values.ts';

const temperature = entered('temperature', { min: -273, max: 1200 }).nullable().default(null);
const stress = entered('stress', { min: 1e6, max: 3000e6 }).nullable().default(null);
const modulus = entered('stress', { min: 1e9, max: 1000e9 }).nullable().default(null);
const expansion = entered('expansion', { min: -1e-4, max: 1e-3 }).nullable().default(null);

/** What decides load and strength hot. Metal temperatures, not the fluid's. */
export const hotData = z
  .strictObject({
    assemblyTemperature: temperature,
    boltTemperature: temperature,
    flangeTemperature: temperature,
    /** Mean coefficients between assembly and the temperature above. */
    boltExpansion: expansion,
    flangeExpansion: expansion,
    boltModulus: modulus,
    boltModulusHot: modulus,
    boltYieldHot: stress,
    /** kj: flanges and gasket together, for one bolt. */
    jointStiffness: entered('stiffness', { min: 1e3, max: 1e13 }).nullable().default(null),
    source: optionalText(300).default(''),
  })
  .prefault({});

/** What the site says about retightening this joint; the program never allows it. */
export const retighteningData = z
  .strictObject({
    procedure: optionalText(120).default(''),
    /** Bolt-metal temperatures a start-up pass is done between. */
    from: temperature,
    to: temperature,
    /** Null while the site has not said whether this gasket is excluded from retightening hot. */
    gasketExcluded: z.boolean().nullable().default(null),
  })
  .prefault({});
