/** What a number measures. A unit belongs to exactly one quantity, so a pressure can't be read as a stress. */
export type QuantityKind =
  | 'length'
  | 'area'
  | 'force'
  | 'stress'
  | 'pressure'
  | 'torque'
  | 'temperature'
  | 'angle'
  | 'expansion'
  | 'stiffness'
  | 'mass'
  | 'duration'
  | 'leakage'
  | 'massFlow'
  | 'volumeFlow'
  | 'specificLeakage'
  | 'concentration'
  | 'ratio';

interface UnitDefinition {
  readonly quantity: QuantityKind;
  /** Printed after a number. */
  readonly label: string;
  /** SI value = entered value × factor + offset. */
  readonly factor: number;
  readonly offset?: number;
}

// Exact by definition: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s² (NIST SP 811, Appendix B).
const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;
const PSI = POUND_FORCE / (INCH * INCH);

/** Every unit a person may type or read, keyed by the code stored in the register. */
export const UNITS = {
  mm: { quantity: 'length', label: 'mm', factor: 0.001 },
  m: { quantity: 'length', label: 'm', factor: 1 },
  in: { quantity: 'length', label: 'in', factor: INCH },
  mm2: { quantity: 'area', label: 'mm²', factor: 1e-6 },
  in2: { quantity: 'area', label: 'in²', factor: INCH * INCH },
  N: { quantity: 'force', label: 'N', factor: 1 },
  kN: { quantity: 'force', label: 'kN', factor: 1000 },
  lbf: { quantity: 'force', label: 'lbf', factor: POUND_FORCE },
  MPa: { quantity: 'stress', label: 'MPa', factor: 1e6 },
  ksi: { quantity: 'stress', label: 'ksi', factor: PSI * 1000 },
  bar: { quantity: 'pressure', label: 'bar', factor: 1e5 },
  psi: { quantity: 'pressure', label: 'psi', factor: PSI },
  MPa_pressure: { quantity: 'pressure', label: 'MPa', factor: 1e6 },
  'N.m': { quantity: 'torque', label: 'N·m', factor: 1 },
  'lbf.ft': { quantity: 'torque', label: 'lbf·ft', factor: POUND_FORCE * 0.3048 },
  'lbf.in': { quantity: 'torque', label: 'lbf·in', factor: POUND_FORCE * INCH },
  degC: { quantity: 'temperature', label: '°C', factor: 1 },
  degF: { quantity: 'temperature', label: '°F', factor: 5 / 9, offset: -160 / 9 },
  deg: { quantity: 'angle', label: '°', factor: Math.PI / 180 },
  rad: { quantity: 'angle', label: 'rad', factor: 1 },
  'um/m.K': { quantity: 'expansion', label: 'µm/(m·K)', factor: 1e-6 },
  'uin/in.F': { quantity: 'expansion', label: 'µin/(in·°F)', factor: 1.8e-6 },
  'kN/mm': { quantity: 'stiffness', label: 'kN/mm', factor: 1e6 },
  'lbf/in': { quantity: 'stiffness', label: 'lbf/in', factor: POUND_FORCE / INCH },
  kg: { quantity: 'mass', label: 'kg', factor: 1 },
  lb: { quantity: 'mass', label: 'lb', factor: POUND },
  min: { quantity: 'duration', label: 'min', factor: 60 },
  h: { quantity: 'duration', label: 'h', factor: 3600 },
  s: { quantity: 'duration', label: 's', factor: 1 },
  // Throughput pV/t of a gas, as leak tests state it.
  'mbar.L/s': { quantity: 'leakage', label: 'mbar·L/s', factor: 0.1 },
  'Pa.m3/s': { quantity: 'leakage', label: 'Pa·m³/s', factor: 1 },
  'kg/h': { quantity: 'massFlow', label: 'kg/h', factor: 1 / 3600 },
  'g/h': { quantity: 'massFlow', label: 'g/h', factor: 1e-3 / 3600 },
  'mL/min': { quantity: 'volumeFlow', label: 'mL/min', factor: 1e-6 / 60 },
  'L/h': { quantity: 'volumeFlow', label: 'L/h', factor: 1e-3 / 3600 },
  'mg/s.m': { quantity: 'specificLeakage', label: 'mg/(s·m)', factor: 1e-6 },
  ppmv: { quantity: 'concentration', label: 'ppmv', factor: 1e-6 },
  one: { quantity: 'ratio', label: '', factor: 1 },
  percent: { quantity: 'ratio', label: '%', factor: 0.01 },
} as const satisfies Record<string, UnitDefinition>;

export type Unit = keyof typeof UNITS;

export const UNIT_CODES = Object.keys(UNITS) as [Unit, ...Unit[]];

/**
 * Units of one quantity, in the order they are offered.
 *
 * @param quantity what is measured
 * @returns unit codes, the first one offered first
 * @example unitsOf('pressure') // ['bar', 'psi', 'MPa_pressure']
 * @source NIST SP 811 (2008), Appendix B.8
 */
export function unitsOf(quantity: QuantityKind): Unit[] {
  return UNIT_CODES.filter((unit) => UNITS[unit].quantity === quantity);
}

/**
 * Converts a value to SI (m, m², N, Pa, N·m, °C, rad, 1/K, N/m, s, Pa·m³/s, kg/s, m³/s, kg/(s·m), 1).
 *
 * Equation: si = value × factor + offset.
 * @param value number in `unit`, any finite value
 * @param unit unit code
 * @returns value in SI
 * @example toSI(1, 'in') // 0.0254
 * @source NIST SP 811 (2008), Appendix B.8
 */
export function toSI(value: number, unit: Unit): number {
  const definition: UnitDefinition = UNITS[unit];
  return value * definition.factor + (definition.offset ?? 0);
}

/**
 * Converts an SI value to a unit.
 *
 * Equation: value = (si − offset) / factor.
 * @param si number in the quantity’s SI unit, any finite value
 * @param unit unit code
 * @returns value in `unit`
 * @example fromSI(0.0254, 'in') // 1
 * @source NIST SP 811 (2008), Appendix B.8
 */
export function fromSI(si: number, unit: Unit): number {
  const definition: UnitDefinition = UNITS[unit];
  return (si - (definition.offset ?? 0)) / definition.factor;
}
