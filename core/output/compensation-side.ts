import type { Chain } from '../geometry/contour';
import { contourArea } from '../geometry/contour-measures';
import type { Member, PassPath } from '../plan';

/**
 * On which side of the programmed contour the wire runs, seen along the travel. Travelled counter-clockwise the wire
 * is inside a die opening, so left (G41), and outside a punch, so right (G42); the other way round they swap.
 */
export function compensationSide(
  pass: PassPath,
  role: Member['role'],
  part: 'main' | 'tab',
): 'left' | 'right' {
  const main = pass.contour?.main ?? pass.main;
  const tab = pass.contour?.tab ?? pass.tab;
  const sameWay = part === 'main' || continues(main, tab);
  // The run's last vertex carries no bulge, so a straight line across the tab closes it to a ring.
  const counterClockwise = contourArea(main) > 0 === sameWay;
  return counterClockwise === (role === 'die') ? 'left' : 'right';
}

/** Whether the tab is travelled onward from where the main run ends, rather than back from where it began. */
export function continues(main: Chain, tab: Chain): boolean {
  return gap(tab[0], main.at(-1)) <= gap(tab[0], main[0]);
}

function gap(a: Chain[number] | undefined, b: Chain[number] | undefined): number {
  return a && b ? Math.hypot(a.x - b.x, a.y - b.y) : Infinity;
}
