import type { SampleDrawing } from './dxf-text';
import { circle, closedPolyline, line, text } from './dxf-entities';

/** Bulge of a quarter turn, tan(90° / 4). */
const quarter = Math.tan(Math.PI / 8);

/**
 * Spring that carries the contact of a rain gauge's tipping bucket; brass 0.2 mm, mm. A foot with two rivet holes, a
 * blade that tapers to two fingers parted by a slit, two V notches where it is bent.
 *
 * Made to be awkward: the slit is 0.2 mm wide with a round end (0.1 mm), the corners between foot and blade have an
 * inside radius of 0.12 mm, the V notches are sharp, and so are the fingers' four outside corners, which are inside
 * corners of the die.
 */
export const contactSpring: SampleDrawing = {
  about: 'Diewright sample: rain-gauge contact spring, brass 0.2 mm',
  unitCode: 4,
  layers: [
    { name: 'OUTLINE', color: 7, lineType: 'CONTINUOUS' },
    { name: 'CENTRE', color: 1, lineType: 'CENTER' },
    { name: 'NOTES', color: 3, lineType: 'CONTINUOUS' },
  ],
  blocks: [],
  entities: [
    closedPolyline('OUTLINE', [
      [1, 0],
      [11, 0, quarter],
      [12, 1],
      [12, 2.38, -quarter],
      [12.12, 2.5],
      [13.2, 2.5],
      [14, 3.3],
      [14.8, 2.5],
      [40, 3.4],
      [40, 4.9],
      [34.1, 4.9, -1],
      [34.1, 5.1],
      [40, 5.1],
      [40, 6.6],
      [14.8, 7.5],
      [14, 6.7],
      [13.2, 7.5],
      [12.12, 7.5, -quarter],
      [12, 7.62],
      [12, 9, quarter],
      [11, 10],
      [1, 10, quarter],
      [0, 9],
      [0, 1, quarter],
    ]),
    circle('OUTLINE', 3.2, 5, 1.1),
    circle('OUTLINE', 8.2, 5, 1.1),
    line('CENTRE', -2, 5, 42, 5),
    line('CENTRE', 3.2, 3, 3.2, 7),
    line('CENTRE', 8.2, 3, 8.2, 7),
    line('CENTRE', 14, 1, 14, 9),
    text('NOTES', 0, -4, 1.5, 'CONTACT SPRING  BRASS 0.2  BURR UNDERNEATH'),
    text('NOTES', 16, 9, 1.5, 'BEND 15%%d'),
  ],
};
