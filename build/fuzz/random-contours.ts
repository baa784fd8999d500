import { arrange } from '../../core/geometry/arrange';
import type { Contour, Vertex } from '../../core/geometry/contour';
import { contourArea, reversedContour } from '../../core/geometry/contour-measures';
import { indexOf, pairsWithin } from '../../core/geometry/segment-index';
import { tableOfRegion } from '../../core/geometry/segment-table';

/** A seeded generator of numbers in [0, 1): mulberry32 (public domain, Tommy Ettinger). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;
const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
const whole = (random: Random, low: number, high: number): number =>
  Math.floor(between(random, low, high + 1));
const polar = (radius: number, angle: number, bulge = 0): Vertex => ({
  x: radius * Math.cos(angle),
  y: radius * Math.sin(angle),
  bulge,
});

/** Families of closed, simple, counter-clockwise contours about 10 mm across, by name. */
export const families: Readonly<Record<string, (random: Random) => Contour>> = {
  'spiky star': (random) => {
    const n = whole(random, 3, 24);
    return Array.from({ length: n }, (_, i) =>
      polar(between(random, 0.5, 6), (2 * Math.PI * (i + 0.8 * random())) / n),
    );
  },
  gear: (random) => {
    const teeth = whole(random, 5, 30);
    const root = between(random, 2, 4.5);
    const tip = root + between(random, 0.2, 1.5);
    const share = between(random, 0.2, 0.45);
    const pitch = (2 * Math.PI) / teeth;
    const contour: Vertex[] = [];
    for (let i = 0; i < teeth; i++) {
      const arc = (part: number) => Math.tan((part * pitch) / 4);
      contour.push(polar(root, i * pitch, arc(share)));
      contour.push(polar(root, (i + share) * pitch));
      contour.push(polar(tip, (i + 0.5) * pitch, arc(share)));
      contour.push(polar(tip, (i + 0.5 + share) * pitch));
    }
    return contour;
  },
  comb: (random) => {
    const teeth = whole(random, 1, 10);
    const contour: Vertex[] = [
      { x: 0, y: 0, bulge: 0 },
      { x: 2 * teeth + 1, y: 0, bulge: 0 },
    ];
    for (let i = teeth; i >= 0; i--) {
      const top = between(random, 2, 5);
      const slot = between(random, 0.05, 0.95);
      contour.push({ x: 2 * i + 1, y: top, bulge: 0 }, { x: 2 * i, y: top, bulge: 0 });
      if (i === 0) break;
      const floor = between(random, 0.5, 1.5);
      contour.push(
        { x: 2 * i - slot + 0.02, y: floor, bulge: 0 },
        { x: 2 * i - 1 + 0.02, y: floor, bulge: 0 },
      );
    }
    return contour;
  },
  spiral: (random) => {
    const steps = whole(random, 8, 60);
    const turn = between(random, 0.2, 0.5);
    const gap = between(random, 0.3, 0.8);
    const width = gap * between(random, 0.3, 0.7);
    const at = (i: number, extra: number) => polar(1 + (gap * i * turn) / (2 * Math.PI) + extra, i * turn);
    const outer = Array.from({ length: steps }, (_, i) => at(i, width));
    const inner = Array.from({ length: steps }, (_, i) => at(steps - 1 - i, 0));
    return [...outer, ...inner];
  },
  'rounded maze': (random) =>
    roundedCorners(cells(random, whole(random, 3, 40)), between(random, 0.02, 0.45)),
  'random arcs': (random) => {
    const n = whole(random, 3, 14);
    return Array.from({ length: n }, (_, i) =>
      polar(between(random, 1, 5), (2 * Math.PI * (i + 0.6 * random())) / n, between(random, -0.9, 0.9)),
    );
  },
  crystal: (random) => {
    const half: [number, number][] = [];
    const n = whole(random, 2, 8);
    for (let i = 0; i < n; i++)
      half.push([between(random, 0.8, 5), ((i + 0.9 * random()) / n) * (Math.PI / 6)]);
    const contour: Vertex[] = [];
    for (let k = 0; k < 6; k++) {
      for (const [r, a] of half) contour.push(polar(r, (k * Math.PI) / 3 + a));
      for (const [r, a] of [...half].reverse()) contour.push(polar(r, ((k + 1) * Math.PI) / 3 - a - 1e-3));
    }
    return contour;
  },
  'near-degenerate grid': (random) => {
    const step = [0, 1e-9, 1e-8, 1e-7, 1e-6, 1e-3][whole(random, 0, 5)] as number;
    return cells(random, whole(random, 2, 40)).map((v) => ({
      x: v.x + step * between(random, -1, 1),
      y: v.y + step * between(random, -1, 1),
      bulge: 0,
    }));
  },
};

