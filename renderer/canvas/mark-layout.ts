import type { Finding } from '../../core/finding';
import { toScreen, type ScreenPoint, type Size, type Viewport } from '../state/viewport';

/** The mark of a finding on the canvas: a numbered badge beside the place, or a dot where badges would overlap. */
export interface Mark {
  readonly finding: Finding;
  readonly rank: number;
  /** The place itself. */
  readonly foot: ScreenPoint;
  /** The badge's middle; the foot for a dot. */
  readonly at: ScreenPoint;
  readonly numbered: boolean;
}

/** Pixels, along each axis: the badge stands clear of what the finding speaks of, and not too far from it. */
const stand = { least: 17, most: 80 } as const;
export const badgeRadius = 10;
/** How near two badges may come. */
const nearest = 2 * badgeRadius + 2;

/**
 * Marks of all findings with a place on the canvas. The worst get their badges first; `kept` (the one picked out or
 * pointed at) comes before all.
 */
export function layoutMarks(
  findings: readonly Finding[],
  viewport: Viewport,
  size: Size,
  kept: ReadonlySet<string>,
): readonly Mark[] {
  const placed = findings.flatMap((finding, index) => {
    if (!finding.place) return [];
    const foot = toScreen(viewport, size, finding.place);
    return isOn(foot, size) ? [{ finding, rank: index + 1, foot }] : [];
  });
  const first = placed.filter(({ finding }) => kept.has(finding.key));
  const badges: ScreenPoint[] = [];
  const marks = [...first, ...placed.filter((mark) => !first.includes(mark))].map((mark): Mark => {
    const reach = (mark.finding.place?.reach ?? 0) * viewport.scale * Math.SQRT1_2;
    const away = Math.min(Math.max(reach, stand.least), stand.most);
    const at = { x: mark.foot.x + away, y: mark.foot.y - away };
    const numbered = badges.every((badge) => Math.hypot(badge.x - at.x, badge.y - at.y) >= nearest);
    if (numbered) badges.push(at);
    return { ...mark, at: numbered ? at : mark.foot, numbered };
  });
  return marks;
}

const isOn = ({ x, y }: ScreenPoint, size: Size): boolean =>
  x >= -nearest && y >= -nearest && x <= size.width + nearest && y <= size.height + nearest;
