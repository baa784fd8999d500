import type { DrawingChoice } from './drawing';
import type { Piece, RawDrawing } from './raw-drawing';
import { reasonForKind } from './reason-for-kind';
import type { UnusedCount } from './unused-count';

export const chooseNothing: DrawingChoice = { layers: null, colours: null, contours: {} };

/**
 * The pieces to chain: those of the chosen layers and colours, without fillings; where nothing is chosen, all that are
 * shown. The others are counted with their reason.
 */
export function choosePieces(raw: RawDrawing, choice: DrawingChoice, unused: UnusedCount): readonly Piece[] {
  const reasonOf = reasonsBy(choice);
  return raw.pieces.filter((piece) => {
    const reason = reasonOf(piece) ?? (piece.isFilling ? reasonForKind(piece.kind) : null);
    if (reason !== null) unused.add(piece.layer, piece.kind, reason);
    return reason === null;
  });
}

/** The fillings among the chosen. */
export function chooseFillings(raw: RawDrawing, choice: DrawingChoice): readonly Piece[] {
  const reasonOf = reasonsBy(choice);
  return raw.pieces.filter((piece) => piece.isFilling && reasonOf(piece) === null);
}

function reasonsBy({ layers, colours }: DrawingChoice): (piece: Piece) => string | null {
  // Layer names know no case in DXF.
  const wanted = layers && new Set(layers.map((layer) => layer.toUpperCase()));
  const tints = colours && new Set(colours);
  return (piece) => {
    if (wanted && !wanted.has(piece.layer.toUpperCase())) return 'layer not chosen';
    if (tints && !tints.has(piece.colour)) return 'colour not chosen';
    return wanted ? null : piece.hidden;
  };
}
