import type { DrawingUnit } from '../units';
import type { DrawingChoice } from './drawing';
import { gapHistogram, type GapHistogram } from './gap-histogram';
import type { RawDrawing } from './raw-drawing';
import { unitCandidates, type UnitCandidate } from './unit-candidates';

/** What a person needs to see to choose the unit, the layers, the colours and the gap tolerance of a drawing. */
export interface DrawingSurvey {
  readonly units: readonly UnitCandidate[];
  readonly layers: readonly SurveyedLayer[];
  readonly colours: readonly { readonly colour: number; readonly pieces: number }[];
  /** Null as long as the unit is open. */
  readonly gaps: GapHistogram | null;
}

export interface SurveyedLayer {
  readonly name: string;
  readonly pieces: number;
  /** Why it is not taken unless chosen; null where it is shown. */
  readonly hidden: string | null;
}

/** Layers and colours that hold curves, by name and number, with how many; candidates for the unit; the gaps. */
export function surveyDrawing(
  raw: RawDrawing,
  unit: DrawingUnit | null,
  choice?: DrawingChoice,
): DrawingSurvey {
  const layers = new Map<string, { name: string; pieces: number; hidden: string | null }>();
  const colours = new Map<number, number>();
  for (const { layer, colour, hidden } of raw.pieces) {
    const known = layers.get(layer) ?? { name: layer, pieces: 0, hidden };
    // A layer of which something is shown is shown.
    layers.set(layer, { ...known, pieces: known.pieces + 1, hidden: known.hidden && hidden });
    colours.set(colour, (colours.get(colour) ?? 0) + 1);
  }
  return {
    units: unitCandidates(raw),
    layers: [...layers.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0)),
    colours: [...colours].map(([colour, pieces]) => ({ colour, pieces })).sort((a, b) => a.colour - b.colour),
    gaps: unit && gapHistogram(raw, unit, choice),
  };
}
