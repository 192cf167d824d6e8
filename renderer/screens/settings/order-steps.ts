export interface Place {
  readonly pass: number;
  readonly step: number;
}

/** Walking needs only how many steps each pass has. */
type Walk = readonly (readonly unknown[])[];

export function forward(place: Place, steps: Walk): Place {
  const inPass = steps[place.pass]?.length ?? 0;
  if (place.step + 1 < inPass) return { ...place, step: place.step + 1 };
  return place.pass + 1 < steps.length ? { pass: place.pass + 1, step: 0 } : place;
}

export function back(place: Place, steps: Walk): Place {
  if (place.step > 0) return { ...place, step: place.step - 1 };
  if (place.pass === 0) return place;
  const before = place.pass - 1;
  return { pass: before, step: Math.max(0, (steps[before]?.length ?? 1) - 1) };
}
