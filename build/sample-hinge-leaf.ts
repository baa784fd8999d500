import type { SampleDrawing } from './dxf-text';
import { arc, circle, levelDimension, line, text } from './dxf-entities';

/**
 * Leaf of the hinge of a letterbox flap; steel 1.5 mm, mm. 64 × 30 with three screw holes and two knuckle gaps whose
 * inside corners have a radius of 0.5 mm; drawn with lines and arcs, with a dimension and its block.
 */
const outline = 'OUTLINE';
const gap = 0.5;

export const hingeLeaf: SampleDrawing = {
  about: 'Diewright sample: letterbox hinge leaf, steel 1.5 mm',
  unitCode: 4,
  layers: [
    { name: outline, color: 7, lineType: 'CONTINUOUS' },
    { name: 'CENTRE', color: 1, lineType: 'CENTER' },
    { name: 'DIMENSIONS', color: 3, lineType: 'CONTINUOUS' },
  ],
  blocks: [
    {
      name: '*D1',
      entities: [
        line('DIMENSIONS', 0, -1, 0, -8),
        line('DIMENSIONS', 64, -1, 64, -8),
        line('DIMENSIONS', 0, -7, 64, -7),
        text('DIMENSIONS', 30, -6.5, 2.5, '64'),
      ],
    },
  ],
  entities: [
    line(outline, 4, 0, 60, 0),
    arc(outline, 60, 4, 4, 270, 360),
    line(outline, 64, 4, 64, 30),
    line(outline, 64, 30, 51.4, 30),
    ...knuckleGap(51.4, 38.6),
    line(outline, 38.6, 30, 25.4, 30),
    ...knuckleGap(25.4, 12.6),
    line(outline, 12.6, 30, 0, 30),
    line(outline, 0, 30, 0, 4),
    arc(outline, 4, 4, 4, 180, 270),
    circle(outline, 9, 9, 2.1),
    circle(outline, 32, 13, 2.1),
    circle(outline, 55, 9, 2.1),
    line('CENTRE', 5, 9, 13, 9),
    line('CENTRE', 9, 5, 9, 13),
    line('CENTRE', 28, 13, 36, 13),
    line('CENTRE', 32, 9, 32, 17),
    line('CENTRE', 51, 9, 59, 9),
    line('CENTRE', 55, 5, 55, 13),
    levelDimension('DIMENSIONS', '*D1', [0, 4], [64, 4], -7),
    text('DIMENSIONS', 0, -13, 2.5, 'HINGE LEAF  STEEL 1.5'),
  ],
};

/** From the top edge 7 mm down and back up, the corners at the bottom rounded. */
function knuckleGap(right: number, left: number) {
  return [
    line(outline, right, 30, right, 23 + gap),
    arc(outline, right - gap, 23 + gap, gap, 270, 360),
    line(outline, right - gap, 23, left + gap, 23),
    arc(outline, left + gap, 23 + gap, gap, 180, 270),
    line(outline, left, 23 + gap, left, 30),
  ];
}
