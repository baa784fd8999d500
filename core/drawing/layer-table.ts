import type { DrawingRecords, EntityRecord } from './drawing-records';
import { textOf, type Pairs } from './pairs';

export interface LayerState {
  readonly off: boolean;
  readonly frozen: boolean;
  readonly lineType: string;
  /** Colour index, 1 to 255. */
  readonly colour: number;
}

/** What the TABLES section says about layers and line types; names are compared without case, as DXF does. */
export interface LayerTable {
  stateOf(layer: string): LayerState;
  /** Whether lines of this type have gaps: a centre line, a hidden edge, never the edge of a part. */
  isBroken(lineType: string): boolean;
}

/**
 * Reads layers and line types. A layer is frozen by flag 1 alone: flag 2 concerns new viewports only.
 */
export function layerTable(
  pairs: Pairs,
  records: DrawingRecords,
  decode: (latin: string) => string,
): LayerTable {
  const text = (record: EntityRecord, code: number): string =>
    decode(textOf(pairs, code, record.from, record.to));
  const layers = new Map<string, LayerState>();
  for (const record of records.layers) {
    // Group 62 is negative on a layer that is off; bit 1 of group 70 says frozen (DXF reference, LAYER).
    const frozen = (Number(text(record, 70)) & 1) === 1;
    const colour = Number(text(record, 62)) || 7;
    const state = { off: colour < 0, frozen, lineType: text(record, 6), colour: Math.abs(colour) };
    layers.set(text(record, 2).toUpperCase(), state);
  }
  const dashes = new Map<string, number>();
  for (const record of records.lineTypes) {
    dashes.set(text(record, 2).toUpperCase(), Number(text(record, 73)) || 0);
  }
  return {
    stateOf: (layer) => layers.get(layer.toUpperCase()) ?? unlisted,
    isBroken: (lineType) => {
      const name = lineType.toUpperCase();
      const count = dashes.get(name);
      return count === undefined ? standardBroken.test(name) : count > 0;
    },
  };
}

const unlisted: LayerState = { off: false, frozen: false, lineType: '', colour: 7 };

/** Line types of ISO 128 and of the usual line type files that have gaps, for drawings that leave the table out. */
const standardBroken =
  /^(CENTER|CENTRE|DASHED|DASHDOT|DIVIDE|DOT|DOTTED|HIDDEN|PHANTOM|BORDER)(X?2)?$|^(ACAD_)?ISO\d\dW100$/;
