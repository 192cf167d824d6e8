import type { Read } from './handler.ts';

export const startForecasts: Read<'forecasts.start'> = (context, input) =>
  context.forecasts.start(context, input);

export const forecastsRun: Read<'forecasts.run'> = async ({ forecasts }, { id }) => forecasts.get(id);

export const cancelForecasts: Read<'forecasts.cancel'> = async ({ forecasts }, { id }) =>
  forecasts.cancel(id);

export const forecastRows: Read<'forecasts.rows'> = async ({ forecasts }, input) => forecasts.rows(input);
