import { expect, test } from 'vitest';
import { jointExpectation, shortForecast } from '../../core/breakout/forecast.ts';
import { forecastMany, forecastsFinding } from '../../core/breakout/forecast-many.ts';
import { plantOpenings } from '../../core/breakout/plant.ts';
import { simulatePlant } from '../calibration/plants.ts';

test('a forecast among many is the forecast of the joint alone, whatever was asked before', () => {
  const { past, next } = simulatePlant(11);
  const plant = plantOpenings(past);
  const many = forecastMany(plant);
  const asked = [...next, ...next.toReversed()].flatMap((opening) => [
    opening,
    { ...opening, joint: 'never opened' },
    { ...opening, joint: 'never opened', bolts: opening.bolts + 4 },
  ]);
  expect(asked.length).toBeGreaterThan(100);
  for (const { joint, traits, bolts } of asked) {
    const alone = shortForecast(jointExpectation(plant, joint, traits).expected, bolts);
    const { forecast } = many(joint, traits, bolts);
    expect(forecast?.median).toBe(alone.median);
    expect(forecast?.worst).toBe(alone.worst);
    expect(forecast?.worstAbove(1.7)).toBe(alone.worstAbove(1.7));
  }
});

test('a joint whose bolts nobody has counted has no forecast, and the sentence counts it', () => {
  const plant = plantOpenings([]);
  const traits = { service: '', band: 'not known', lubricant: null, years: null } as const;
  const { forecast, seized, evidence } = forecastMany(plant)('J', traits, null);
  expect([forecast, seized, evidence.sufficiency]).toEqual([null, null, 'too few to say']);
  expect(forecastsFinding([], 'W-1')).toBe('No joint was looked at.');
});
