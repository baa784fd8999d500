import type { Point } from '../geometry/contour';
import { byHand } from './account-findings';
import type { DrawingChoice, DrawingContour, LeftOutContour } from './drawing';
import { nestRings } from './nest-rings';
import type { Ring } from './ring';
import type { Strand } from './strand';
import { sheetRings } from './sheet-rings';

export interface NamedRings {
  readonly contours: readonly DrawingContour[];
  /** The ring of each contour. */
  readonly taken: readonly Ring[];
  readonly leftOut: readonly LeftOutContour[];
}

/**
 * Rings with names, nested. Names are given by the rule alone, to what it takes and then to what it leaves out, so that
 * they stay while a person clicks contours in and out. Null where the rings are too many in one another to nest.
 */
export function nameRings(
  rings: readonly Ring[],
  texts: readonly Point[],
  chosen: DrawingChoice['contours'],
): NamedRings | null {
  const all = nestRings(rings);
  if (!all) return null;
  const sheet = sheetRings(all, texts);
  const byRule = sheet.size === 0 ? all : nestRings(rings.filter((ring) => !sheet.has(ring)));
  if (!byRule) return null;
  const aside = all.filter(({ ring }) => sheet.has(ring));
  const ids = new Map([...byRule, ...aside].map(({ ring }, i) => [ring, `c${i + 1}`]));
  const idOf = (ring: Ring): string => ids.get(ring) ?? '';
  const isTaken = (ring: Ring): boolean => {
    const choice = Object.hasOwn(chosen, idOf(ring)) ? chosen[idOf(ring)] : undefined;
    return choice === undefined ? !sheet.has(ring) : choice === 'take';
  };
  // Most drawings: nothing is left out, nobody chose.
  const asRuled =
    (sheet.size === 0 && Object.keys(chosen).length === 0) ||
    rings.every((ring) => isTaken(ring) === !sheet.has(ring));
  const nested = asRuled ? byRule : nestRings(rings.filter(isTaken));
  if (!nested) return null;
  return {
    taken: nested.map(({ ring }) => ring),
    contours: nested.map(({ ring, depth, parent }) => ({
      id: idOf(ring),
      contour: ring.contour,
      layer: ring.layer,
      colour: colourOf(ring),
      depth,
      parentId: parent && idOf(parent),
      largestGap: ring.gaps.reduce((most, { size }) => Math.max(most, size), 0),
      fitError: ring.fitError,
    })),
    leftOut: (nested === all ? [] : all)
      .filter(({ ring }) => !isTaken(ring))
      .map(({ ring }) => ({
        id: idOf(ring),
        contour: ring.contour,
        layer: ring.layer,
        reason: sheet.get(ring) ?? byHand,
      })),
  };
}

/** The colour of the longest piece. */
const colourOf = ({ strands }: Ring): number =>
  strands.reduce(
    (longest, strand) => (strand.length > longest.length ? strand : longest),
    strands[0] as Strand,
  ).colour;
