export interface Spot {
  readonly bolt: number;
  readonly x: number;
  readonly y: number;
  /** Angle on the drawing, radians, clockwise from three o'clock. */
  readonly angle: number;
}

export interface Circle {
  readonly size: number;
  readonly centre: number;
  readonly radius: number;
  /** Half the width across corners of a nut as drawn. */
  readonly nut: number;
  readonly spots: readonly Spot[];
}

const LARGEST_NUT = 16;

/** Places bolts on the sheet: bolt 1 is the first clockwise from twelve o'clock, holes straddling the centre line. */
export function layOut(count: number, size: number): Circle {
  const centre = size / 2;
  const pitch = Math.PI / count;
  // The rim needs 2.6 nut widths; nuts must not touch along the chord between neighbours.
  const nut = Math.min(LARGEST_NUT, ((size / 2) * Math.sin(pitch) * 0.84) / (1 + 2.2 * Math.sin(pitch)));
  const radius = centre - Math.max(nut, 7) * 1.75 - 16;
  const spots = Array.from({ length: count }, (_, index) => {
    const angle = -Math.PI / 2 + 2 * pitch * index + (count > 1 ? pitch : 0);
    return {
      bolt: index + 1,
      x: centre + radius * Math.cos(angle),
      y: centre + radius * Math.sin(angle),
      angle,
    };
  });
  return { size, centre, radius, nut, spots };
}

export function hexagon(x: number, y: number, r: number, turn: number): string {
  return Array.from({ length: 6 }, (_, corner) => {
    const angle = turn + (Math.PI / 3) * corner;
    return `${(x + r * Math.cos(angle)).toFixed(1)},${(y + r * Math.sin(angle)).toFixed(1)}`;
  }).join(' ');
}
