import { describe, expect, test } from 'vitest';
import type { Contour, Region } from '../../../core/geometry/contour';
import type { MeasuringTarget } from '../../../core/inspect/measuring-targets';
import { magnifications } from '../../../core/output/magnifications';
import { overlayChart } from '../../../core/output/pdf/overlay-chart';
import { overlayTiles } from '../../../core/output/pdf/overlay-tiles';
import { readPdfPages, type PdfPath, type PdfPoint } from '../../support/pdf-pages';
import { exampleParts, planOf } from '../../support/plan-of';
import { circle, polygon, roundedRectangle } from '../../support/shapes';
import { testFonts } from '../../support/test-fonts';

// Sources: the operators of the PDF itself (ISO 32000-1: 72 points an inch), measured against the part's own sizes.
// A chart is true when no length in it is off by more than 0.01 %.

const fonts = testFonts();
const parts = exampleParts();
const plan = planOf(parts);
const target = (profile: Region, material: MeasuringTarget['material'] = 'inside'): MeasuringTarget => ({
  id: 'part',
  name: 'the part as drawn',
  profile,
  material,
});

const chart = (
  profile: Region,
  magnification: number,
  zone = { width: 0.04, outside: null as number | null },
) => {
  const job = { ...parts.job, inspection: { ...parts.job.inspection, profile: zone } };
  const file = overlayChart(job, plan, target(profile), magnification, fonts);
  if (!file.ok) throw new Error(file.problem.what);
  return readPdfPages(file.value);
};

/** The profile is the only path with solid lines of 0.1 mm and more than two points. */
const isProfile = (path: PdfPath) =>
  !path.dashed && Math.abs(path.width - 0.1) < 0.001 && path.points.length > 2 && path.points.length < 200;

const apart = (a: PdfPoint, b: PdfPoint) => Math.hypot(a.x - b.x, a.y - b.y);

/** A triangle of 3, 4, 5 tenths of a mm, so that it fits a page at any magnification. */
const small = polygon([0, 0], [0.4, 0], [0, 0.3]);

describe.each([...magnifications])('%d : 1', (magnification) => {
  test('every side of the profile and both check bars are true to 0.01 %', () => {
    const [page] = chart([small], magnification, { width: 0.01, outside: null });
    const profile = page?.paths.filter(isProfile) ?? [];
    const sides = profile.flatMap(({ points }) =>
      points.flatMap((p, k) => (k === 0 ? [] : [apart(points[k - 1] ?? p, p)])),
    );
    const wanted = [0.4, 0.5, 0.3].map((mm) => mm * magnification);
    for (const [k, length] of wanted.entries()) {
      expect(Math.abs((sides[k] ?? NaN) / length - 1)).toBeLessThan(1e-4);
    }
    const lengths =
      page?.paths.map(({ points }) => apart(points[0] ?? nowhere, points.at(-1) ?? nowhere)) ?? [];
    for (const bar of [100, 50]) {
      expect(lengths.some((length) => Math.abs(length / bar - 1) < 1e-4)).toBe(true);
    }
  });
});

test('the limits lie half the zone either side, an unequal one where it says', () => {
  const square: Contour = polygon([0, 0], [10, 0], [10, 10], [0, 10]);
  const spans = (outside: number | null) => {
    const [page] = chart([square], 10, { width: 0.04, outside });
    // Centre lines have a single line each; a limit has all sides.
    return (page?.paths ?? [])
      .filter(({ dashed, points }) => dashed && points.length > 4)
      .map(({ points }) => Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x)))
      .sort((a, b) => a - b);
  };
  // Inner and outer limit of ± 0.02: 9.96 and 10.04 wide, ten times as large.
  expect(spans(null)[0]).toBeCloseTo(99.6, 3);
  expect(spans(null)[1]).toBeCloseTo(100.4, 3);
  expect(spans(0.03)[0]).toBeCloseTo(99.8, 3);
  expect(spans(0.03)[1]).toBeCloseTo(100.6, 3);
});

test('arcs: every curve stays within 0.001 % of its radius', () => {
  const [page] = chart([circle(4)], 20);
  const curves = page?.paths.filter(isProfile).flatMap((path) => path.curves) ?? [];
  expect(curves.length).toBeGreaterThanOrEqual(8);
  const ends = curves.flatMap(([a, , , d]) => [a, d]);
  const middle = {
    x: (Math.min(...ends.map(({ x }) => x)) + Math.max(...ends.map(({ x }) => x))) / 2,
    y: (Math.min(...ends.map(({ y }) => y)) + Math.max(...ends.map(({ y }) => y))) / 2,
  };
  for (const [a, b, c, d] of curves) {
    for (let t = 0; t <= 1; t += 0.1) {
      const [u, s] = [1 - t, t];
      const along = (k: 'x' | 'y') =>
        u ** 3 * a[k] + 3 * u * u * s * b[k] + 3 * u * s * s * c[k] + s ** 3 * d[k];
      expect(Math.abs(apart({ x: along('x'), y: along('y') }, middle) / 80 - 1)).toBeLessThan(1e-5);
    }
  }
});

