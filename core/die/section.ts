import type { Chain, Contour, Point, Region, Vertex } from '../geometry/contour';
import { arcOf } from '../geometry/contour-measures';

/** A straight joint between two sections. `from` lies on the working contour. */
export interface Joint {
  readonly from: Point;
  readonly to: Point;
  /** Radius of the working contour's fillet that it splits, mm; 0 for a corner or a straight. */
  readonly radius: number;
}

/** One piece of a split member. */
export interface Section {
  /** `blank-c1-die-1`, …: names its drawing. */
  readonly id: string;
  readonly memberId: string;
  /** Finished outline, outer loop first, holes clockwise. */
  readonly outline: Region;
  /** Finished outline with the stock left for finish grinding all round. */
  readonly rough: Region;
  /** The parts of the outline that cut, in its direction. */
  readonly working: readonly Chain[];
  readonly joints: readonly Joint[];
  /** Smallest concave radius left in the working contour: what the wheel may be dressed to at most; null: any wheel. */
  readonly wheelRadius: number | null;
}

/** A joint's fillet is shared by the sections on both sides of it, and so is the wheel that grinds it. */
export function wheelRadiusOf(working: readonly Chain[], joints: readonly Joint[]): number | null {
  const fillets = joints.flatMap(({ radius }) => (radius > 0 ? [radius] : []));
  const concave = working.flatMap((chain) =>
    chain.slice(0, -1).flatMap((from, i) => {
      // The outline runs counter-clockwise: a clockwise arc is hollow.
      return from.bulge < 0 ? [arcOf(from, chain[i + 1] as Vertex).radius] : [];
    }),
  );
  const radii = [...fillets, ...concave];
  return radii.length === 0 ? null : Math.min(...radii);
}

/** Chains joined end to end into a ring; each begins where the one before ends. */
export function ringOf(chains: readonly Chain[]): Contour {
  const ring: Vertex[] = [];
  for (const chain of chains) ring.push(...chain.slice(0, -1));
  return ring;
}

/** A straight chain. */
export const straight = (from: Point, to: Point): Chain => [
  { x: from.x, y: from.y, bulge: 0 },
  { x: to.x, y: to.y, bulge: 0 },
];
