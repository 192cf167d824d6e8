/** What the model of the load needs for the joint looked at; invented for the tests. */
export const INPUTS = [
  ['Stiffness of the gasket', '20000'],
  ['Radius of the gasket’s reaction', '130'],
  ['Width of the gasket', '15'],
  ['Radial width of the ring', '100'],
  ['Thickness of the ring', '60'],
  ['Radius of the ring’s centroid', '180'],
  ['Load to set', '290'],
] as const;
