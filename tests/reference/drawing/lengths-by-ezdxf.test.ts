import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { limits } from '../../../core/drawing/limits';
import type { RawDrawing } from '../../../core/drawing/raw-drawing';
import { readDrawing } from '../../../core/drawing/read-drawing';
import { strandOfPiece } from '../../../core/drawing/strand';
import { dxfText, type Pair } from '../../../build/dxf-text';
import { arc, circle, line, polyline, valueOf, xy, type Groups } from '../../core/drawing/drawn';
import { ezdxf, python } from '../../support/outside-tool';

/**
 * Outside source: ezdxf, run live (tests/fixtures/dxf/truth.py). It resolves blocks, planes and arrays by its own code
 * and says how long the curves on each layer are and what box they fill, drawing units.
 */
const { missing } = ezdxf();
const top = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'diewright-lengths-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface LayerTruth {
  readonly length: number;
  readonly bbox: readonly [number, number, number, number] | null;
}

function truthOf(path: string): { readonly layers: Readonly<Record<string, LayerTruth>> } {
  const text = execFileSync(python, [top('tests/fixtures/dxf/truth.py'), path], { encoding: 'utf8' });
  return JSON.parse(text) as { layers: Record<string, LayerTruth> };
}

/** Length by layer of all that is read, hidden layers too, and the largest error that fitting made. */
function lengthsOf(raw: RawDrawing): ReadonlyMap<string, { length: number; pieces: number; fit: number }> {
  const budget = { arcs: limits.fittedArcs };
  const found = new Map<string, { length: number; pieces: number; fit: number }>();
  for (const piece of raw.pieces.filter(({ isFilling }) => !isFilling)) {
    const strand = strandOfPiece(piece, 1, budget);
    if (!strand) throw new Error('too many arcs');
    const layer = found.get(piece.layer) ?? { length: 0, pieces: 0, fit: 0 };
    layer.length += strand.length;
    layer.pieces++;
    layer.fit = Math.max(layer.fit, strand.fitError);
    found.set(piece.layer, layer);
  }
  return found;
}

function compare(path: string): void {
  const raw = valueOf(readDrawing(new Uint8Array(readFileSync(path))));
  const { layers } = truthOf(path);
  const ours = lengthsOf(raw);
  // Layers of which something is left out on purpose (centre lines, mended vertices) cannot be compared.
  const partial = new Set(
    raw.unused.filter(({ reason }) => /line type|zero length|paper/.test(reason)).map(({ layer }) => layer),
  );
  const compared = Object.entries(layers).filter(([layer, { length }]) => length > 0 && !partial.has(layer));
  for (const [layer, { length }] of compared) {
    const found = ours.get(layer);
    // Lines and arcs to a millionth; a curve's arcs lie within the fit error, which a turn of 2π makes that much longer.
    const slack =
      length * 1e-6 +
      (found ? found.fit * 2 * Math.PI * found.pieces + (found.fit > 0 ? length * 1e-5 : 0) : 0);
    expect(Math.abs((found?.length ?? 0) - length), `layer ${layer} of ${path}`).toBeLessThanOrEqual(slack);
  }
  expect(compared.length + partial.size).toBeGreaterThan(0);
}

const fixtures = readdirSync(top('tests/fixtures/dxf')).filter((name) => name.endsWith('.dxf'));

describe.skipIf(missing)('known drawings: lengths by layer as ezdxf has them', () => {
  it.each(fixtures)('%s', (name) => compare(top(`tests/fixtures/dxf/${name}`)));
});

const insert = (name: string, more: Groups): Groups => [
  0,
  'INSERT',
  8,
  'PART',
  2,
  name,
  10,
  7,
  20,
  -3,
  ...more,
];
const spline = (degree: number, points: readonly (readonly number[])[], knots: readonly number[]): Groups => [
  ...[0, 'SPLINE', 8, 'S', 70, 8, 71, degree, 72, knots.length, 73, points.length, 74, 0],
  ...knots.flatMap((knot) => [40, knot]),
  ...points.flatMap(([x = 0, y = 0]) => [10, x, 20, y, 30, 0]),
];
const wave = (count: number): number[][] =>
  Array.from({ length: count }, (_, i) => [i * 3, i % 2 === 0 ? 0 : 5]);
