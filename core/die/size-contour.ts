import type { Contour, Region } from '../geometry/contour';
import { offsetRegion } from '../geometry/offset-region';

/**
 * The contour that gives the size, moved by `sizeShift` mm on each side before any clearance is applied: more than zero
 * makes the part or hole larger (wear allowance, or the middle of a stated tolerance), less makes it smaller. Corners
 * that open are rounded by the shift, so that everything lies at exactly that distance. A shift that is too large
 * gives several loops, or none; 0 gives the contour itself. Example: a 30 mm hole with 0.01 gets a punch of 30.02.
 */
export const sizeContour = (drawn: Contour, sizeShift: number): Region => offsetRegion([drawn], sizeShift);
