import type { SampleDrawing } from './dxf-text';
import { arc, circle, ellipse, line, spline, text } from './dxf-entities';

/**
 * Striker plate of a bicycle bell; spring steel 0.8 mm, mm. The striking edge is a spline that leaves the straight
 * sides smoothly, the weight is lightened by an elliptical window, the plate turns on one hole.
 */
const outline = 'PLATE';

export const strikerPlate: SampleDrawing = {
  about: 'Diewright sample: bicycle-bell striker plate, spring steel 0.8 mm',
  unitCode: 4,
  layers: [
    { name: outline, color: 7, lineType: 'CONTINUOUS' },
    { name: 'TITLE', color: 3, lineType: 'CONTINUOUS' },
  ],
  blocks: [],
  entities: [
    line(outline, 2, 0, 14, 0),
    // The control points next to the ends lie on the straight sides, so that the edge runs on without a corner.
    spline(outline, [
      [14, 0],
      [20, 0],
      [28, 1.5],
      [36.5, 7],
      [35, 13.5],
      [28, 16.2],
      [22, 18],
      [14, 18],
    ]),
    line(outline, 14, 18, 2, 18),
    arc(outline, 2, 16, 2, 90, 180),
    line(outline, 0, 16, 0, 2),
    arc(outline, 2, 2, 2, 180, 270),
    circle(outline, 6, 9, 1.6),
    ellipse(outline, 20, 9, 6, 0.8, 0.45),
    text('TITLE', 0, -5, 2, 'STRIKER PLATE  SPRING STEEL 0.8'),
  ],
};
