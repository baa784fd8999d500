import type { Box } from '../geometry/contour';
import { drawingUnits, type DrawingUnit } from '../units';
import { chooseNothing, choosePieces } from './choose-pieces';
import type { DrawingChoice, DrawingFormat } from './drawing';
import { gapHistogram, type GapHistogram } from './gap-histogram';
import { limits } from './limits';
import { lineworkOf, type Linework } from './linework';
import type { Piece, RawDrawing } from './raw-drawing';
import { strandOfPiece, type Strand } from './strand';
import { unitCandidates, type UnitCandidate } from './unit-candidates';
import { UnusedCount } from './unused-count';

/** What a person needs to see to choose the unit, the layers, the colours and the gap tolerance of a drawing. */
export interface DrawingSurvey {
  readonly format: DrawingFormat;
  readonly units: readonly UnitCandidate[];
  readonly layers: readonly SurveyedLayer[];
  readonly colours: readonly SurveyedColour[];
  /** Null as long as the unit is open. */
  readonly gaps: GapHistogram | null;
  /** Everything that is drawn, chosen or not, as far as its curves can be told; empty as long as the unit is open. */
  readonly lines: readonly Linework[];
}

export interface SurveyedLayer {
  readonly name: string;
  readonly pieces: number;
  /** Why it is not taken unless chosen; null where it is shown. */
  readonly hidden: Piece['hidden'];
}

export interface SurveyedColour {
  readonly colour: number;
  readonly pieces: number;
}

/**
 * Layers and colours that hold curves, by name and number, with how many; candidates for the unit; the gaps among what is
 * chosen; the lines to be shown. `part` is the box around the part in drawing units.
 */
export function surveyDrawing(
  raw: RawDrawing,
  unit: DrawingUnit | null,
  choice: DrawingChoice = chooseNothing,
  part: Box = raw.box,
): DrawingSurvey {
  const layers = new Map<string, SurveyedLayer>();
  const colours = new Map<number, number>();
  for (const { layer, colour, hidden } of raw.pieces) {
    const known = layers.get(layer) ?? { name: layer, pieces: 0, hidden };
    // A layer of which something is shown is shown.
    layers.set(layer, { name: layer, pieces: known.pieces + 1, hidden: known.hidden && hidden });
    colours.set(colour, (colours.get(colour) ?? 0) + 1);
  }
  return {
    format: raw.format,
    units: unitCandidates(raw, part),
    layers: [...layers.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0)),
    colours: [...colours].map(([colour, pieces]) => ({ colour, pieces })).sort((a, b) => a.colour - b.colour),
    ...(unit ? drawnIn(raw, drawingUnits[unit].mm, choice) : { gaps: null, lines: [] }),
  };
}

function drawnIn(
  raw: RawDrawing,
  factor: number,
  choice: DrawingChoice,
): Pick<DrawingSurvey, 'gaps' | 'lines'> {
  const chosen = new Set(choosePieces(raw, choice, new UnusedCount()));
  const budget = { arcs: limits.fittedArcs };
  const drawn = new Map<Piece, Strand>();
  // What is chosen comes first, as for the outline: the others may take what is left of the curves.
  for (const piece of [...chosen, ...raw.pieces.filter((other) => !chosen.has(other))]) {
    const strand = strandOfPiece(piece, factor, budget);
    if (!strand) break;
    if (strand.chain.length > 1) drawn.set(piece, strand);
  }
  const of = (pieces: Iterable<Piece>) =>
    [...pieces].flatMap((piece) => {
      const strand = drawn.get(piece);
      return strand ? [{ piece, strand }] : [];
    });
  return { gaps: gapHistogram(of(chosen).map(({ strand }) => strand)), lines: lineworkOf(of(raw.pieces)) };
}
