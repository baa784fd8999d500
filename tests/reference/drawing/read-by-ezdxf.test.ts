import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { contourLength } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import { valueOf } from '../../core/drawing/drawn';
import { ezdxf, python } from '../../support/outside-tool';

/**
 * Outside source: ezdxf, a general DXF library, reads the same file (tests/fixtures/dxf/truth.py) and says how long the
 * curves on each layer are and what box they fill.
 */
const { missing } = ezdxf();
const top = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

interface LayerTruth {
  readonly length: number;
  readonly bbox: readonly [number, number, number, number];
}

interface FileTruth {
  readonly mm_per_unit: number | null;
  readonly recover_errors: number;
  readonly resolved_counts: Readonly<Record<string, number>>;
  readonly layers: Readonly<Record<string, LayerTruth>>;
}

function truthOf(path: string): FileTruth {
  const text = execFileSync(python, [top('tests/fixtures/dxf/truth.py'), path], { encoding: 'utf8' });
  return JSON.parse(text) as FileTruth;
}

const samples = readdirSync(top('samples')).filter((name) => name.endsWith('.dxf'));

describe.skipIf(missing)('samples as ezdxf reads them', () => {
  it.each(samples)('%s: unit, lengths by layer, boxes', (name) => {
    const path = top(`samples/${name}`);
    const truth = truthOf(path);
    const raw = valueOf(readDrawing(new Uint8Array(readFileSync(path))));
    const unit = raw.statedUnit ?? 'mm';
    const drawing = valueOf(outlineOf(raw, unit, tolerance.gap));
    expect(truth.recover_errors).toBe(0);
    const factor = truth.mm_per_unit ?? NaN;
    for (const layer of new Set(drawing.contours.map((contour) => contour.layer))) {
      const ours = drawing.contours.filter((contour) => contour.layer === layer);
      const length = ours.reduce((sum, { contour }) => sum + contourLength(contour), 0);
      const fit = ours.reduce((sum, { fitError }) => sum + fitError, 0);
      const theirs = (truth.layers[layer]?.length ?? NaN) * factor;
      // ezdxf's own flattening of curves is good to 1e-6 of the length (see truth.py).
      const flattening = fit > 0 ? length * 1e-5 : 1e-9;
      expect(Math.abs(length - theirs)).toBeLessThan(2 * Math.PI * fit + flattening);
      const [minX = NaN, minY = NaN, maxX = NaN, maxY = NaN] = truth.layers[layer]?.bbox ?? [];
      const slack = fit + 0.001;
      expect(Math.abs(drawing.box.minX - minX * factor)).toBeLessThan(slack);
      expect(Math.abs(drawing.box.minY - minY * factor)).toBeLessThan(slack);
      expect(Math.abs(drawing.box.maxX - maxX * factor)).toBeLessThan(slack);
      expect(Math.abs(drawing.box.maxY - maxY * factor)).toBeLessThan(slack);
    }
    // Nothing is dropped: what ezdxf counts is in a piece or in the list of what is not used.
    const theirCount = Object.values(truth.resolved_counts).reduce((sum, count) => sum + count, 0);
    const ourCount = raw.pieces.length + raw.unused.reduce((sum, { count }) => sum + count, 0);
    expect(ourCount).toBe(theirCount);
  });
});
