import type { Contour, Vertex } from '../../core/geometry/contour';

export const corner = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });

/** tan(90° / 4): the bulge of a quarter arc. */
export const quarter = Math.tan(Math.PI / 8);

export const polygon = (...points: readonly (readonly [number, number])[]): Contour =>
  points.map(([x, y]) => corner(x, y));

export const square = (side: number, x = 0, y = 0): Contour =>
  polygon([x, y], [x + side, y], [x + side, y + side], [x, y + side]);

export const circle = (radius: number, x = 0, y = 0): Contour => [
  corner(x - radius, y, 1),
  corner(x + radius, y, 1),
];

/** Straight length and radius of the ends. */
export const roundedSlot = (length: number, radius: number): Contour => [
  corner(0, -radius),
  corner(length, -radius, 1),
  corner(length, radius),
  corner(0, radius, 1),
];

/** An L of legs `leg` long and `width` wide. */
export const angleShape = (leg: number, width: number): Contour =>
  polygon([0, 0], [leg, 0], [leg, width], [width, width], [width, leg], [0, leg]);

/** Points alternating between two radii. */
export const star = (points: number, outer: number, inner: number): Contour =>
  Array.from({ length: 2 * points }, (_, i) => {
    const angle = (Math.PI * i) / points;
    const radius = i % 2 === 0 ? outer : inner;
    return corner(radius * Math.cos(angle), radius * Math.sin(angle));
  });

/** A rectangle with quarter arcs at its corners, its lower left corner at the origin. */
export const roundedRectangle = (width: number, height: number, radius: number): Contour => [
  corner(radius, 0),
  corner(width - radius, 0, quarter),
  corner(width, radius),
  corner(width, height - radius, quarter),
  corner(width - radius, height),
  corner(radius, height, quarter),
  corner(0, height - radius),
  corner(0, radius, quarter),
];
