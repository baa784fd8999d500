import type { Contour, Vertex } from '../../core/geometry/contour';

/**
 * A sixfold snow crystal of about `lines` straight lines: six arms with barbed side branches at 60°. Branches stand
 * 1.6 mm apart, barbs 0.8 mm, so that the outline grows with the number of lines and its details keep their size.
 */
export function crystalOutline(lines: number): Contour {
  const perArm = lines / 6;
  // Side branches grow towards the middle: branch k of n carries up to k barbs on each side.
  let branches = 1;
  while (armLines(branches) < perArm) branches++;
  const arm = armOutline(branches);
  const contour: Vertex[] = [];
  for (let k = 0; k < 6; k++) {
    const [cos, sin] = [Math.cos((k * Math.PI) / 3), Math.sin((k * Math.PI) / 3)];
    for (const [x, y] of arm) contour.push({ x: x * cos - y * sin, y: x * sin + y * cos, bulge: 0 });
  }
  return contour;
}

const pitch = 1.6;
const barbPitch = 0.8;
const barbHeight = 0.35;

function armLines(branches: number): number {
  return armOutline(branches).length;
}

/** One arm along +x, from its root on the right-hand side round its tip back to the root on the left. */
function armOutline(branches: number): [number, number][] {
  const half: [number, number][] = [];
  const root = 4;
  // Side branches of one arm must stay clear of the next arm: they end on its 30° line.
  for (let k = 0; k < branches; k++) {
    const x = root + k * pitch;
    const barbs = Math.floor((Math.min(x * 0.5, (branches - k) * pitch) - 0.6) / barbPitch);
    half.push([x - 0.25, -0.3]);
    half.push(...sideBranch(x, Math.max(0, barbs)));
    half.push([x + 0.35, -0.3]);
  }
  const tip: [number, number] = [root + branches * pitch + 1, 0];
  const mirrored = [...half].reverse().map(([x, y]): [number, number] => [x, -y]);
  return [...half, tip, ...mirrored];
}

/** A branch at −60° from (x, −0.3) with barbs on both sides. */
function sideBranch(x: number, barbs: number): [number, number][] {
  const along: [number, number] = [Math.cos(Math.PI / 3), -Math.sin(Math.PI / 3)];
  const at = (s: number, side: number): [number, number] => [
    x + along[0] * s - along[1] * side,
    -0.3 + along[1] * s + along[0] * side,
  ];
  const down: [number, number][] = [];
  const up: [number, number][] = [];
  for (let k = 0; k < barbs; k++) {
    const s = 0.5 + k * barbPitch;
    down.push(at(s, -0.15), at(s + 0.35, -barbHeight));
    up.unshift(at(s + 0.35, barbHeight), at(s, 0.15));
  }
  return [...down, at(0.5 + barbs * barbPitch + 0.4, 0), ...up];
}

/**
 * A filleted outline of about `segments` lines and arcs, half of each: a comb of fingers of seeded lengths with all
 * corners rounded, bent to a ring so that lines run in every direction.
 */
export function filletedOutline(segments: number, seed = 1): Contour {
  const fingers = Math.max(3, Math.round(segments / 8));
  const radius = (fingers * 2) / (2 * Math.PI) + 5;
  const corners: [number, number, number][] = [];
  let state = seed;
  const random = () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
  for (let k = 0; k < fingers; k++) {
    const a = (2 * Math.PI * k) / fingers;
    const step = (2 * Math.PI) / fingers;
    const tall = radius + 1.5 + 2 * random();
    corners.push(
      [radius, a, 0.2],
      [radius, a + 0.5 * step, 0.2],
      [tall, a + 0.5 * step, 0.3],
      [tall, a + step, 0.3],
    );
  }
  return filleted(corners.map(([r, a, fillet]) => [r * Math.cos(a), r * Math.sin(a), fillet]));
}

function filleted(corners: readonly [number, number, number][]): Contour {
  return corners.flatMap(([x, y, radius], i) => {
    const [bx, by] = corners[(i + corners.length - 1) % corners.length] as [number, number, number];
    const [ax, ay] = corners[(i + 1) % corners.length] as [number, number, number];
    const [ux, uy] = unit(x - bx, y - by);
    const [wx, wy] = unit(ax - x, ay - y);
    const turn = Math.atan2(ux * wy - uy * wx, ux * wx + uy * wy);
    const back = radius * Math.tan(Math.abs(turn) / 2);
    return [
      { x: x - ux * back, y: y - uy * back, bulge: Math.tan(turn / 4) },
      { x: x + wx * back, y: y + wy * back, bulge: 0 },
    ];
  });
}

function unit(x: number, y: number): [number, number] {
  const length = Math.hypot(x, y);
  return [x / length, y / length];
}
