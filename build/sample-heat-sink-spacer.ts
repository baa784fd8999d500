import type { Pair, SampleDrawing } from './dxf-text';
import { arc, circle, insertArray, line } from './dxf-entities';

/**
 * Spacer between a heat sink and its board; aluminium 0.040 in, drawn in inch. Loose lines and arcs in no order and
 * either direction, as a drawing comes out of a converter; 4 × 3 vent holes are an array of a block, on layer 0 inside
 * the block so that they take the layer they are set on.
 */
const outline = 'SPACER';

const pieces: readonly (readonly Pair[])[] = [
  line(outline, 0.125, 0, 0.6, 0),
  line(outline, 0.6, 0, 0.6, 0.075),
  line(outline, 0.6, 0.075, 0.9, 0.075),
  line(outline, 0.9, 0, 0.9, 0.075),
  line(outline, 0.9, 0, 1.375, 0),
  arc(outline, 1.375, 0.125, 0.125, 270, 360),
  line(outline, 1.5, 0.875, 1.5, 0.125),
  arc(outline, 1.375, 0.875, 0.125, 0, 90),
  line(outline, 0.9, 1, 1.375, 1),
  arc(outline, 0.75, 1, 0.15, 180, 360),
  line(outline, 0.125, 1, 0.6, 1),
  arc(outline, 0.125, 0.875, 0.125, 90, 180),
  line(outline, 0, 0.125, 0, 0.875),
  arc(outline, 0.125, 0.125, 0.125, 180, 270),
];

/** A fixed shuffle: 5 and 14 have no common factor, so each piece comes up once. */
const shuffled = pieces.map((_, i) => pieces[(5 * i + 3) % pieces.length] ?? []);

export const heatSinkSpacer: SampleDrawing = {
  about: 'Diewright sample: heat-sink spacer, aluminium 0.040 in, drawn in inch',
  unitCode: 1,
  layers: [{ name: outline, color: 7, lineType: 'CONTINUOUS' }],
  blocks: [{ name: 'VENT', entities: [circle('0', 0, 0, 0.0625)] }],
  entities: [...shuffled, insertArray(outline, 'VENT', 0.3, 0.3, { columns: 4, rows: 3, dx: 0.3, dy: 0.2 })],
};
