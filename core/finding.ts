import type { DrawingUnit } from './units';

/** How much a finding weighs: *stop* cannot be released, *decide* wants a person's choice, *note* is worth knowing. */
export type FindingWeight = 'stop' | 'decide' | 'note';

export type FindingCode =
  | 'drawing-not-used' // entities left out of the outline, counted by layer and reason
  | 'drawing-mended' // damage in the file that was put right, or that a person should look at
  | 'unit-doubtful' // the unit that the file states makes a part of an unusual size
  | 'drawing-unsupported' // solids and regions, whose geometry the file does not give openly
  | 'outline-from-filling' // no edge closes: the outline is the boundary of a hatch or filled area
  | 'contour-left-out' // closed contours that belong to the sheet, or that a person left out
  | 'dimension-disagrees' // a dimension that says another size than its geometry has
  | 'outline-repaired' // T-joints, overlaps, tiny steps, shared edges and touching places that were put right
  | 'contour-open' // a chain of segments that does not close
  | 'gap-closed' // a gap between end points that was closed within the tolerance
  | 'contours-cross' // a contour that crosses itself or another one
  | 'contours-touch' // contours that touch each other or themselves, without crossing
  | 'curve-fitted' // splines or ellipses that became arcs
  | 'size-shift-too-large' // the size shift swallows a feature of the contour
  | 'tolerance-offside' // a stated tolerance whose middle is not the drawn size
  | 'clearance-too-large' // the clearance swallows a feature of the member that takes it
  | 'clearance-unusual' // the clearance is outside the usual range for the stock
  | 'force-unknown' // no strength of the stock: no force, no press, no punch strength
  | 'press-too-small' // the press's rating is below the stroke's force and margin
  | 'springs-overrun' // springs deflected beyond what they stand
  | 'shear-bends' // shear ground on an edge that blanks
  | 'punch-weak' // a punch that buckles or is crushed
  | 'punch-thin' // a place of a punch thinner than the stock
  | 'plate-binds' // a punch that binds in an opening of stripper or retainer
  | 'plate-fit' // a fit that a plate should not have
  | 'plate-fit-unknown' // a fit that is in no table
  | 'die-block-thin' // a die block lower than its rules
  | 'die-wall-thin' // little steel between openings, or a thin tongue
  | 'die-edge-thin' // little steel between an opening and the edge of its block
  | 'knockout-none' // a piece that stays in its die
  | 'screw-room' // no room for a screw or dowel
  | 'no-regrinds' // a die that can't be reground
  | 'piece-narrow' // a hole, wall or part of the blank narrow for its stock
  | 'bridge-thin' // a scrap bridge below its rule
  | 'no-pilot' // a strip without room for a pilot
  | 'one-block-impossible' // punch and die not out of one block
  | 'one-block-reentrant' // a re-entrant corner tighter than the lean
  | 'one-block-uneven' // edges from one block not evenly apart
  | 'one-block-sensitive' // how sure the clearance from one block is
  | 'section-joint' // a tight corner that no joint leads from
  | 'section-wheel' // a section's radius finer than a wheel holds
  | 'clearance-formula-jumps' // a clearance formula where its ranges do not meet
  | 'inside-corner' // a sharp inside corner: the wire leaves a fillet
  | 'inside-radius' // an inside radius smaller than the reach
  | 'slot' // a slot or neck too narrow for the wire
  | 'wire-too-wide' // the wire does not go into the opening at all
  | 'corner-strikes' // a punch corner that would strike or nearly touch the die's fillet
  | 'clearance-uneven' // the as-cut clearance falls below the wanted one
  | 'technology-no-row' // the technology table has nothing for the wire or the height of a block
  | 'block-too-high' // a block that the machine does not take
  | 'corner-changed' // corners of the member that gives the part its shape, rounded by the job
  | 'corner-radius' // a radius that does not fit between the edges of its corner
  | 'corner-choice' // a choice for a corner that is not there any more
  | 'corner-path' // a sharp path that has no room, so that the wire rolls
  | 'relief-land' // a land as high as the die
  | 'relief-lean' // the wire would have to lean more than the machine can
  | 'relief-place' // a place that a taper can't get round, or where it runs into itself
  | 'relief-surface' // the leaning wire cuts beside the wanted surface
  | 'relief-program' // offsets asked for, which a leaning wire's program does without
  | 'relief-growth' // how long the land lasts, and what the opening grows by then
  | 'start-hole' // the start hole does not fit, or may not be where it was put
  | 'edge-start' // cut in from the block's edge, which lets it spring
  | 'block' // cut out of the block, in its frame, in a clamp zone or in another member's slug
  | 'lead-in' // no straight lead-in of the wanted length
  | 'tab' // no room for the tab
  | 'proof-gouge' // the independent proof found the wire cutting into the member
  | 'proof-program' // the program's text has a fault or says something else than planned
  | 'proof-remainder'; // the independent proof found stock left that no finding explains

/** A place in the drawing's plane, mm, and how far around it matters (a half width to zoom to). */
export interface Place {
  readonly x: number;
  readonly y: number;
  readonly reach: number;
}

/** One number of a finding; lengths are mm, angles radians, areas mm². The edges turn them into the user's units. */
export interface FindingNumber {
  readonly label: string;
  readonly value: number;
  readonly kind: 'length' | 'angle' | 'area' | 'count';
}

/** Something that would make the finding vanish. */
export type Cure =
  | { readonly kind: 'wire'; readonly diameter: number; readonly say: string }
  | { readonly kind: 'fillet'; readonly radius: number; readonly say: string }
  /** A choice for one corner, named by its place on its contour. */
  | {
      readonly kind: 'corner';
      readonly contourId: string;
      readonly at: { readonly x: number; readonly y: number };
      readonly side: 'inside' | 'outside';
      readonly rule:
        | { readonly rule: 'as drawn' }
        | { readonly rule: 'match' }
        | { readonly rule: 'radius'; readonly radius: number };
      readonly say: string;
    }
  /** Takes back a choice for a corner. */
  | {
      readonly kind: 'forget-corner';
      readonly contourId: string;
      readonly at: { readonly x: number; readonly y: number };
      readonly say: string;
    }
  | { readonly kind: 'section'; readonly say: string }
  /** The drawing read in another unit. */
  | { readonly kind: 'unit'; readonly unit: DrawingUnit; readonly say: string }
  /** `sizeShift` in place of the one that the contour has, mm. */
  | {
      readonly kind: 'size-shift';
      readonly contourId: string;
      readonly sizeShift: number;
      readonly say: string;
    }
  | {
      readonly kind: 'match-corners';
      /** The member whose outside corners are to be rounded. */
      readonly member: 'punch' | 'die';
      readonly radius: number;
      readonly say: string;
    }
  | { readonly kind: 'other'; readonly say: string };

/** One row of the review list. */
export interface Finding {
  /** The same for the same trouble at the same place with the same numbers, so that a settled row stays settled until something changes. */
  readonly key: string;
  readonly code: FindingCode;
  readonly weight: FindingWeight;
  /** A few words, e.g. "Sharp inside corner, 90°". */
  readonly title: string;
  /** One sentence with the numbers in mm and inch. */
  readonly message: string;
  readonly place: Place | null;
  /** The contour and member it concerns; null where it concerns the whole job. */
  readonly contourId: string | null;
  readonly memberId: string | null;
  readonly numbers: readonly FindingNumber[];
  readonly cures: readonly Cure[];
}
