import type { Finding } from '../../core/finding';
import type { Plan } from '../../core/plan';
import { placeOfFinding } from '../picture/place-of-finding';
import { sameTarget, type Target } from '../state/target';
import { toScreen, type ScreenPoint, type Size, type Viewport } from '../state/viewport';

/** The mark of a finding on the canvas: a numbered badge beside the place, or a dot where badges would overlap. */
export interface Mark {
  readonly finding: Finding;
  readonly rank: number;
  /** The place itself. */
  readonly foot: ScreenPoint;
  /** Pixels around the place that belong to it. */
  readonly reach: number;
  /** The badge's middle; the foot for a dot. */
  readonly at: ScreenPoint;
  readonly numbered: boolean;
}

/** Pixels, along each axis: how far a badge stands from its place; the one picked out stands clear of it. */
const stand = 17;
const farthestStand = 80;
export const badgeRadius = 10;
/** The ring around a place leaves some of its surroundings out. */
const ringShare = 0.6;
/** How near two badges may come. */
const nearest = 2 * badgeRadius + 2;

export interface PickedOut {
  readonly selected: Target | null;
  readonly hovered: Target | null;
}

/**
 * Marks of all findings with a place on the canvas. The worst get their badges first, but before all the one picked
 * out and the one pointed at.
 */
export function layoutMarks(plan: Plan, viewport: Viewport, size: Size, picked: PickedOut): readonly Mark[] {
  const placed = plan.findings.flatMap((finding, index) => {
    const place = placeOfFinding(plan, finding);
    const foot = place && toScreen(viewport, size, place);
    if (!foot || !isOn(foot, size)) return [];
    const target: Target = { kind: 'finding', key: finding.key };
    const isSelected = sameTarget(target, picked.selected);
    const goesFirst = isSelected || sameTarget(target, picked.hovered);
    return [
      {
        finding,
        rank: index + 1,
        foot,
        reach: ringShare * place.reach * viewport.scale,
        isSelected,
        goesFirst,
      },
    ];
  });
  const badges: ScreenPoint[] = [];
  const ordered = [
    ...placed.filter(({ goesFirst }) => goesFirst),
    ...placed.filter(({ goesFirst }) => !goesFirst),
  ];
  return ordered.map(({ finding, rank, foot, reach, isSelected }): Mark => {
    const clear = isSelected ? reach * Math.SQRT1_2 : 0;
    const away = Math.min(Math.max(clear, stand), farthestStand);
    const at = { x: foot.x + away, y: foot.y - away };
    const numbered = badges.every((badge) => Math.hypot(badge.x - at.x, badge.y - at.y) >= nearest);
    if (numbered) badges.push(at);
    return { finding, rank, foot, reach, at: numbered ? at : foot, numbered };
  });
}

const isOn = ({ x, y }: ScreenPoint, size: Size): boolean =>
  x >= -nearest && y >= -nearest && x <= size.width + nearest && y <= size.height + nearest;