test('a part too large for a page is tiled, its pages put together are the part', () => {
  const plate = roundedRectangle(40, 25, 3).map((v) => ({ ...v, x: v.x + 100, y: v.y - 50 }));
  const pages = chart([plate], 20);
  expect(pages.length).toBeGreaterThan(4);
  // Rings of register marks: four half circles of 1.5 mm radius, drawn as curves.
  const [, ...tiles] = pages;
  for (const { paths, width } of tiles) {
    expect(width).toBeLessThan(300);
    const rings = paths.filter(({ curves }) => curves.length === 4 && isRing(curves));
    expect(rings).toHaveLength(4);
  }
});

test('laid mark on mark, neighbouring pages show every line in the same place, to 0.01 % of the page', () => {
  const plate = roundedRectangle(40, 25, 3);
  const [, ...pages] = chart([plate], 20);
  const tiles = new Map(
    pages.map(({ text, paths }) => {
      const rings = paths
        .filter(({ curves }) => curves.length === 4 && isRing(curves))
        .map(({ curves }) => middleOf(curves.flatMap(([a, , , d]) => [a, d])));
      const ends = paths.filter(isProfile).flatMap(({ points }) => points);
      return [/ ([A-Z]\d) /.exec(` ${text} `)?.[1] ?? '', { rings, ends }];
    }),
  );
  const [a, b] = [tiles.get('A1'), tiles.get('B1')];
  if (!a || !b) throw new Error('no neighbours');
  // The marks on the right of one page are those on the left of the next.
  const rightMost = (rings: readonly PdfPoint[]) => Math.max(...rings.map(({ x }) => x));
  const leftMost = (rings: readonly PdfPoint[]) => Math.min(...rings.map(({ x }) => x));
  const by = rightMost(a.rings) - leftMost(b.rings);
  // Ends of segments that reach over both pages are in both files, most of them cut off by the page's edge.
  const shared = b.ends.filter(({ x, y }) =>
    a.ends.some((end) => Math.abs(end.x - x - by) < 0.02 && Math.abs(end.y - y) < 0.02),
  );
  expect(shared.length).toBeGreaterThanOrEqual(2);
  for (const { x, y } of shared) {
    const nearest = Math.min(...a.ends.map((end) => Math.hypot(end.x - x - by, end.y - y)));
    expect(nearest).toBeLessThan(1e-4);
  }
});

test('neighbouring tiles have the same place of the part under the marks between them', () => {
  const page = { width: 180, height: 230 };
  const plate: Region = [polygon([0, 0], [40, 0], [40, 30], [0, 30])];
  const overlap = 6;
  const { tiles, columns, rows } = overlayTiles(plate, 20, page, overlap);
  expect([columns, rows]).toEqual([Math.ceil(800 / 168), Math.ceil(600 / 218)]);
  const byName = new Map(tiles.map((tile) => [tile.name, tile]));
  const inset = (page.width / 2 - overlap) / 20;
  const [a, b] = [byName.get('A1'), byName.get('B1')];
  expect((a?.middle.x ?? NaN) + inset).toBeCloseTo((b?.middle.x ?? NaN) - inset, 12);
  expect(a?.middle.y).toBe(b?.middle.y);
  // Pages inside the plate show no line and are left out: the plate is five pages by three, all around the edge but three.
  expect(tiles).toHaveLength(columns * rows - 3);
});

test('a part that fits is one page without marks', () => {
  const pages = chart([circle(5)], 10);
  expect(pages).toHaveLength(1);
});

test('too many pages are refused with a word what to do', () => {
  const file = overlayChart(
    parts.job,
    plan,
    target([roundedRectangle(400, 300, 5), ...manyHoles()]),
    100,
    fonts,
  );
  expect(file.ok ? null : file.problem.code).toBe('overlay-too-large');
});

test('the same chart has the same bytes', () => {
  const once = () => overlayChart(parts.job, plan, target([circle(5)]), 10, fonts);
  const [first, second] = [once(), once()];
  expect(first.ok && second.ok && first.value === second.value).toBe(true);
});

const nowhere = { x: NaN, y: NaN };

const middleOf = (points: readonly PdfPoint[]): PdfPoint => ({
  x: (Math.min(...points.map(({ x }) => x)) + Math.max(...points.map(({ x }) => x))) / 2,
  y: (Math.min(...points.map(({ y }) => y)) + Math.max(...points.map(({ y }) => y))) / 2,
});

function isRing(curves: PdfPath['curves']): boolean {
  const xs = curves.flatMap(([a, , , d]) => [a.x, d.x]);
  return Math.abs(Math.max(...xs) - Math.min(...xs) - 3) < 0.001;
}

function manyHoles(): Contour[] {
  return Array.from({ length: 60 }, (_, k) => circle(2, 20 + 12 * (k % 10), 20 + 12 * Math.floor(k / 10)));
}
