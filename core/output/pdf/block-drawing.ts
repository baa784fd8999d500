import type { Box, Contour } from '../../geometry/contour';
import type { Block } from '../../plan';
import type { NamedHole } from '../named-holes';
import type { WorkStep } from '../../wire/block-work';
import { colours, drawHole, drawMember } from './member-drawing';
import { onPaper, setStroke, strokeContour, type PaperView } from './paper-view';

/** A block with its clamping strips, what is cut from it, and its numbered start holes. */
export function drawBlock(
  view: PaperView,
  { outline, clamps }: Block,
  work: readonly WorkStep[],
  holes: readonly NamedHole[],
): void {
  for (const clamp of clamps) hatch(view, clamp);
  strokeContour(view, corners(outline), { colour: colours.ink, width: 0.4 });
  const members = [...new Set(work.map(({ member }) => member))];
  for (const member of members) drawMember(view, member);
  for (const { name, hole } of holes) drawHole(view, hole, name);
}

const corners = ({ minX, minY, maxX, maxY }: Box): Contour => [
  { x: minX, y: minY, bulge: 0 },
  { x: maxX, y: minY, bulge: 0 },
  { x: maxX, y: maxY, bulge: 0 },
  { x: minX, y: maxY, bulge: 0 },
];

/** Lines at 45°, 2 mm apart on paper, cut off at the box. */
function hatch(view: PaperView, box: Box): void {
  const { doc } = view.paper;
  const low = onPaper(view, { x: box.minX, y: box.minY });
  const high = onPaper(view, { x: box.maxX, y: box.maxY });
  const [width, height] = [high.x - low.x, low.y - high.y];
  setStroke(view.paper, { colour: colours.faint, width: 0.12 });
  for (let along = 2; along < width + height; along += 2) {
    const [x0, y0] = along < height ? [0, along] : [along - height, height];
    const [x1, y1] = along < width ? [along, 0] : [width, along - width];
    doc.line(low.x + x0, low.y - y0, low.x + x1, low.y - y1);
  }
}
