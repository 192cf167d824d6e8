import { fitLine, lineUncertainty } from '../../core/calibration/line.ts';
import { row as anyRow, type TruthRow } from './row.ts';

export const GUM_TEMPERATURES = [
  21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511,
];
export const GUM_CORRECTIONS = [
  -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16,
];
const REFERENCE = 20;

function gumLine() {
  const line = fitLine(
    GUM_TEMPERATURES.map((t) => t - REFERENCE),
    GUM_CORRECTIONS,
  );
  if (line === null) throw new Error('GUM H.3: no line');
  return line;
}

function row(what: string, place: string, printed: string, computed: () => number): TruthRow {
  return anyRow('published', what, 'gum', place, printed, computed);
}

export const GUM_ROWS: readonly TruthRow[] = [
  row('intercept y1, °C', 'H.3.3', '-0.1712', () => gumLine().intercept),
  row('standard uncertainty of y1, °C', 'H.3.3', '0.0029', () => gumLine().interceptUncertainty),
  row('slope y2', 'H.3.3', '0.00218', () => gumLine().slope),
  row('standard uncertainty of y2', 'H.3.3', '0.00067', () => gumLine().slopeUncertainty),
  row('correlation of y1 and y2', 'H.3.3', '-0.930', () => {
    const line = gumLine();
    return line.covariance / (line.interceptUncertainty * line.slopeUncertainty);
  }),
  row('residual standard deviation s, °C', 'H.3.3', '0.0035', () => gumLine().residualDeviation),
  row(
    'sum of squared residuals × 10⁴, °C²',
    'Table H.6, evaluated in a public library’s documentation',
    '1.10096583',
    () => gumLine().residuals.reduce((sum, r) => sum + r * r, 0) * 1e4,
  ),
  row('correction at 30 °C', 'H.3.4', '-0.1494', () => {
    const line = gumLine();
    return line.intercept + line.slope * (30 - REFERENCE);
  }),
  row('standard uncertainty of the correction at 30 °C', 'H.3.4', '0.0041', () =>
    lineUncertainty(gumLine(), 30 - REFERENCE),
  ),
];
