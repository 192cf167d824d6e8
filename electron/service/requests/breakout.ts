import { forecastOf } from '../breakout/forecast.ts';
import { breakoutHistoryOf } from '../breakout/history.ts';
import type { Read } from './handler.ts';

export const breakoutHistory: Read<'breakout.history'> = breakoutHistoryOf;

export const forecastBreakout: Read<'breakout.forecast'> = forecastOf;