const clamped = (degree: number, count: number): number[] => [
  ...new Array<number>(degree + 1).fill(0),
  ...Array.from({ length: count - degree - 1 }, (_, i) => i + 1),
  ...new Array<number>(degree + 1).fill(count - degree),
];
const slot = [...line(0, 0, 8, 0), ...arc(8, 2, 2, 270, 90), ...line(8, 4, 0, 4), ...arc(0, 2, 2, 90, 270)];
const bulged = polyline(true, xy('0,0 9,0,0.4 9,6 3,6,-0.7 0,4'));
const below: Groups = [210, 0, 220, 0, 230, -1];
const vertices = (text: string, flags: number): Groups =>
  xy(text).flatMap(([x = 0, y = 0, bulge = 0]) => [0, 'VERTEX', 8, 'P', 10, x, 20, y, 42, bulge, 70, flags]);

interface HardCase {
  readonly blocks?: Readonly<Record<string, Groups>>;
  readonly entities: Groups;
}

/** Our own hard cases; ezdxf wants whole files, with handles and subclass markers. */
const cases: Readonly<Record<string, HardCase>> = {
  'array, turned, unevenly scaled': {
    blocks: { A: [...slot, ...bulged, ...circle(4, 12, 1.5)] },
    entities: insert('A', [41, 2, 42, 0.5, 50, 33, 70, 3, 71, 2, 44, 40, 45, 25]),
  },
  'mirrored in a mirrored block, turned': {
    blocks: { A: slot, B: [...insert('A', [41, -1.5, 42, 0.75, 50, 70]), ...bulged] },
    entities: insert('B', [41, -2, 42, 2, 50, 210, ...below]),
  },
  'arcs and polylines seen from below': {
    entities: [...arc(5, 6, 3, 20, 290), ...below, ...bulged, ...below, ...circle(9, 9, 2), ...below],
  },
  'splines of degree 1 to 9': {
    entities: [1, 2, 3, 4, 5, 6, 7, 8, 9].flatMap((degree) => spline(degree, wave(14), clamped(degree, 14))),
  },
  'curve-fit and spline-fit polylines': {
    entities: [
      ...[
        0,
        'POLYLINE',
        8,
        'P',
        66,
        1,
        70,
        3,
        ...vertices('0,0,0.2 5,1,0.3 9,0,0.4 9,6,0.3 2,7,0.5', 1),
        0,
        'SEQEND',
      ],
      ...[0, 'POLYLINE', 8, 'P', 66, 1, 70, 5, ...vertices('20,0 25,1 29,0 29,6', 8), 0, 'SEQEND'],
    ],
  },
};

const markers: Readonly<Record<string, readonly string[]>> = {
  LINE: ['AcDbLine'],
  CIRCLE: ['AcDbCircle'],
  ARC: ['AcDbCircle'],
  LWPOLYLINE: ['AcDbPolyline'],
  POLYLINE: ['AcDb2dPolyline'],
  VERTEX: ['AcDbVertex', 'AcDb2dVertex'],
  SPLINE: ['AcDbSpline'],
  INSERT: ['AcDbBlockReference'],
  SEQEND: [],
};

/** Groups as entities with their subclass markers behind the layer. */
function entitiesOf(groups: Groups): Pair[][] {
  const entities: Pair[][] = [];
  for (let i = 0; i < groups.length; i += 2) {
    const [code, value] = [Number(groups[i]), groups[i + 1] ?? ''];
    if (code === 0)
      entities.push([
        [0, value],
        [100, 'AcDbEntity'],
      ]);
    else entities[entities.length - 1]?.push([code, value]);
    const kind = String(entities[entities.length - 1]?.[0]?.[1]);
    if (code === 8)
      entities[entities.length - 1]?.push(...(markers[kind] ?? []).map((marker): Pair => [100, marker]));
    if (kind === 'ARC' && code === 40) entities[entities.length - 1]?.push([100, 'AcDbArc']);
  }
  return entities;
}

const textOf = ({ blocks = {}, entities }: HardCase): string =>
  dxfText({
    about: 'hard case',
    unitCode: 4,
    layers: ['PART', 'S', 'P'].map((name) => ({ name, color: 7, lineType: 'CONTINUOUS' })),
    blocks: Object.entries(blocks).map(([name, inside]) => ({ name, entities: entitiesOf(inside) })),
    entities: entitiesOf(entities),
  });

describe.skipIf(missing)('our own hard cases as ezdxf resolves them', () => {
  it.each(Object.keys(cases))('%s', (name) => {
    const path = join(folder, `${name.replaceAll(/\W/g, '-')}.dxf`);
    const hard = cases[name];
    if (!hard) throw new Error(name);
    writeFileSync(path, textOf(hard));
    compare(path);
  });
});