/** A contour of a family; contours that turn out to cross themselves are drawn again. */
export function randomContour(family: string, random: Random): Contour {
  const make = families[family];
  if (!make) throw new Error(`no family ${family}`);
  for (;;) {
    const contour = make(random);
    if (isSimple(contour)) return contourArea(contour) > 0 ? contour : reversedContour(contour);
  }
}

/** Whether nothing but neighbours meet: one ring remains when the contour is arranged. */
export function isSimple(contour: Contour): boolean {
  const table = tableOfRegion([contour]);
  const { runCount, startNode } = arrange(table, pairsWithin(indexOf(table)));
  return runCount === 1 && startNode[0] === -1;
}

/** The outline of a blob of unit cells grown at random, without holes or corner contacts (each corner once). */
function cells(random: Random, count: number): Contour {
  for (;;) {
    const filled = new Set(['0,0']);
    while (filled.size < count) {
      const [x, y] = [...filled][whole(random, 0, filled.size - 1)]?.split(',').map(Number) as [
        number,
        number,
      ];
      const [dx, dy] = (
        [
          [1, 0],
          [0, 1],
          [-1, 0],
          [0, -1],
        ] as const
      )[whole(random, 0, 3)] as readonly [number, number];
      filled.add(`${x + dx},${y + dy}`);
    }
    const contour = outlineOf(filled);
    if (contour) return contour;
  }
}

function outlineOf(filled: ReadonlySet<string>): Contour | null {
  const next = new Map<string, string>();
  for (const cell of filled) {
    const [x, y] = cell.split(',').map(Number) as [number, number];
    const sides: [number, number, number, number, number, number][] = [
      [x, y, x + 1, y, x, y - 1],
      [x + 1, y, x + 1, y + 1, x + 1, y],
      [x + 1, y + 1, x, y + 1, x, y + 1],
      [x, y + 1, x, y, x - 1, y],
    ];
    for (const [x0, y0, x1, y1, nx, ny] of sides) {
      if (filled.has(`${nx},${ny}`)) continue;
      if (next.has(`${x0},${y0}`)) return null;
      next.set(`${x0},${y0}`, `${x1},${y1}`);
    }
  }
  const start = [...next.keys()][0] as string;
  const points: string[] = [];
  for (let at = start; points.length === 0 || at !== start; at = next.get(at) as string) points.push(at);
  return points.length === next.size
    ? points.map((p) => ({ x: Number(p.split(',')[0]), y: Number(p.split(',')[1]), bulge: 0 }))
    : null;
}

/** Every corner of a rectilinear contour replaced by a quarter arc where both sides are long enough. */
function roundedCorners(contour: Contour, radius: number): Contour {
  const result: Vertex[] = [];
  contour.forEach((v, i) => {
    const before = contour[(i + contour.length - 1) % contour.length] as Vertex;
    const after = contour[(i + 1) % contour.length] as Vertex;
    const ux = Math.sign(v.x - before.x);
    const uy = Math.sign(v.y - before.y);
    const wx = Math.sign(after.x - v.x);
    const wy = Math.sign(after.y - v.y);
    const cross = ux * wy - uy * wx;
    if (cross === 0) return;
    result.push({
      x: v.x - ux * radius,
      y: v.y - uy * radius,
      bulge: Math.sign(cross) * Math.tan(Math.PI / 8),
    });
    result.push({ x: v.x + wx * radius, y: v.y + wy * radius, bulge: 0 });
  });
  return result;
}
