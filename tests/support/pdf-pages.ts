import { inflateSync } from 'node:zlib';

/** A point of a PDF page in mm from its lower left corner. */
export interface PdfPoint {
  readonly x: number;
  readonly y: number;
}

/** A stroked path: its points in order (of curves the end points), and how it was stroked. */
export interface PdfPath {
  readonly points: readonly PdfPoint[];
  /** The four control points of every curve. */
  readonly curves: readonly (readonly [PdfPoint, PdfPoint, PdfPoint, PdfPoint])[];
  readonly dashed: boolean;
  /** mm. */
  readonly width: number;
}

export interface PdfPage {
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly paths: readonly PdfPath[];
  /** Everything written on it, line after line, a blank between. */
  readonly text: string;
}

/** Reads the pages of a PDF straight from its content operators (ISO 32000-1, 8.5): what a printer is told to draw. */
export function readPdfPages(file: string): readonly PdfPage[] {
  const bytes = Buffer.from(file, 'latin1');
  const objects = objectsOf(file);
  const fonts = fontsOf(bytes, objects);
  const kids = /\/Kids \[([^\]]*)\]/.exec([...objects.values()].find((o) => o.includes('/Kids')) ?? '');
  const order = [...(kids?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map((match) => Number(match[1]));
  return order.map((id) => {
    const page = objects.get(id) ?? '';
    const box = /\/MediaBox \[([^\]]*)\]/.exec(page)?.[1]?.trim().split(/\s+/).map(Number) ?? [];
    const content = streamOf(bytes, Number(/\/Contents (\d+) 0 R/.exec(page)?.[1]));
    return {
      width: inMm(box[2] ?? NaN),
      height: inMm(box[3] ?? NaN),
      paths: pathsOf(content),
      text: textOf(content, fonts),
    };
  });
}

/** How many fonts a PDF uses, and how many of them it carries along (ISO 32000-1, 9.9: FontFile2 is a TrueType font). */
export function pdfFonts(file: string): { readonly used: number; readonly embedded: number } {
  const objects = [...objectsOf(file).values()];
  const count = (pattern: RegExp) => objects.filter((text) => pattern.test(text)).length;
  return { used: count(/\/Subtype \/(?:Type0|Type1|TrueType)\b/), embedded: count(/\/FontFile2 \d+ 0 R/) };
}

function objectsOf(file: string): ReadonlyMap<number, string> {
  const objects = new Map<number, string>();
  for (const match of file.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    objects.set(Number(match[1]), match[2] ?? '');
  }
  return objects;
}

type Glyphs = ReadonlyMap<string, string>;

/** What the glyphs of each font mean, by the font's name on the pages (ISO 32000-1, 9.10.3: ToUnicode). */
function fontsOf(bytes: Buffer, objects: ReadonlyMap<number, string>): ReadonlyMap<string, Glyphs> {
  const named = [...objects.values()].flatMap((text) => [...text.matchAll(/\/(F\d+) (\d+) 0 R/g)]);
  return new Map(
    named.map(([, name = '', id]) => {
      const map = Number(/\/ToUnicode (\d+) 0 R/.exec(objects.get(Number(id)) ?? '')?.[1]);
      const pairs = [...streamOf(bytes, map).matchAll(/<([\da-f]{4})><([\da-f]+)>/gi)].slice(1);
      return [name, new Map(pairs.map(([, glyph = '', code = '']) => [glyph, charactersOf(code)]))];
    }),
  );
}

const charactersOf = (hex: string): string =>
  (hex.match(/.{4}/g) ?? []).map((code) => String.fromCharCode(parseInt(code, 16))).join('');

function textOf(content: string, fonts: ReadonlyMap<string, Glyphs>): string {
  const lines: string[] = [];
  let glyphs: Glyphs = new Map();
  for (const [, font, hex] of content.matchAll(/\/(F\d+) [\d.]+ Tf|<([\da-f]+)> Tj/gi)) {
    if (font !== undefined) glyphs = fonts.get(font) ?? new Map();
    else if (hex !== undefined)
      lines.push((hex.match(/.{4}/g) ?? []).map((glyph) => glyphs.get(glyph) ?? '?').join(''));
  }
  return lines.join(' ');
}

/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const inMm = (points: number): number => (points * 25.4) / 72;

function streamOf(bytes: Buffer, id: number): string {
  const start = bytes.indexOf(`\n${id} 0 obj\n`);
  const from = bytes.indexOf('stream\n', start) + 'stream\n'.length;
  const to = bytes.indexOf('\nendstream', from);
  return inflateSync(bytes.subarray(from, to)).toString('latin1');
}

function pathsOf(content: string): readonly PdfPath[] {
  const paths: PdfPath[] = [];
  let points: PdfPoint[] = [];
  let curves: (readonly [PdfPoint, PdfPoint, PdfPoint, PdfPoint])[] = [];
  let stack: string[] = [];
  let dashed = false;
  let width = 0;
  const saved: { dashed: boolean; width: number }[] = [];
  const numbers = () => stack.map(Number);
  const point = (k: number): PdfPoint => ({ x: inMm(numbers()[k] ?? NaN), y: inMm(numbers()[k + 1] ?? NaN) });
  for (const word of content.split(/\s+/)) {
    switch (word) {
      case 'm':
      case 'l':
        points.push(point(0));
        break;
      case 'c': {
        const from = points.at(-1) ?? { x: NaN, y: NaN };
        curves.push([from, point(0), point(2), point(4)]);
        points.push(point(4));
        break;
      }
      case 'd':
        // An array of lengths, empty for solid, and the phase.
        dashed = /\[\s*[\d.]/.test(stack.join(' '));
        break;
      case 'q':
        saved.push({ dashed, width });
        break;
      case 'Q':
        ({ dashed, width } = saved.pop() ?? { dashed, width });
        break;
      case 'cm':
        throw new Error('A page changes its coordinates: lengths would have to be read through that.');
      case 'w':
        width = inMm(numbers()[0] ?? NaN);
        break;
      case 'S':
        paths.push({ points, curves, dashed, width });
        [points, curves] = [[], []];
        break;
      case 'n':
      case 'f':
      case 'f*':
      case 'B':
        [points, curves] = [[], []];
        break;
      default:
        // Operands stand before their operator, which takes them all.
        if (/^[-+.\d[\]]/.test(word)) {
          stack.push(word);
          continue;
        }
    }
    stack = [];
  }
  return paths;
}
