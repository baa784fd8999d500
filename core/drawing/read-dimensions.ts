import type { Point } from '../geometry/contour';
import type { DrawingRecords } from './drawing-records';
import { extrusionOf, pointOf, valueOf } from './group-values';
import { textAt, textOf, type Pairs } from './pairs';
import type { ParsedEntity } from './parse-entities';
import type { RawDimension } from './raw-drawing';
import { moved, planeOf } from './transform';
import * as portable from '../geometry/portable-math';

/**
 * The lengths, diameters and radii that a drawing states (DXF reference, DIMENSION). Angles, ordinates and dimensions
 * without their points are passed over: they give no size of the outline.
 */
export function readDimensions(
  entities: readonly ParsedEntity[],
  pairs: Pairs,
  records: DrawingRecords,
  decode: (latin: string) => string,
): readonly RawDimension[] {
  const styles = new Map(
    records.dimensionStyles.map(({ from, to }) => [
      decode(textOf(pairs, 2, from, to)).toUpperCase(),
      { from, to },
    ]),
  );
  return entities.flatMap((entity) => {
    const measure = measureOf(entity);
    if (!measure) return [];
    const { from, to } = entity.record;
    const style = styles.get(decode(textOf(pairs, 3, from, to)).toUpperCase());
    const settings = settingsOf(pairs, style, entity);
    const stated = valueOf(entity.groups, 42);
    return [
      {
        ...measure,
        layer: entity.layer,
        stated: stated !== undefined && stated > 0 ? stated : null,
        text: plainText(decode(textOf(pairs, 1, from, to))),
        deviation: deviationOf(settings),
        factor: settings.get(144) || 1,
        at: flatPoint(entity, 11) ?? measure.to,
      },
    ];
  });
}

type Measure = Pick<RawDimension, 'kind' | 'from' | 'to' | 'along' | 'measured'>;

/** Type by the low bits of group 70: 0 turned, 1 aligned, 3 diameter, 4 radius. */
function measureOf(entity: ParsedEntity): Measure | null {
  const type = (valueOf(entity.groups, 70) ?? 0) & 7;
  const round = type === 3 || type === 4;
  if (type > 1 && !round) return null;
  // The points of lengths are in space, those of radii and diameters too (groups 13, 14, 10 and 15).
  const from = pointOf(entity.groups, round ? 10 : 13);
  const to = pointOf(entity.groups, round ? 15 : 14);
  if (!from || !to) return null;
  const [a, b] = [flat(from), flat(to)];
  const straight = Math.hypot(b.x - a.x, b.y - a.y);
  const kind = type === 3 ? 'diameter' : type === 4 ? 'radius' : 'length';
  if (type !== 0) return { kind, from: a, to: b, along: null, measured: straight };
  const angle = ((valueOf(entity.groups, 50) ?? 0) * Math.PI) / 180;
  const along = { x: portable.cos(angle), y: portable.sin(angle) };
  return { kind, from: a, to: b, along, measured: Math.abs((b.x - a.x) * along.x + (b.y - a.y) * along.y) };
}

const flat = ({ x, y }: Point): Point => ({ x, y });

/** A point of the dimension's own plane in the drawing's. */
function flatPoint(entity: ParsedEntity, code: number): Point | null {
  const point = pointOf(entity.groups, code);
  return point ? flat(moved(planeOf(extrusionOf(entity.groups)), point)) : null;
}

/** Variables of a dimension style by their group, those that the dimension sets for itself on top. */
function settingsOf(
  pairs: Pairs,
  style: { readonly from: number; readonly to: number } | undefined,
  { record }: ParsedEntity,
): ReadonlyMap<number, number> {
  const settings = new Map<number, number>();
  if (style)
    for (let i = style.from; i < style.to; i++) setNumber(settings, pairs, pairs.codes[i] as number, i);
  // Overrides: 1001 ACAD, 1000 DSTYLE, 1002 {, then 1070 with the variable's group and its value, 1002 }.
  let inStyle = false;
  for (let i = record.from; i + 1 < record.to; i++) {
    if (pairs.codes[i] === 1000) inStyle = textAt(pairs, i) === 'DSTYLE';
    else if (inStyle && pairs.codes[i] === 1002 && textAt(pairs, i) === '}') inStyle = false;
    else if (inStyle && pairs.codes[i] === 1070) {
      setNumber(settings, pairs, Number(textAt(pairs, i)), i + 1);
      i++;
    }
  }
  return settings;
}

const wanted: ReadonlySet<number> = new Set([47, 48, 71, 72, 144]);

function setNumber(settings: Map<number, number>, pairs: Pairs, code: number, at: number): void {
  if (!wanted.has(code)) return;
  const value = Number(textAt(pairs, at));
  if (Number.isFinite(value)) settings.set(code, value);
}

/** DIMTOL (71) or DIMLIM (72) show DIMTP (47) and DIMTM (48). */
function deviationOf(settings: ReadonlyMap<number, number>): RawDimension['deviation'] {
  const isShown = settings.get(71) === 1 || settings.get(72) === 1;
  if (!isShown) return null;
  const [plus, minus] = [settings.get(47) ?? 0, -(settings.get(48) ?? 0)];
  return plus === 0 && minus === 0 ? null : { plus, minus };
}

/** Text without its formatting; `%%c`, `%%d` and `%%p` as ⌀, ° and ±. Stacked deviations stay beside each other. */
function plainText(text: string): string {
  return text
    .replace(/%%c/gi, '⌀')
    .replace(/%%d/gi, '°')
    .replace(/%%p/gi, '±')
    .replace(/\\S([^;^#/]*)[\^#/]([^;]*);/g, ' $1/$2')
    .replace(/\\[ACFHQTWfp][^;\\]*;/g, '')
    .replace(/\\[PX~]/g, ' ')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/[{}]/g, '')
    .trim();
}
