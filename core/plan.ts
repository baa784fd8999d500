import type { Block } from './block';
import type { DieSet } from './die/die-set';
import type { Drawing } from './drawing/drawing';
import type { Finding } from './finding';
import type { Chain, Contour, Point, Region } from './geometry/contour';
import type { MemberRole, PartName, Use } from './part-name';

export type { Block, BlockThreading, DrawnHole, Site } from './block';
export type { MemberRole, PartName, PlateName, Use } from './part-name';

/** What the whole pipeline makes of a job: everything the window draws and the writers write. All mm and radians. */
export interface Plan {
  readonly drawing: Drawing;
  readonly clearance: ClearanceChoice;
  /** Smallest inside radius the wire can cut, by part: half the wire plus the finishing pass's spark gap. */
  readonly reach: Readonly<Record<PartName, number>>;
  readonly pairs: readonly Pair[];
  readonly dieSet: DieSet;
  /** The blocks of steel that the members are cut from, each with its order of work: one program a block. */
  readonly blocks: readonly Block[];
  /** Worst first: stop, decide, note. */
  readonly findings: readonly Finding[];
  /** False while the proofs are still being made: no member has a verdict yet. */
  readonly proved: boolean;
  /** True when every finding of weight stop or decide is settled and all proofs passed. */
  readonly released: boolean;
  readonly summary: Summary;
}

export interface ClearanceChoice {
  readonly perSide: number;
  /** Where the number comes from, e.g. "0.075 × thickness (Groover, table 20.1)". */
  readonly reason: string;
  /** What it does to burr and edge, in one sentence with its source. */
  readonly effect: string;
}

/** The punch and the die of one contour of the drawing, or plug and hole, and the openings of plates that fit the punch. */
export interface Pair {
  readonly contourId: string;
  readonly use: Use;
  /** Wanted between the two, mm per side; negative where a plug presses. */
  readonly gap: number;
  /** By how much larger than drawn the contour was made on each side before, mm. */
  readonly sizeShift: number;
  /** Both from one block by one leaning cut, which is the die's: the punch has no cuts of its own. */
  readonly isOneBlock: boolean;
  readonly die: Member;
  readonly punch: Member;
  readonly plates: readonly PlateOpening[];
  /** As-cut punch against as-cut die; null where either could not be built. */
  readonly fit: Fit | null;
}

export interface Fit {
  /** Least and greatest distance from the as-cut punch to the as-cut die; negative where they would collide. */
  readonly least: number;
  readonly greatest: number;
  readonly leastAt: Point;
}

/** An opening of stripper or retainer with the gap that it was made with, mm per side, negative where it presses. */
export interface PlateOpening {
  readonly member: Member;
  readonly gap: number;
  /** Where that comes from. */
  readonly reason: string;
  /** As-cut punch in the as-cut opening. */
  readonly fit: Fit | null;
}

export interface Member {
  /** e.g. `blank-1-die`; names files and layers. */
  readonly id: string;
  readonly role: MemberRole;
  readonly part: PartName;
  readonly contourId: string;
  /** The designed contour, counter-clockwise; may be several loops where clearance splits it, none where it vanishes. */
  readonly designed: readonly Contour[];
  /** What the wire leaves, counter-clockwise loops (holes clockwise). */
  readonly asCut: Region;
  /** Stock the wire cannot reach. */
  readonly remainders: readonly Remainder[];
  readonly cuts: readonly Cut[];
  readonly proof: Proof;
  /** How a die's opening widens below its cutting edge; left out for a punch, and where it does not. */
  readonly relief?: Relief;
}

/** The relief of a die opening. Heights are measured from the cutting edge, mm. */
export interface Relief {
  readonly kind: 'one tapered cut' | 'land and relief';
  /** Straight below the cutting edge; 0 for one tapered cut. */
  readonly land: number;
  /** Of the die's block. */
  readonly height: number;
  /** Per side, from the vertical, radians. */
  readonly angle: number;
  /** Greatest angle of the wire to the vertical, radians, and where: corners lean it more than edges do. */
  readonly greatestLean: number;
  readonly greatestLeanAt: Point;
  /** Half the wire and its gap in the plane, mm: farther than square to the leaning wire. */
  readonly levelRadius: number;
  /** At the end of the land, halfway down, and at the exit face. */
  readonly planes: readonly ReliefPlane[];
}

