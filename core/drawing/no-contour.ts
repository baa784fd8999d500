import { failed } from '../problem';
import { sayLength } from '../say';
import type { OpenRun } from './chain-strands';
import { openPlaces } from './open-places';
import { isBodyReason } from './reason-for-kind';
import type { UnusedCount } from './unused-count';

/** The problem of a drawing in which nothing closes, with what comes nearest to it. */
export function noContour(unused: UnusedCount, open: readonly OpenRun[], gapTolerance: number) {
  const rows = unused.list();
  const total = rows.reduce((sum, { count }) => sum + count, 0);
  const [most] = [...rows].sort((a, b) => b.count - a.count);
  const where = most
    ? `${total} entities, most of them ${most.kind} on layer ${most.layer}: ${most.reason}`
    : 'no entities at all';
  return failed('no-closed-contour', 'The drawing has no closed contour', where, advice());

  function advice(): string {
    const smallest = openPlaces(open).reduce((least, { gap }) => Math.min(least, gap ?? Infinity), Infinity);
    if (Number.isFinite(smallest)) {
      return (
        `The smallest gap between open ends is ${sayLength(smallest)}, the gap tolerance ${sayLength(gapTolerance)}: ` +
        'close the outline in the drawing, or raise the gap tolerance.'
      );
    }
    if (rows.some(({ reason }) => isBodyReason(reason)))
      return 'Ask the customer to explode the regions or solids into lines and arcs and to send that DXF.';
    if (rows.some(({ reason }) => reason.startsWith('layer is') || reason.endsWith('not chosen')))
      return 'Choose the layers and colours that the outline is drawn in.';
    return 'Draw the outline of the part with lines, arcs, circles, polylines, ellipses or splines on a layer that is on.';
  }
}
