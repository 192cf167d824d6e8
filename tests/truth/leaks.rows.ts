import { afterShown } from '../../core/leak/rate.ts';
import { rowsOf, type TruthRow } from './row.ts';

const gelman = rowsOf('gelman', 'from memory');
const PLACE = 'section 2.6, asthma mortality rate';

/** Prior Gamma(3, 5) per 100 000 people and year; 200 000 people are two of them. */
const PRIOR = { shape: 3, years: 5 };
const oneYear = () => afterShown(PRIOR, { leaks: 3, years: 2 });
const tenYears = () => afterShown(PRIOR, { leaks: 30, years: 20 });

/** A rate of rare events with a conjugate prior, as the textbook works it. */
export const LEAK_ROWS: readonly TruthRow[] = [
  gelman(PLACE, 'shape of a rate after 3 events', '6', () => oneYear().shape),
  gelman(PLACE, 'exposure of a rate after 3 events', '7', () => oneYear().years),
  gelman(PLACE, 'mean rate after 3 events in one year', '0.86', () => oneYear().shape / oneYear().years),
  gelman(PLACE, 'mean rate after 30 events in ten years', '1.32', () => tenYears().shape / tenYears().years),
];
