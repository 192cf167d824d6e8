import type { FlangeRing, GasketBed } from '../../core/scatter/ring.ts';

/**
 * Independent solution of one flange: straight grid-beam elements (deflection, two rotations a node) around the circle,
 * each node on springs with the arm of the gasket. Shares nothing with the Fourier series.
 */
export function gridBeamCompliance(
  ring: FlangeRing,
  bed: GasketBed,
  boltRadius: number,
  boltCount: number,
  elements: number,
): number[] {
  const size = 3 * elements;
  const matrix = Array.from({ length: size }, () => new Float64Array(size));
  const angle = (2 * Math.PI) / elements;
  const length = 2 * ring.centroidRadius * Math.sin(angle / 2);
  const add = (i: number, j: number, value: number) => {
    const row = matrix[i];
    if (row) row[j] = (row[j] ?? 0) + value;
  };
  for (let e = 0; e < elements; e++) {
    const nodes = [e, (e + 1) % elements];
    // Direction of the chord; local axes: along the chord, and inwards across it.
    const direction = e * angle + angle / 2 + Math.PI / 2;
    const local = elementStiffness(ring.bending, ring.torsion, length);
    const [c, s] = [Math.cos(direction), Math.sin(direction)];
    const turn = [
      [1, 0, 0],
      [0, c, s],
      [0, -s, c],
    ];
    for (let a = 0; a < 2; a++)
      for (let b = 0; b < 2; b++)
        for (let i = 0; i < 3; i++)
          for (let j = 0; j < 3; j++) {
            let sum = 0;
            for (let k = 0; k < 3; k++)
              for (let l = 0; l < 3; l++)
                sum += (turn[k]?.[i] ?? 0) * (local[3 * a + k]?.[3 * b + l] ?? 0) * (turn[l]?.[j] ?? 0);
            add(3 * (nodes[a] ?? 0) + i, 3 * (nodes[b] ?? 0) + j, sum);
          }
  }
  // Movement at a radius r of a node: w + (r − Rc)·slope along the radius; slope from the two rotations about x and y.
  const movement = (node: number, radius: number): [number, number, number] => {
    const at = node * angle;
    const arm = radius - ring.centroidRadius;
    return [1, arm * Math.sin(at), -arm * Math.cos(at)];
  };
  for (let node = 0; node < elements; node++) {
    const spring = (2 * bed.foundation * 2 * Math.PI * bed.radius) / elements;
    // Three springs over the gasket's width with its second moment w²/12.
    const reach = bed.width / 2;
    for (const [offset, share] of [
      [-reach, 1 / 6],
      [0, 2 / 3],
      [reach, 1 / 6],
    ] as const) {
      const m = movement(node, bed.radius + offset);
      for (let i = 0; i < 3; i++)
        for (let j = 0; j < 3; j++)
          add(3 * node + i, 3 * node + j, spring * share * (m[i] ?? 0) * (m[j] ?? 0));
    }
  }
  const load = new Float64Array(size);
  movement(0, boltRadius).forEach((value, i) => {
    load[i] = value;
  });
  const moved = solve(matrix, load);
  return Array.from({ length: boltCount }, (_, bolt) => {
    const node = (bolt * elements) / boltCount;
    return movement(node, boltRadius).reduce((sum, part, i) => sum + part * (moved[3 * node + i] ?? 0), 0);
  });
}

/** Deflection w, rotation about the chord (twist) and about the axis across it (bending slope), at both ends. */
function elementStiffness(EI: number, GJ: number, l: number): number[][] {
  const [a, b, c, d] = [(12 * EI) / l ** 3, (6 * EI) / l ** 2, (4 * EI) / l, (2 * EI) / l];
  const g = GJ / l;
  // Slope dw/ds equals minus the rotation about the axis across, which points to the left of the chord.
  return [
    [a, 0, -b, -a, 0, -b],
    [0, g, 0, 0, -g, 0],
    [-b, 0, c, b, 0, d],
    [-a, 0, b, a, 0, b],
    [0, -g, 0, 0, g, 0],
    [-b, 0, d, b, 0, c],
  ];
}

/** Gaussian elimination of a symmetric positive definite system. */
function solve(matrix: Float64Array[], right: Float64Array): Float64Array {
  const size = right.length;
  const x = Float64Array.from(right);
  for (let k = 0; k < size; k++) {
    const pivot = matrix[k] ?? new Float64Array(size);
    for (let i = k + 1; i < size; i++) {
      const row = matrix[i] ?? new Float64Array(size);
      const factor = (row[k] ?? 0) / (pivot[k] ?? 0);
      if (factor === 0) continue;
      for (let j = k; j < size; j++) row[j] = (row[j] ?? 0) - factor * (pivot[j] ?? 0);
      x[i] = (x[i] ?? 0) - factor * (x[k] ?? 0);
    }
  }
  for (let k = size - 1; k >= 0; k--) {
    let sum = x[k] ?? 0;
    for (let j = k + 1; j < size; j++) sum -= (matrix[k]?.[j] ?? 0) * (x[j] ?? 0);
    x[k] = sum / (matrix[k]?.[k] ?? 0);
  }
  return x;
}
