import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { chainBox } from '../../../core/drawing/chain-box';
import { limits } from '../../../core/drawing/limits';
import type { RawDrawing } from '../../../core/drawing/raw-drawing';
import { readDrawing } from '../../../core/drawing/read-drawing';
import { strandOfPiece } from '../../../core/drawing/strand';
import { valueOf } from '../../core/drawing/drawn';
import { hardDrawings, hardDrawingText } from '../../support/hard-drawings';
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

interface OurLayer {
  length: number;
  pieces: number;
  fit: number;
  box: readonly [number, number, number, number];
}

/** Length and box by layer of all that is read, hidden layers too, and the largest error that fitting made. */
function lengthsOf(raw: RawDrawing): ReadonlyMap<string, OurLayer> {
  const budget = { arcs: limits.fittedArcs };
  const found = new Map<string, OurLayer>();
  for (const piece of raw.pieces.filter(({ isFilling }) => !isFilling)) {
    const strand = strandOfPiece(piece, 1, budget);
    if (!strand) throw new Error('too many arcs');
    const layer = found.get(piece.layer) ?? {
      ...{ length: 0, pieces: 0, fit: 0 },
      box: [Infinity, Infinity, -Infinity, -Infinity] as const,
    };
    const { minX, minY, maxX, maxY } = chainBox(strand.chain);
    const [left, bottom, right, top] = layer.box;
    layer.box = [Math.min(left, minX), Math.min(bottom, minY), Math.max(right, maxX), Math.max(top, maxY)];
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
  for (const [layer, { length, bbox }] of compared) {
    const found = ours.get(layer);
    // Lines and arcs to a millionth; a curve's arcs lie within the fit error, which a turn of 2π makes that much longer.
    const slack =
      length * 1e-6 +
      (found ? found.fit * 2 * Math.PI * found.pieces + (found.fit > 0 ? length * 1e-5 : 0) : 0);
    expect(Math.abs((found?.length ?? 0) - length), `layer ${layer} of ${path}`).toBeLessThanOrEqual(slack);
    // The box of a curve that ezdxf has flattened may be short by what its chords cut off.
    const room = (found?.fit ?? 0) + 1e-4;
    found?.box.forEach((side, k) => {
      expect(Math.abs(side - (bbox?.[k] ?? NaN)), `box of layer ${layer} of ${path}`).toBeLessThanOrEqual(
        room,
      );
    });
  }
  expect(compared.length + partial.size).toBeGreaterThan(0);
}

const fixtures = readdirSync(top('tests/fixtures/dxf')).filter((name) => name.endsWith('.dxf'));

describe.skipIf(missing)('known drawings: lengths by layer as ezdxf has them', () => {
  it.each(fixtures)('%s', (name) => compare(top(`tests/fixtures/dxf/${name}`)));
});

describe.skipIf(missing)('our own hard cases as ezdxf resolves them', () => {
  it.each(Object.keys(hardDrawings))('%s', (name) => {
    const path = join(folder, `${name.replaceAll(/\W/g, '-')}.dxf`);
    const hard = hardDrawings[name];
    if (!hard) throw new Error(name);
    writeFileSync(path, hardDrawingText(hard));
    compare(path);
  });
});
