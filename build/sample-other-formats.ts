/** Lid spring of a spice tin as an SVG of 40 × 24 mm: a path with arcs and a round hole. */
export const spiceTinSpring = `<?xml version="1.0" encoding="UTF-8"?>
<!-- Diewright sample: spice tin lid spring, steel 0.5 mm -->
<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="24mm" viewBox="0 0 40 24">
  <path d="M 6 2 H 34 A 4 4 0 0 1 38 6 V 18 A 4 4 0 0 1 34 22 H 24 V 16 A 2 2 0 0 0 22 14 H 18 A 2 2 0 0 0 16 16 V 22 H 6 A 4 4 0 0 1 2 18 V 6 A 4 4 0 0 1 6 2 Z"
    fill="none" stroke="#000000"/>
  <circle cx="8" cy="8" r="2.25" fill="none" stroke="#000000"/>
</svg>
`;

/** Cam disc of a music box as measured points, inch, on two circles of which the outer one is lifted over a quarter. */
export function musicBoxCam(): string {
  const outer = ring(72, (turn) => {
    const part = (turn * 2) / Math.PI;
    return part < 1 ? 0.5 + 0.04 * Math.sin(Math.PI * part) ** 2 : 0.5;
  });
  return ['x in, y in', ...outer, '', ...ring(36, () => 0.125), ''].join('\n');
}

function ring(count: number, radiusAt: (turn: number) => number): string[] {
  return Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    const radius = radiusAt(turn);
    return `${(radius * Math.cos(turn)).toFixed(5)},${(radius * Math.sin(turn)).toFixed(5)}`;
  });
}
