import type { Job } from '../../../core/job';
import { sameTarget, type Target } from '../../state/target';
import { badgeRadius, type Mark } from '../mark-layout';
import type { View } from '../drawing-space';

/** Marks of findings: stop an octagon, decide a diamond, note a circle; hollow once settled. */
export function drawMarks(
  context: CanvasRenderingContext2D,
  marks: readonly Mark[],
  view: View,
  job: Job,
  hovered: Target | null,
  selected: Target | null,
): void {
  // From the last to the first, so that the worst lie on top.
  for (const mark of [...marks].reverse()) {
    const target: Target = { kind: 'finding', key: mark.finding.key };
    const isSelected = sameTarget(target, selected);
    if (isSelected || sameTarget(target, hovered)) drawReach(context, mark, view, isSelected);
    drawMark(context, mark, view, mark.finding.key in job.settled);
  }
}

/** A ring around the part of the drawing that the finding speaks of. */
function drawReach(context: CanvasRenderingContext2D, mark: Mark, view: View, isSelected: boolean): void {
  context.strokeStyle = view.palette.focus;
  context.lineWidth = isSelected ? 2.5 : 1.5;
  context.setLineDash([]);
  context.beginPath();
  context.arc(mark.foot.x, mark.foot.y, Math.max(mark.reach, 8), 0, 2 * Math.PI);
  context.stroke();
}

function drawMark(context: CanvasRenderingContext2D, mark: Mark, view: View, isSettled: boolean): void {
  const color = isSettled ? view.palette.settled : view.palette[mark.finding.weight];
  context.setLineDash([]);
  context.fillStyle = color;
  if (!mark.numbered) {
    context.beginPath();
    context.arc(mark.foot.x, mark.foot.y, 3.5, 0, 2 * Math.PI);
    context.fill();
    return;
  }
  context.strokeStyle = color;
  context.lineWidth = 1.25;
  context.beginPath();
  context.moveTo(mark.foot.x, mark.foot.y);
  context.lineTo(mark.at.x, mark.at.y);
  context.stroke();
  outlineBadge(context, mark);
  context.fillStyle = isSettled ? view.palette.paper : color;
  context.fill();
  context.lineWidth = 1.5;
  context.strokeStyle = isSettled ? color : view.palette.paper;
  context.stroke();
  context.fillStyle = isSettled ? color : view.palette.onMark;
  context.font = `600 ${mark.rank > 99 ? 9 : 11}px ${badgeFont}`;
  context.textAlign = 'center';
  context.textBaseline = 'middle';
  context.fillText(String(mark.rank), mark.at.x, mark.at.y + 0.5);
}

const badgeFont = 'system-ui, sans-serif';

function outlineBadge(context: CanvasRenderingContext2D, { at, finding }: Mark): void {
  const corners = { stop: 8, decide: 4, note: 0 }[finding.weight];
  context.beginPath();
  if (corners === 0) {
    context.arc(at.x, at.y, badgeRadius, 0, 2 * Math.PI);
    return;
  }
  const radius = corners === 4 ? badgeRadius * 1.25 : badgeRadius * 1.08;
  const turn = corners === 4 ? 0 : Math.PI / corners;
  for (let i = 0; i < corners; i++) {
    const angle = turn + (2 * Math.PI * i) / corners;
    context.lineTo(at.x + radius * Math.cos(angle), at.y + radius * Math.sin(angle));
  }
  context.closePath();
}
