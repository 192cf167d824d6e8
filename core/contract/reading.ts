import { entered } from './values.ts';

/** A pressure as the gauge showed it. */
export const dialled = entered('pressure', { min: 0, max: 4e8 });

/** A torque as it was read. */
export const torque = entered('torque', { min: 0, max: 2e5 });
