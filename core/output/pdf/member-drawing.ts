import type { Member } from '../../plan';
import type { Box, Point } from '../../geometry/contour';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import { writeText } from './paper';
import { onPaper, setStroke, strokeChain, strokeRegion, type PaperView, type Stroke } from './paper-view';

/** Okabe and Ito's palette (2008), which every eye tells apart; on paper line style says the same as colour. */
export const colours = {
  die: '#0072B2',
  punch: '#D55E00',
  remainder: '#CC79A7',
  within: '#009E73',
  wide: '#56B4E9',
  ink: '#000000',
  faint: '#808080',
} as const;

/** Die solid, punch dashed, in print as in the window. */
export const memberStroke = (role: Member['role'], width = 0.3): Stroke =>
  role === 'die' ? { colour: colours.die, width } : { colour: colours.punch, width, dash: [2.2, 1.2] };

export const pathStroke: Stroke = { colour: colours.ink, width: 0.12 };

/** The contours of a member and the paths of its passes with their leads. */
export function drawMember(view: PaperView, member: Member): void {
  strokeRegion(view, member.designed, memberStroke(member.role));
  for (const { passes } of member.cuts) {
    for (const { main, tabs } of passes) {
      for (const { leadIn, cut, leadOut } of [...main, ...tabs]) {
        for (const chain of [leadIn, cut, leadOut]) strokeChain(view, chain, pathStroke);
      }
    }
  }
}

/** A circle with a cross, as wide as it is or at least so large that it is seen, and its name beside it. */
export function drawHole(view: PaperView, hole: Point & { readonly diameter: number }, name: string): void {
  const at = onPaper(view, hole);
  const radius = Math.max((hole.diameter / 2) * view.scale, 0.6);
  setStroke(view.paper, { colour: colours.ink, width: 0.15 });
  const { doc } = view.paper;
  doc.circle(at.x, at.y, radius);
  doc.line(at.x - radius - 0.8, at.y, at.x + radius + 0.8, at.y);
  doc.line(at.x, at.y - radius - 0.8, at.x, at.y + radius + 0.8);
  writeText(view.paper, name, at.x + radius + 0.8, at.y - radius - 0.4, { size: 7 });
}

export const boxOfMembers = (members: readonly Member[]): Box =>
  members.flatMap(({ designed }) => designed.map(contourBox)).reduce(boxAround, contourBox([]));
