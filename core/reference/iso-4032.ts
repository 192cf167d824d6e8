import type { MetricNutRow } from './metric-nut.ts';

/** Hexagon regular nuts, style 1 (ISO 4032; across flats as in the 1999 edition and later). Stops at M64. */
export const ISO_4032: readonly MetricNutRow[] = [
  [5, 8, 7.78, 4.7, 7.5, 'N5+N6+N4+N3+N7', 'AGREE'],
  [6, 10, 9.78, 5.2, 9.5, 'N5+N6+N4+N3+N7', 'AGREE'],
  [8, 13, 12.73, 6.8, 11.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [10, 16, 15.73, 8.4, 14.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [12, 18, 17.73, 10.8, 16.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [14, 21, 20.67, 12.8, 20.5, 'N5+N6+N4+N3+N7', 'DISAGREE'],
  [16, 24, 23.67, 14.8, 22.4, 'N5+N6+N4+N3+N7', 'AGREE'],
  [18, 27, 26.16, 15.8, 24.9, 'N5+N6+N4+N3+N7', 'AGREE'],
  [20, 30, 29.16, 18, 28.2, 'N5+N6+N4+N3+N7', 'AGREE'],
  [22, 34, 33, 19.4, 31.4, 'N5+N6+N4+N3+N7', 'AGREE'],
  [24, 36, 35, 21.5, 33.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [27, 41, 40, 23.8, 38, 'N5+N6+N4+N3+N7', 'AGREE'],
  [30, 46, 45, 25.6, 42.8, 'N5+N6+N4+N3+N7', 'AGREE'],
  [33, 50, 49, 28.7, 46.6, 'N5+N6+N4+N3+N7', 'AGREE'],
  [36, 55, 53.8, 31, 51.2, 'N5+N6+N4+N3+N7', 'AGREE'],
  [39, 60, 58.8, 33.4, 55.9, 'N5+N6+N4+N3+N7', 'AGREE'],
  [42, 65, 63.1, 34, 60, 'N5+N6+N4+N3+N7', 'AGREE'],
  [45, 70, 68.1, 36, 64.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [48, 75, 73.1, 38, 69.5, 'N5+N6+N4+N3+N7', 'AGREE'],
  [52, 80, 78.1, 42, 74.5, 'N5+N6+N4+N3+N7', 'AGREE'],
  [56, 85, null, 45, 78.7, 'N5+N6+N4+N3+N7', 'DISAGREE'],
  [60, 90, 87.8, 48, 82.7, 'N5+N6+N4+N3+N7', 'AGREE'],
  [64, 95, 92.8, 51, 88.2, 'N5+N6+N4+N3+N7', 'AGREE'],
];