/** A relief in one plane: the opening as it is wanted there, the wire's path, and how far the two are apart. */
export interface ReliefPlane extends SurfaceDeviation {
  readonly wall: Region;
  readonly path: Region;
}

/** How far a cut surface is from the wanted one in one plane, mm, and where. */
export interface SurfaceDeviation {
  /** Below the cutting edge, mm. */
  readonly depth: number;
  /** Deepest cut beyond the wanted wall. */
  readonly gouge: number;
  readonly gougeAt: Point | null;
  /** Deepest stock left before it. */
  readonly remainder: number;
  readonly remainderAt: Point | null;
}

export interface Remainder {
  /** Index into nothing: the finding's key that speaks of it. */
  readonly findingKey: string;
  /** Closed outline of the stock left. */
  readonly outline: Contour;
  readonly depth: number;
  readonly area: number;
}

/**
 * Everything that is cut along one loop of the finishing pass. Tabs part the loop into as many stretches, each with a
 * start of its own (the wire cannot pass a tab); without a tab the loop is one stretch. Stretch i begins at the far
 * end of tab i - 1 and ends where tab i begins, in the job's direction.
 */
export interface Cut {
  /** `<member id>-1`, …, largest loop first: names the cut's own choices in the job. */
  readonly id: string;
  /** Where the waste lies: enclosed by the loop (a die opening, a pocket in a punch) or around it. */
  readonly waste: 'inside' | 'outside';
  /** Where the wire is threaded, one for each stretch; null where no start hole fits. */
  readonly starts: readonly (StartHole | null)[];
  /** Tab i lies after stretch i. */
  readonly tabs: readonly Tab[];
  /** Whether the piece inside is dropped after roughing and the skims run all round, or kept to the last. */
  readonly slug: 'dropped' | 'kept';
  readonly passes: readonly PassPath[];
  /** The cut's own order of work. */
  readonly threadings: readonly Threading[];
}

export interface StartHole {
  readonly x: number;
  readonly y: number;
  /** 0 at the block's edge. */
  readonly diameter: number;
  /** Where the wire's upper end is over the lower one in a hole that leans, U and V, mm; left out where it is upright. */
  readonly lean?: Point;
  /** A hole to be made, one that the drawing has, or the outside of the block, from which the wire cuts in. */
  readonly kind: 'drilled' | 'drawn' | 'edge';
}

/** What holds the piece until it is cut off, on the rough pass's loop. */
export interface Tab {
  readonly from: Point;
  readonly to: Point;
  /** Along the loop, mm. */
  readonly length: number;
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
  /** Set where the wire leans: through the whole opening, or for the relief after all that is cut upright. */
  readonly lean?: 'taper' | 'relief';
}

/**
 * What one pass cuts: the stretches between the tabs, and the tabs. A skim after the slug was dropped has one main run
 * all round and no tabs.
 */
export interface PassRuns {
  readonly main: readonly CutRun[];
  readonly tabs: readonly CutRun[];
}

/** Everything that is cut from one threading of the wire to the next. */
export interface Threading {
  /** Index into the cut's starts. */
  readonly start: number;
  /** Whether someone has to stand by: a piece comes loose. */
  readonly attended: boolean;
  readonly runs: readonly ThreadedRun[];
  /** What has to be done at the end, besides cutting the wire, e.g. "take the slug out"; null: nothing. */
  readonly after: string | null;
}

export interface ThreadedRun {
  readonly pass: number;
  readonly part: keyof PassRuns;
  /** Index into the pass's main runs or tabs. */
  readonly index: number;
  /** Why the machine stops before this run, e.g. "secure the piece"; null: it goes on. */
  readonly stop: string | null;
}

/** From where the wire waits in the waste to the contour, along it, and back into the waste. */
export interface CutRun {
  readonly leadIn: Chain;
  readonly cut: Chain;
  readonly leadOut: Chain;
  /** The side of the contour that the wire runs on, seen along this run. */
  readonly wireSide: 'left' | 'right';
  /**
   * Where the wire's upper end is meanwhile, vertex for vertex with the run's own chains, which then lie in the
   * program's plane; left out where the wire stands upright. Stretches of the run may have no length: the wire turns.
   */
  readonly upper?: { readonly leadIn: Chain; readonly cut: Chain; readonly leadOut: Chain };
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
  /** Deepest cut that this accuracy and the program's last decimal explain, mm. */
  readonly allowed: number;
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
