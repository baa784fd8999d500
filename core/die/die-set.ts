import type { BlockSheet } from './block-sheet';
import type { CutForce } from './cut-force';
import type { ForceSheet } from './force-sheet';
import type { OneBlock } from './one-block';
import type { PunchSheet } from './punch-sheet';
import type { SectionPlan } from './section-plan';
import type { StockWall } from './stock-walls';
import type { StripPlan } from './strip-plan';
import type { Arrangement, Tool } from './tool';
import type { ToolPart } from './tool-parts';

/** One tool of the set with everything that is worked out for it. */
export interface ToolSheet {
  readonly tool: Tool;
  readonly parts: readonly ToolPart[];
  readonly cuts: readonly CutForce[];
  /** Null where the stock has no strength. */
  readonly force: ForceSheet | null;
  readonly block: BlockSheet;
  readonly punches: readonly PunchSheet[];
}

/** Punch and die from one block, and how far the proof found their edges apart. */
export interface ProvedOneBlock extends OneBlock {
  readonly least: number;
  readonly greatest: number;
}

/** What a die maker signs besides the paths: members, force, strength, sections, strip. All mm, N and radians. */
export interface DieSet {
  readonly arrangement: Arrangement;
  readonly tools: readonly ToolSheet[];
  readonly walls: readonly StockWall[];
  readonly strip: StripPlan | null;
  readonly sections: readonly SectionPlan[];
  readonly oneBlocks: readonly ProvedOneBlock[];
}
