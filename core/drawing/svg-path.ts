import type { Point } from '../geometry/contour';
import { flatSegment } from './bulge-parts';
import { limits } from './limits';
import type { SplinePart } from './raw-drawing';
import { joinedParts, type Curve, type ShapeRun } from './shape';
import { svgArc } from './svg-arc';
import { moved, vector, type Transform } from './transform';

/**
 * The runs of SVG path data (SVG 1.1, chapter 8), placed: lines, Bézier curves as splines, elliptical arcs as arcs
 * where they stay round. Up to an error in the data the path is drawn, as the standard wants it; `isBroken` says so.
 */
export function svgPath(
  data: string,
  place: Transform,
): { readonly runs: readonly ShapeRun[]; readonly isBroken: boolean } {
  const pen = new Pen(place);
  const scanner = new Scanner(data);
  let command = '';
  let isBroken = false;
  while (scanner.more()) {
    const letter = scanner.letter();
    if (letter !== null) command = letter;
    else if (command === '' || command === 'z' || command === 'Z') isBroken = true;
    // The first command is a move; after a move bare numbers draw lines.
    else if (command === 'M') command = 'L';
    else if (command === 'm') command = 'l';
    if (isBroken || (pen.isNew && command !== 'M' && command !== 'm'))
      return { runs: pen.runs(), isBroken: true };
    if (!draw(pen, command, scanner)) return { runs: pen.runs(), isBroken: true };
  }
  return { runs: pen.runs(), isBroken: false };
}

function draw(pen: Pen, command: string, scanner: Scanner): boolean {
  const from = command === command.toLowerCase() ? pen.at : { x: 0, y: 0 };
  const point = (): Point | null => {
    const [x, y] = [scanner.number(), scanner.number()];
    return x === null || y === null ? null : { x: x + from.x, y: y + from.y };
  };
  const points = (count: number): Point[] | null => {
    const all: Point[] = [];
    for (let i = 0; i < count; i++) {
      const next = point();
      if (!next) return null;
      all.push(next);
    }
    return all;
  };
  switch (command.toUpperCase()) {
    case 'M': {
      const to = point();
      return to !== null && pen.move(to);
    }
    case 'L': {
      const to = point();
      return to !== null && pen.line(to);
    }
    case 'H': {
      const x = scanner.number();
      return x !== null && pen.line({ x: x + from.x, y: pen.at.y });
    }
    case 'V': {
      const y = scanner.number();
      return y !== null && pen.line({ x: pen.at.x, y: y + from.y });
    }
    case 'C':
    case 'Q': {
      const all = points(command.toUpperCase() === 'C' ? 3 : 2);
      return all !== null && pen.curve(all);
    }
    case 'S': {
      const all = points(2);
      return all !== null && pen.curve([pen.mirroredControl(3), ...all]);
    }
    case 'T': {
      const to = point();
      return to !== null && pen.curve([pen.mirroredControl(2), to]);
    }
    case 'A': {
      const numbers = [scanner.number(), scanner.number(), scanner.number()];
      const [large, sweep] = [scanner.flag(), scanner.flag()];
      const to = point();
      const [rx, ry, turn] = numbers;
      if (!to || large === null || sweep === null) return false;
      if (rx === null || ry === null || turn === null) return false;
      return pen.arc(rx ?? 0, ry ?? 0, turn ?? 0, large, sweep, to);
    }
    case 'Z':
      return pen.close();
    default:
      return false;
  }
}

/** Draws runs in the plane of the path and places them; lives for one path. */
class Pen {
  at: Point = { x: 0, y: 0 };
  isNew = true;
  private start: Point = { x: 0, y: 0 };
  /** The last control point, and the degree of its curve: what S and T mirror. */
  private control: { readonly point: Point; readonly degree: number } | null = null;
  private curves: Curve[] = [];
  private readonly done: ShapeRun[] = [];
  private readonly place: Transform;
  private count = 0;

  constructor(place: Transform) {
    this.place = place;
  }

  runs(): readonly ShapeRun[] {
    this.end(false);
    return this.done;
  }

  move(to: Point): boolean {
    this.end(false);
    this.isNew = false;
    this.start = to;
    return this.reach(to, null);
  }

  line(to: Point): boolean {
    this.curves.push(flatSegment(this.placed(this.at), this.placed(to)));
    return this.reach(to, null);
  }

  curve(points: readonly Point[]): boolean {
    const degree = points.length;
    const all = [this.at, ...points].map((point) => this.placed(point));
    const knots = [...new Array<number>(degree + 1).fill(0), ...new Array<number>(degree + 1).fill(1)];
    const to = points[degree - 1] as Point;
    const isPoint = all.every(({ x, y }) => x === all[0]?.x && y === all[0].y);
    const part: SplinePart = {
      type: 'spline',
      degree,
      knots,
      points: all.map(({ x, y }) => ({ x, y })),
      weights: all.map(() => 1),
    };
    if (!isPoint) this.curves.push(part);
    return this.reach(to, { point: points[degree - 2] as Point, degree });
  }

  arc(rx: number, ry: number, turn: number, large: boolean, sweep: boolean, to: Point): boolean {
    for (const curve of svgArc({ from: this.at, to, rx, ry, turn, large, sweep }, this.place))
      this.curves.push(curve);
    return this.reach(to, null);
  }

  close(): boolean {
    if (this.at.x !== this.start.x || this.at.y !== this.start.y) this.line(this.start);
    this.end(true);
    return this.reach(this.start, null);
  }

  mirroredControl(degree: number): Point {
    const { control, at } = this;
    if (control?.degree !== degree) return at;
    return { x: 2 * at.x - control.point.x, y: 2 * at.y - control.point.y };
  }

  private end(closed: boolean): void {
    if (this.curves.length > 0) this.done.push({ closed, parts: joinedParts(this.curves) });
    this.curves = [];
  }

  private reach(to: Point, control: { readonly point: Point; readonly degree: number } | null): boolean {
    this.at = to;
    this.control = control;
    const isFit = Math.abs(to.x) <= limits.coordinate && Math.abs(to.y) <= limits.coordinate;
    return isFit && ++this.count <= limits.curvePoints;
  }

  private placed({ x, y }: Point) {
    return moved(this.place, vector(x, y, 0));
  }
}

/** Takes path data apart; lives for one path. */
class Scanner {
  private at = 0;
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  more(): boolean {
    this.skip();
    return this.at < this.text.length;
  }

  letter(): string | null {
    this.skip();
    const letter = this.text[this.at] ?? '';
    if (!/[a-zA-Z]/.test(letter)) return null;
    this.at++;
    return letter;
  }

  number(): number | null {
    this.skip();
    const pattern = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?/y;
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    if (!found) return null;
    this.at = pattern.lastIndex;
    return Number(found[0]);
  }

  /** A single 0 or 1: flags need no blank behind them. */
  flag(): boolean | null {
    this.skip();
    const digit = this.text[this.at];
    if (digit !== '0' && digit !== '1') return null;
    this.at++;
    return digit === '1';
  }

  private skip(): void {
    while (this.at < this.text.length && blanks.has(this.text.charCodeAt(this.at))) this.at++;
  }
}

const blanks: ReadonlySet<number> = new Set([9, 10, 12, 13, 32, 44]);
