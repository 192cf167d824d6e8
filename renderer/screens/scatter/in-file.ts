import { roundSignificant } from '../../../core/units/round.ts';
import { fromSI } from '../../../core/units/units.ts';

/** A load as a file for a spreadsheet has it, kN. */
export const inFile = (load: number): number => roundSignificant(fromSI(load, 'kN'), 9);
