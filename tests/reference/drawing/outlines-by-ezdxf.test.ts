import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { contourArea, contourLength } from '../../../core/geometry/contour-measures';
import { tolerance } from '../../../core/geometry/tolerance';
import { drawingUnits } from '../../../core/units';
import { valueOf } from '../../core/drawing/drawn';
import { hardDrawings, hardDrawingText } from '../../support/hard-drawings';
import { ezdxf, python } from '../../support/outside-tool';

/**
 * Outside source: ezdxf, run live, and a chaining of its own (tests/fixtures/dxf/outlines.py), which gives area and
 * perimeter of every closed ring: lines and arcs exactly, curves flattened.
 */
const { missing } = ezdxf();
const top = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'diewright-outlines-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function ringsOf(
  path: string,
  gap: number,
  aside: readonly string[],
): readonly (readonly [area: number, perimeter: number])[] {
  const script = top('tests/fixtures/dxf/outlines.py');
  // Without -B python would leave its byte code among the fixtures.
  const text = execFileSync(python, ['-B', script, String(gap), path, ...aside], { encoding: 'utf8' });
  return JSON.parse(text) as [number, number][];
}

/** `aside`: layers that hold the sheet and what is drawn for the eye. */
function compare(path: string, aside: readonly string[] = []): void {
  const raw = valueOf(readDrawing(new Uint8Array(readFileSync(path))));
  const unit = raw.statedUnit ?? 'mm';
  const { mm } = drawingUnits[unit];
  const drawing = valueOf(outlineOf(raw, unit, tolerance.gap));
  const theirs = ringsOf(path, tolerance.gap / mm, aside).map(([area, perimeter]) => [
    area * mm * mm,
    perimeter * mm,
  ]);
  const contours = [
    ...drawing.contours.map(({ contour, fitError, largestGap }) => ({ contour, off: fitError + largestGap })),
    ...drawing.leftOut
      .filter(({ layer }) => !aside.includes(layer))
      .map(({ contour }) => ({ contour, off: 0 })),
  ];
  const ours = contours.map(({ contour, off }) => ({
    area: contourArea(contour),
    perimeter: contourLength(contour),
    off,
  }));
  ours.sort((a, b) => b.area - a.area);
  expect(ours).toHaveLength(theirs.length);
  ours.forEach(({ area, perimeter, off }, i) => {
    const [wantedArea = NaN, wantedPerimeter = NaN] = theirs[i] ?? [];
    // Lines and arcs to a millionth. A boundary off by so much takes that times its length from the area, and its turn
    // times that from the length; ezdxf flattens to 1e-4 drawing units.
    const room = off > 0 ? off + 1e-4 * mm : 0;
    expect(Math.abs(area - wantedArea)).toBeLessThanOrEqual(1e-6 * wantedArea + room * wantedPerimeter);
    expect(Math.abs(perimeter - wantedPerimeter)).toBeLessThanOrEqual(
      1e-6 * wantedPerimeter + 4 * Math.PI * room,
    );
  });
}

// Drawn twice on purpose: no ring is unique there; its areas are known exactly (known-drawings.test.ts).
const doubled = ['11_duplicates.dxf'];
const fixtures = readdirSync(top('tests/fixtures/dxf')).filter(
  (name) => name.endsWith('.dxf') && !doubled.includes(name),
);
const samples = readdirSync(top('samples')).filter((name) => name.endsWith('.dxf'));

describe.skipIf(missing)('areas and perimeters as ezdxf has them, live', () => {
  it.each(fixtures)('%s', (name) => {
    const path = top(`tests/fixtures/dxf/${name}`);
    const known = JSON.parse(readFileSync(path.replace(/dxf$/, 'json'), 'utf8')) as {
      ignore_layers?: string[];
    };
    compare(path, known.ignore_layers);
  });
  it.each(samples)('%s', (name) => compare(top(`samples/${name}`)));

  it.each(Object.entries(hardDrawings).filter(([, { isClosed }]) => isClosed))('%s', (name, hard) => {
    const path = join(folder, `${name.replaceAll(/\W/g, '-')}.dxf`);
    writeFileSync(path, hardDrawingText(hard));
    compare(path);
  });
});
