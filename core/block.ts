import type { Box, Contour, Point } from './geometry/contour';
import type { MemberRole, PartName } from './part-name';

/** One block of steel in the machine: what is cut from it in one program. */
export interface Block {
  /** `die`, `die-2`, …, `punch`, or the one member's id: names its program. */
  readonly id: string;
  readonly role: MemberRole;
  readonly part: PartName;
  readonly memberIds: readonly string[];
  readonly outline: Box;
  /** Parts of the block that the wire has to keep out of. */
  readonly clamps: readonly Box[];
  /** Least width of steel to be left between a start hole or the path and the block's edge, mm. */
  readonly frame: number;
  /** What each member has to keep clear of, by its id. */
  readonly sites: Readonly<Record<string, Site>>;
  /** Every threading of every cut, in the order of work. */
  readonly order: readonly BlockThreading[];
  /** From threading to threading with the wire out, mm. */
  readonly travel: number;
}

/** Where a member is cut: what its start holes and leads have to keep clear of besides its own path. mm. */
export interface Site {
  readonly block: Box;
  /** Least steel between the block's edge and anything that is cut. */
  readonly frame: number;
  readonly clamps: readonly Box[];
  /** Contours of other members in the same block, counter-clockwise. */
  readonly others: readonly Contour[];
  /** Holes that the drawing has and no member takes. */
  readonly drawnHoles: readonly DrawnHole[];
}

export interface DrawnHole extends Point {
  readonly diameter: number;
}

export interface BlockThreading {
  readonly memberId: string;
  /** Index into the member's cuts. */
  readonly cut: number;
  /** Index into the cut's threadings. */
  readonly threading: number;
}
