import type { Pair, SampleDrawing } from './dxf-text';
import { arc, circle, closedPolyline, levelDimension, line, text } from './dxf-entities';

/**
 * Bracket of a picnic lamp and its washer on one sheet, as drawings are sent: no unit stated, a frame with a title block,
 * edges that miss each other by hundredths, pieces drawn twice or partly over one another, a bend line and construction
 * lines, the screw holes on a frozen layer, a dimension that was typed over and one with a tolerance to one side. Meant
 * in mm; steel 1 mm.
 */
const part = 'PART';
const sheet = '0';

export const lampBracket: SampleDrawing = {
  about: 'Diewright sample: picnic lamp bracket and washer, as sent',
  unitCode: 0,
  layers: [
    { name: part, color: 7, lineType: 'CONTINUOUS' },
    { name: 'SCREW HOLES', color: 5, lineType: 'CONTINUOUS', isFrozen: true },
    { name: 'CENTRE', color: 1, lineType: 'CENTER' },
    { name: 'CONSTRUCTION', color: 8, lineType: 'CONTINUOUS' },
    { name: 'DIM', color: 3, lineType: 'CONTINUOUS' },
  ],
  blocks: [
    { name: '*D1', entities: dimensionLines(20, 80, 50, '60.5') },
    { name: '*D2', entities: dimensionLines(120, 150, 65, '30 +0.2/0') },
  ],
  entities: [
    ...bracket(),
    ...washer(),
    circle('SCREW HOLES', 30, 70, 2.25),
    circle('SCREW HOLES', 70, 70, 2.25),
    line('CENTRE', 25, 70, 35, 70),
    line('CENTRE', 65, 70, 75, 70),
    line('CONSTRUCTION', 10, 75, 90, 75),
    circle('CONSTRUCTION', 50, 75, 40),
    // Bend line: it divides the outline and is no edge of it.
    line(part, 45, 60, 45, 90),
    levelDimension('DIM', '*D1', [20, 64], [80, 64], 50, '60.5'),
    levelDimension('DIM', '*D2', [120, 90], [150, 90], 65, '<> +0.2/0'),
    ...titleBlock(),
  ],
};

/** 60 × 30 from (20, 60) with round corners of 4 below and a notch above. */
function bracket(): Pair[][] {
  return [
    line(part, 24, 60, 60, 60),
    // Partly over the last one.
    line(part, 52, 60, 76, 60),
    arc(part, 76, 64, 4, 270, 360),
    // Ends that miss each other: 0.003 and 0.03 mm.
    line(part, 80.003, 64, 80, 90),
    line(part, 80, 90, 58, 90.03),
    line(part, 58, 90, 58, 82),
    line(part, 58, 82, 50, 82),
    line(part, 50, 82, 50, 90),
    line(part, 50, 90, 20, 90),
    line(part, 20, 90, 20, 64),
    // Drawn twice, the other way round.
    line(part, 20, 64, 20, 90),
    arc(part, 24, 64, 4, 180, 270),
    // A slip of the mouse.
    line(part, 58, 82, 58, 82),
  ];
}

/** Ø 30 with a hole of Ø 12, the hole drawn twice. */
function washer(): Pair[][] {
  return [circle(part, 135, 90, 15), circle(part, 135, 90, 6), circle(part, 135, 90, 6)];
}

function dimensionLines(left: number, right: number, y: number, words: string): Pair[][] {
  return [line('DIM', left, y, right, y), text('DIM', (left + right) / 2 - 4, y + 1, 3, words)];
}

/** A frame of 200 × 140 with a title block of three cells in its corner. */
function titleBlock(): Pair[][] {
  const cell = (x0: number, y0: number, x1: number, y1: number): Pair[] =>
    closedPolyline(sheet, [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ]);
  return [
    cell(0, 0, 200, 140),
    cell(120, 0, 160, 12),
    cell(160, 0, 200, 12),
    cell(120, 12, 200, 24),
    text(sheet, 122, 4, 3, 'SCALE 1:1'),
    text(sheet, 162, 4, 3, 'SHEET 1 OF 1'),
    text(sheet, 122, 16, 3, 'PICNIC LAMP BRACKET  STEEL 1'),
  ];
}
