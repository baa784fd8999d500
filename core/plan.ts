import type { Drawing } from './drawing/drawing';
import type { Finding } from './finding';
import type { Chain, Contour, Point, Region } from './geometry/contour';

/** What the whole pipeline makes of a job: everything the window draws and the writers write. All mm and radians. */
export interface Plan {
  readonly drawing: Drawing;
  readonly clearance: ClearanceChoice;
  /** Smallest inside radius the wire can cut, by member: half the wire plus the finishing pass's spark gap. */
  readonly reach: Readonly<Record<MemberRole, number>>;
  readonly pairs: readonly Pair[];
  /** Worst first: stop, decide, note. */
  readonly findings: readonly Finding[];
  /** True when every finding of weight stop or decide is settled and all proofs passed. */
  readonly released: boolean;
  readonly summary: Summary;
}

export interface ClearanceChoice {
  readonly perSide: number;
  /** Where the number comes from, e.g. "0.075 × thickness (Groover, table 20.1)". */
  readonly reason: string;
}

/** The punch and the die of one contour of the drawing. */
export interface Pair {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly die: Member;
  readonly punch: Member;
  /** As-cut punch against as-cut die; null where either could not be built. */
  readonly fit: Fit | null;
}

export interface Fit {
  /** Least and greatest distance from the as-cut punch to the as-cut die; negative where they would collide. */
  readonly least: number;
  readonly greatest: number;
  readonly leastAt: Point;
}

export type MemberRole = 'die' | 'punch';

export interface Member {
  /** e.g. `blank-1-die`; names files and layers. */
  readonly id: string;
  readonly role: MemberRole;
  readonly contourId: string;
  /** The designed contour, counter-clockwise; may be several loops where clearance splits it, none where it vanishes. */
  readonly designed: readonly Contour[];
  /** What the wire leaves, counter-clockwise loops (holes clockwise). */
  readonly asCut: Region;
  /** Stock the wire cannot reach. */
  readonly remainders: readonly Remainder[];
  readonly cuts: readonly Cut[];
  readonly proof: Proof;
}

export interface Remainder {
  /** Index into nothing: the finding's key that speaks of it. */
  readonly findingKey: string;
  /** Closed outline of the stock left. */
  readonly outline: Contour;
  readonly depth: number;
  readonly area: number;
}

/** One threading: a start hole and everything cut from it. */
export interface Cut {
  /** Null where no start hole fits. */
  readonly start: StartHole | null;
  /** Where the waste lies: enclosed by the loop (a die opening, a pocket in a punch) or around it. */
  readonly waste: 'inside' | 'outside';
  readonly tab: { readonly from: Point; readonly to: Point; readonly length: number } | null;
  readonly passes: readonly PassPath[];
}

export interface StartHole {
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** The wire's centre path of one pass, and what a compensated program runs along instead. */
export interface PassPath extends PassRuns {
  /** 0 the rough cut. */
  readonly pass: number;
  /** Distance of the wire's centre from the member's contour, mm. */
  readonly offset: number;
  /** mm/min. */
  readonly feed: number;
  /** The closed offset contour this pass follows, in the direction of the job. */
  readonly loop: Contour;
  /**
   * The same runs on the member's side, for a control that offsets by itself (G41/G42): offset by the pass's offset
   * they give the wire's centre path. Null where there is no such contour.
   */
  readonly contour: PassRuns | null;
}

/** What one pass cuts: all but the tab, and, after the stop, the tab; null where the piece has none. */
export interface PassRuns {
  readonly main: CutRun;
  readonly tab: CutRun | null;
}

/** From where the wire waits in the waste to the contour, along it, and back into the waste. */
export interface CutRun {
  readonly leadIn: Chain;
  readonly cut: Chain;
  readonly leadOut: Chain;
  /** The side of the contour that the wire runs on, seen along this run. */
  readonly wireSide: 'left' | 'right';
}

/** The verdict of the independent proof (clipper-lib). */
export interface Proof {
  readonly passed: boolean;
  /** Deepest cut into the member, mm. */
  readonly gouge: number;
  readonly gougeAt: Point | null;
  /** Deepest stock left, mm, and where. */
  readonly remainder: number;
  readonly remainderAt: Point | null;
  /** Chord error of the polygons used, mm: the accuracy of this verdict. */
  readonly chord: number;
}

export interface Summary {
  readonly contours: number;
  readonly members: number;
  readonly partSize: { readonly width: number; readonly height: number };
  readonly cutLength: number;
  readonly largestGouge: number;
  readonly largestRemainder: number;
  readonly open: { readonly stop: number; readonly decide: number; readonly note: number };
}
