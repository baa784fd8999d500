import type { Point } from '../geometry/contour';
import { done, failed, type Result } from '../problem';
import { limits } from './limits';
import { piecesBox } from './piece-box';
import type { Damage, Piece, RawDrawing } from './raw-drawing';
import { svgScale } from './svg-scale';
import { svgShape, svgShapeNames } from './svg-shapes';
import { styleOf, svgColour, type SvgStyle } from './svg-style';
import { svgTags, type SvgTag } from './svg-tags';
import { numbersIn, svgTransform } from './svg-transform';
import { chained, moved, vector, type Transform } from './transform';
import { UnusedCount } from './unused-count';

/**
 * Reads the curves of an SVG: paths and basic shapes in groups with transforms, y turned up. Where the width states a
 * real unit (mm, cm, in, pt, pc) coordinates are mm, else user units whose size a person must say.
 */
export function readSvg(bytes: Uint8Array): Result<RawDrawing> {
  const walk = new SvgWalk();
  for (const tag of svgTags(new TextDecoder('utf-8').decode(bytes))) {
    if (tag.name === '!broken') return cutOff(tag.line);
    walk.take(tag);
    if (walk.taken > limits.entities) return tooMany;
  }
  if (!walk.isWhole()) return cutOff(walk.lastLine);
  if (walk.isFar) return tooFar;
  const { pieces, unused, texts, statedUnit } = walk;
  const damage: Damage[] = [
    ...walk.remarks.list().map(({ layer, kind, reason, count }): Damage => ({
      weight: 'decide',
      say: `${count} ${kind} on layer ${layer}: ${reason}.`,
    })),
  ];
  return done({
    format: 'svg',
    statedUnit,
    pieces,
    unused: unused.list(),
    damage,
    texts,
    dimensions: [],
    box: piecesBox(pieces),
  });
}

const cutOff = (line: number) =>
  failed(
    'drawing-cut-off',
    'The SVG is cut off: its outermost element does not end',
    `line ${line}`,
    'Copy or export the drawing again, whole.',
  );

const tooMany = failed(
  'drawing-too-large',
  `The SVG holds more than ${limits.entities.toLocaleString('en-US')} elements`,
  '',
  'Save the part by itself, without pictures and everything that is not its outline.',
);

const tooFar = failed(
  'drawing-bad-number',
  'A coordinate of the SVG is too large for a drawing, or no number',
  '',
  'Correct it, or have the drawing exported again.',
);

interface Level {
  readonly name: string;
  readonly place: Transform;
  readonly layer: string;
  readonly style: SvgStyle;
  /** Inside defs, symbols, clip paths and the like nothing is drawn. */
  readonly isDrawn: boolean;
}

/** Walks through the elements of an SVG; lives for one reading. */
class SvgWalk {
  readonly pieces: Piece[] = [];
  readonly unused = new UnusedCount();
  readonly remarks = new UnusedCount();
  readonly texts: Point[] = [];
  statedUnit: RawDrawing['statedUnit'] = null;
  taken = 0;
  lastLine = 1;
  isFar = false;
  private readonly levels: Level[] = [];
  private ended = false;

  isWhole(): boolean {
    return this.ended;
  }

  take(tag: SvgTag): void {
    this.lastLine = tag.line;
    if (this.ended) return;
    if (tag.kind === 'close') this.close(tag.name);
    else this.open(tag);
  }

  private close(name: string): void {
    // Ends of elements that were never begun end nothing.
    let at = this.levels.length - 1;
    while (at >= 0 && this.levels[at]?.name !== name) at--;
    if (at < 0) return;
    this.levels.length = at;
    if (at === 0) this.ended = true;
  }

  private open(tag: SvgTag): void {
    const host = this.levels[this.levels.length - 1];
    if (!host && tag.name !== 'svg') return;
    this.taken++;
    const level = host ? this.inner(tag, host) : this.root(tag);
    if (tag.kind === 'open') this.levels.push(level);
    else if (!host) this.ended = true;
    if (host && !containers.has(tag.name)) this.draw(tag, level);
  }

  private root(tag: SvgTag): Level {
    const { place, unit } = svgScale(tag.attributes);
    this.statedUnit = unit;
    return { name: 'svg', place, layer: '0', style: styleOf(tag.attributes, null), isDrawn: true };
  }

  private inner(tag: SvgTag, host: Level): Level {
    const { attributes, name } = tag;
    const own = svgTransform(attributes.get('transform'));
    if (!own) this.remarks.add(host.layer, name, 'its transform cannot be read and is not applied');
    const label = name === 'g' ? (attributes.get('inkscape:label') ?? attributes.get('id')) : undefined;
    return {
      name,
      place: own ? chained(host.place, own) : host.place,
      layer: label?.trim() ? label.trim() : host.layer,
      style: styleOf(attributes, host.style),
      isDrawn: host.isDrawn && !hiding.has(name),
    };
  }

  private draw(tag: SvgTag, { place, layer, style, isDrawn }: Level): void {
    const { name, attributes } = tag;
    if (!isDrawn || silent.has(name)) return;
    if (name === 'text') {
      const [x = 0] = numbersIn(attributes.get('x') ?? '');
      const [y = 0] = numbersIn(attributes.get('y') ?? '');
      const at = moved(place, vector(x, y, 0));
      if (Number.isFinite(at.x) && Number.isFinite(at.y)) this.texts.push({ x: at.x, y: at.y });
      return this.unused.add(layer, name, 'text');
    }
    if (!svgShapeNames.has(name)) return this.unused.add(layer, name, 'kind that is not read');
    if (style.hidden) return this.unused.add(layer, name, 'invisible');
    if (style.dashed) return this.unused.add(layer, name, 'dashed: not an edge');
    const shape = svgShape(tag, place);
    if ('reason' in shape) return this.unused.add(layer, name, shape.reason);
    if (shape.remark !== null) this.remarks.add(layer, name, shape.remark);
    const colour = svgColour(style);
    for (const { closed, parts } of shape.runs) {
      this.pieces.push({ layer, kind: name, colour, hidden: null, isFilling: false, closed, parts });
      if (!parts.every(isNear)) this.isFar = true;
    }
  }
}

function isNear(part: Piece['parts'][number]): boolean {
  const points =
    part.type === 'chain' ? part.chain : part.type === 'spline' ? part.points : [part.centre, part.u, part.v];
  return points.every(({ x, y }) => Math.abs(x) <= limits.coordinate && Math.abs(y) <= limits.coordinate);
}

const containers: ReadonlySet<string> = new Set(['svg', 'g', 'a', 'switch', 'defs', 'symbol']);
/** Elements whose content is not drawn where it stands. */
const hiding: ReadonlySet<string> = new Set([
  ...[
    'defs',
    'symbol',
    'clipPath',
    'mask',
    'marker',
    'pattern',
    'linearGradient',
    'radialGradient',
    'filter',
  ],
  ...['title', 'desc', 'metadata', 'style', 'script', 'font', 'foreignObject', 'namedview'],
]);
/** Elements that are no part of the picture: not worth counting. */
const silent: ReadonlySet<string> = new Set([...hiding, 'tspan', 'textPath', 'animate', 'set', 'view']);
