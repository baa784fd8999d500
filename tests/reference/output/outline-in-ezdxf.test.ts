import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { jobOnDrawing } from '../../../core/job-file';
import { outputFiles } from '../../../core/output/output-files';
import { createPipeline } from '../../../core/pipeline';
import type { Plan } from '../../../core/plan';
import { drawingUnits, type DrawingUnit } from '../../../core/units';
import { bytes, circle, dxf, square, valueOf } from '../../core/drawing/drawn';
import { readWithEzdxf } from '../../support/ezdxf';
import { ezdxf } from '../../support/outside-tool';

// Outside source: ezdxf audits both DXF that a job gives on every sample; what they hold is read back by our reader.
const { missing } = ezdxf();
const folder = new URL('../../../samples/', import.meta.url);
const names = [
  ...readdirSync(folder).filter((name) => name.endsWith('.dxf')),
  ...readdirSync(new URL('as-sent/', folder)).map((name) => `as-sent/${name}`),
];

function planOn(
  file: Uint8Array,
  unit: DrawingUnit | null,
): { plan: Plan; texts: ReadonlyMap<string, string> } {
  const fresh = jobOnDrawing('part', file);
  const job = { ...fresh, drawing: { ...fresh.drawing, unit } };
  const plan = valueOf(createPipeline().plan(job));
  const files = outputFiles(job, plan, '');
  return { plan, texts: new Map(files.map(({ name, text }) => [name.replace('.DRAFT', ''), text])) };
}

const outlineText = (texts: ReadonlyMap<string, string>): string => texts.get('part-outline.dxf') ?? '';

function isReadBack({ drawing }: Plan, text: string): void {
  const raw = valueOf(readDrawing(new TextEncoder().encode(text)));
  expect(raw.statedUnit).toBe(drawing.unit);
  expect(raw.damage).toEqual([]);
  const again = valueOf(outlineOf(raw, drawing.unit, 0.005));
  expect(again.contours.map(({ layer }) => layer)).toEqual(drawing.contours.map(({ layer }) => layer));
  again.contours.forEach(({ contour }, i) => {
    const wanted = drawing.contours[i]?.contour ?? [];
    expect(contour).toHaveLength(wanted.length);
    const off = contour.flatMap(({ x, y, bulge }, k) => {
      const to = wanted[k] ?? { x: NaN, y: NaN, bulge: NaN };
      return [Math.hypot(x - to.x, y - to.y), Math.abs(bulge - to.bulge)];
    });
    expect(Math.max(...off)).toBeLessThan(1e-9);
  });
}

describe.skipIf(missing)('the DXF of every sample', () => {
  it.each(names)('%s: both audit clean; the outline keeps unit, layers, colours and geometry', (name) => {
    const unit = name.endsWith('lamp-bracket.dxf') ? 'mm' : null;
    const { plan, texts } = planOn(new Uint8Array(readFileSync(new URL(name, folder))), unit);
    for (const [file, text] of texts) {
      if (!file.endsWith('.dxf')) continue;
      const { errors, fixes } = readWithEzdxf(text);
      expect([errors, fixes], file).toEqual([[], []]);
    }
    const read = readWithEzdxf(outlineText(texts));
    expect(read.unit).toBe(drawingUnits[plan.drawing.unit].code);
    expect(read.entities.map(({ layer }) => layer)).toEqual(plan.drawing.contours.map(({ layer }) => layer));
    const theirs = read.entities.map(({ color, rgb }) =>
      rgb ? rgb.reduce((all, one) => all * 256 + one, 0) : color,
    );
    expect(theirs).toEqual(plan.drawing.contours.map(({ colour }) => colour));
    isReadBack(plan, outlineText(texts));
  });

  it('layers in any script, in their own colours, in cm; names that no layer may have become such that it may', () => {
    const header = [9, '$INSUNITS', 70, 5, 9, '$ACADVER', 1, 'AC1009', 9, '$DWGCODEPAGE', 3, 'ANSI_1251'];
    const layer = (name: string, colour: number) => [0, 'LAYER', 2, name, 70, 0, 62, colour, 6, 'CONTINUOUS'];
    const tables = [
      0,
      'TABLE',
      2,
      'LAYER',
      70,
      2,
      ...layer('\u00c2\u00e8\u00e4', 30),
      ...layer('A*B', 5),
      0,
      'ENDTAB',
    ];
    const entities = [
      ...square(0, 0, 4, '\u00c2\u00e8\u00e4'),
      ...circle(2, 2, 1, 'A*B'),
      ...circle(9, 9, 1, 'A*B'),
      62,
      1,
    ];
    const { plan, texts } = planOn(bytes(dxf({ header, tables, entities })), null);
    const { entities: found, layers, unit, errors } = readWithEzdxf(outlineText(texts));
    expect(errors).toEqual([]);
    expect(unit).toBe(5);
    expect(found.map((one) => `${one.layer} ${one.color}`)).toEqual(['Вид 30', 'A_B 5', 'A_B 1']);
    expect([layers['Вид']?.color, layers['A_B']?.color]).toEqual([30, 5]);
    expect(plan.drawing.contours.map(({ colour }) => colour)).toEqual([30, 5, 1]);
  });
});
