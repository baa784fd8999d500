import type { Chain, Point } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import { reversedChain } from '../geometry/contour-measures';
import type { Cut, Member, PassPath, ProgrammedContour, StartHole } from '../plan';
import { compensationSide, continues } from './compensation-side';
import { overlappedRun } from './overlapped-run';

export type ProgramStyle = 'wire centre' | 'compensated';

/** One thing a control is told, before units, rounding and words. mm, bulge = tan(angle / 4). */
export type ProgramStep =
  /** Go to the start hole with the wire out, and stop there for threading. */
  | { readonly kind: 'thread'; readonly at: Point; readonly hole: StartHole | null }
  /** The moves that follow belong to this pass and use its feed (mm/min). */
  | { readonly kind: 'pass'; readonly pass: number; readonly feed: number; readonly onTab: boolean }
  /** The control offsets by entry `offsetNumber` of its table from the next move on. */
  | { readonly kind: 'compensate'; readonly side: 'left' | 'right'; readonly offsetNumber: number }
  /** The next move ends where it is programmed: the offset is off again. */
  | { readonly kind: 'stop compensating' }
  | { readonly kind: 'move'; readonly to: Point; readonly bulge: number }
  | { readonly kind: 'stop'; readonly say: string };

/** The style in which a member can really be written: compensated needs a contour with leads in every pass. */
export function writableStyle(member: Member, wanted: ProgramStyle): ProgramStyle {
  const passes = member.cuts.flatMap((cut) => cut.passes);
  return wanted === 'compensated' && passes.every(canCompensate) ? 'compensated' : 'wire centre';
}

/**
 * A member's cuts as steps: threading, the passes one after the other with the tab left standing, a stop to secure
 * the piece, the tab. Where a run starts elsewhere than the last one ended, a straight feed joins them: the wire is
 * in the kerf and a rapid move would break it. Compensation is off at every stop, because a control that stops with
 * the offset on may cut into an inside corner.
 */
export function programSteps(member: Member, style: ProgramStyle): readonly ProgramStep[] {
  const write = writableStyle(member, style) === 'compensated' ? compensatedCut : wireCentreCut;
  const cuts = member.cuts.filter((cut) => cut.passes.some((pass) => pass.main.length > 0));
  return cuts.flatMap((cut, index) => [
    ...(index > 0 ? [{ kind: 'stop', say: 'cut the wire' } as const] : []),
    ...write(cut, member.role),
  ]);
}

function wireCentreCut(cut: Cut): ProgramStep[] {
  const run = new Run(cut, (pass) => pass.leadIn);
  for (const pass of cut.passes) {
    run.startPass(pass, false);
    for (const chain of [pass.leadIn, pass.main, pass.leadOut]) run.follow(chain);
  }
  const tabs = cut.passes.filter((pass) => pass.tab.length > 1);
  if (tabs.length > 0) run.secure();
  for (const pass of tabs) {
    run.startPass(pass, true);
    run.follow(pass.tab);
  }
  return run.steps;
}

function compensatedCut(cut: Cut, role: Member['role']): ProgramStep[] {
  const run = new Run(cut, (pass) => pass.contour?.leadIn ?? pass.leadIn);
  for (const pass of cut.passes) {
    if (!pass.contour) continue;
    const { leadIn, leadOut } = pass.contour;
    const main = overlappedMain(pass.contour, pass.offset);
    run.startPass(pass, false);
    run.feedTo(leadIn[0]);
    run.steps.push(compensate(pass, role, 'main'));
    for (const chain of [leadIn.slice(0, -1), main, leadOut.slice(0, -1)]) run.follow(chain);
    run.steps.push({ kind: 'stop compensating' });
    run.feedTo(leadOut.at(-1));
  }
  const tabs = cut.passes.filter((pass) => (pass.contour?.tab.length ?? 0) > 1);
  if (tabs.length > 0) run.secure();
  // The leads ended in the waste with the offset off: every pass over the tab starts from there and goes back.
  const waste = run.at;
  for (const pass of tabs) {
    run.startPass(pass, true);
    run.steps.push(compensate(pass, role, 'tab'));
    run.follow(pass.contour ? overlappedTab(pass.contour, waste, pass.offset) : []);
    run.steps.push({ kind: 'stop compensating' });
    run.feedTo(waste);
  }
  return run.steps;
}

function overlappedMain({ leadIn, main, tab }: ProgrammedContour, offset: number): Chain {
  const waste = leadIn.at(-2) ?? leadIn[0];
  if (!waste) return main;
  const before = tab.length > 1 ? (continues(main, tab) ? tab : reversedChain(tab)) : main;
  return overlappedRun(main, before, waste, offset);
}

function overlappedTab({ main, tab }: ProgrammedContour, waste: Point, offset: number): Chain {
  return overlappedRun(tab, continues(main, tab) ? main : reversedChain(main), waste, offset);
}

function compensate(pass: PassPath, role: Member['role'], part: 'main' | 'tab'): ProgramStep {
  const side = compensationSide(pass, role, part);
  return { kind: 'compensate', side, offsetNumber: offsetNumber(pass) };
}

/** Entry of the offset table that a pass uses: 1 for the rough cut. */
export const offsetNumber = (pass: PassPath): number => pass.pass + 1;

/** The offset goes on and off in a straight line: both leads need one, and the first and last piece must not be arcs. */
function canCompensate(pass: PassPath): boolean {
  if (pass.main.length === 0) return true;
  if (!pass.contour) return false;
  const { leadIn, leadOut } = pass.contour;
  return (
    leadIn[1] !== undefined &&
    leadIn.at(-2)?.bulge === 0 &&
    leadIn[0]?.bulge === 0 &&
    leadOut.at(-2)?.bulge === 0
  );
}

/** The steps of one cut as they grow, and where the wire is. */
class Run {
  readonly steps: ProgramStep[];
  at: Point;

  constructor(cut: Cut, leadInOf: (pass: PassPath) => Chain) {
    const first = cut.passes.find((pass) => pass.main.length > 0);
    const lead = first ? [...leadInOf(first), ...first.main][0] : undefined;
    const at = cut.start ?? lead ?? { x: 0, y: 0 };
    this.at = { x: at.x, y: at.y };
    this.steps = [{ kind: 'thread', at: this.at, hole: cut.start }];
  }

  startPass(pass: PassPath, onTab: boolean) {
    this.steps.push({ kind: 'pass', pass: pass.pass, feed: pass.feed, onTab });
  }

  secure() {
    this.steps.push({ kind: 'stop', say: 'secure the piece before the tab is cut' });
  }

  feedTo(point: Point | undefined) {
    if (!point || Math.hypot(point.x - this.at.x, point.y - this.at.y) <= tolerance.samePoint) return;
    this.move(point, 0);
  }

  follow(chain: Chain) {
    this.feedTo(chain[0]);
    chain.forEach((vertex, index) => {
      const next = chain[index + 1];
      if (next) this.move(next, vertex.bulge);
    });
  }

  private move(to: Point, bulge: number) {
    this.at = { x: to.x, y: to.y };
    this.steps.push({ kind: 'move', to: this.at, bulge });
  }
}
