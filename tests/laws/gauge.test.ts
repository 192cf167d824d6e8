import fc from 'fast-check';
import { expect, test } from 'vitest';
import { gaugeCorrection } from '../../core/calibration/gauge-correction.ts';
import { roundToMark, scalePlace } from '../../core/tools/gauge.ts';
import { toSI } from '../../core/units/units.ts';

const gauge = fc.record({
  unit: fc.constantFrom('bar' as const, 'psi' as const, 'MPa_pressure' as const),
  marks: fc.integer({ min: 20, max: 200 }),
  step: fc.constantFrom(1, 2, 5, 10, 20, 50, 100, 200),
});

test('the dialled mark is the nearest, lies on a mark, and reads back in the gauge’s unit', () => {
  fc.assert(
    fc.property(gauge, fc.double({ min: 0, max: 1, noNaN: true }), ({ unit, marks, step }, share) => {
      const graduation = toSI(step, unit);
      const scale = { unit, scaleMax: marks * graduation, graduation };
      const pressure = share * scale.scaleMax;
      const dial = roundToMark(pressure, scale);
      expect(Math.abs(dial.pressure - pressure)).toBeLessThanOrEqual((graduation / 2) * (1 + 1e-9));
      expect(Math.abs(dial.value / step - Math.round(dial.value / step))).toBeLessThan(1e-9);
      expect(Math.abs(toSI(dial.value, unit) - dial.pressure)).toBeLessThan(1e-3);
    }),
  );
});

test('a limit that the pressure keeps is kept by the mark', () => {
  fc.assert(
    fc.property(
      gauge,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 1, max: 1.2, noNaN: true }),
      ({ unit, marks, step }, share, room) => {
        const graduation = toSI(step, unit);
        const pressure = share * marks * graduation;
        const ceiling = pressure * room;
        const dial = roundToMark(pressure, { unit, scaleMax: marks * graduation, graduation }, ceiling);
        expect(dial.pressure).toBeLessThanOrEqual(ceiling * (1 + 1e-9) + 1e-3);
      },
    ),
  );
});

test('a limit that lies on a mark may be dialled', () => {
  const scale = { unit: 'bar' as const, scaleMax: 1e8, graduation: 1e6 };
  expect(roundToMark(699.6e5, scale, 700e5).value).toBe(700);
  expect(roundToMark(696e5, scale, 699e5).value).toBe(690);
});

test.each([
  [150, 'low'],
  [200, 'readable'],
  [900, 'readable'],
  [901, 'high'],
  [1000, 'high'],
  [1001, 'beyond'],
] as const)('%d bar on a scale to 1000 bar is %s', (bar, place) => {
  expect(scalePlace(bar * 1e5, { unit: 'bar', scaleMax: 1e8, graduation: 1e6 })).toBe(place);
});

test('a gauge correction turns true into shown pressure and back inside its points, and says nothing outside', () => {
  const points = [0, 200, 400, 600].map((bar) => ({ indicated: bar, reference: bar * 1.01 + 1 }));
  const correction = gaugeCorrection(points);
  fc.assert(
    fc.property(fc.double({ min: 1, max: 607, noNaN: true }), (reference) => {
      const indicated = correction?.toIndicated(reference) ?? Number.NaN;
      expect(Math.abs((correction?.toReference(indicated) ?? Number.NaN) - reference)).toBeLessThan(
        1e-9 * 607,
      );
    }),
  );
  expect(correction?.toIndicated(700)).toBeNull();
  expect(correction?.toReference(-1)).toBeNull();
  expect(gaugeCorrection([])).toBeNull();
  expect(gaugeCorrection([...points].map(({ indicated }) => ({ indicated, reference: 5 })))).toBeNull();
});
