import { forecastOf } from '../breakout/forecast.ts';
import { breakoutHistoryOf } from '../breakout/history.ts';
import { ownRecordOf } from '../breakout/own-record.ts';
import type { Read } from './handler.ts';

export const breakoutHistory: Read<'breakout.history'> = breakoutHistoryOf;

export const forecastBreakout: Read<'breakout.forecast'> = forecastOf;

export const breakoutOwnRecord: Read<'breakout.ownRecord'> = (context) => ownRecordOf(context);
