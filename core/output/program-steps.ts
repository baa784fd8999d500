import type { Chain, Point, Vertex } from '../geometry/contour';
import { tolerance } from '../geometry/tolerance';
import type { CutRun, PassPath, StartHole } from '../plan';
import type { WorkRun, WorkStep } from '../wire/block-work';
import { passName } from './pass-name';

export type ProgramKind = 'wire centre' | 'compensated';

/** One thing a control is told, before units, rounding and words. mm, bulge = tan(angle / 4). */
export type ProgramStep =
  /** Go to the start hole with the wire out, and stop there for threading. */
  | { readonly kind: 'thread'; readonly at: Point; readonly hole: StartHole | null; readonly lean?: Point }
  /** The moves that follow belong to this pass and use its feed (mm/min). */
  | { readonly kind: 'pass'; readonly name: string; readonly feed: number; readonly onTab: boolean }
  /** The control offsets by entry `offsetNumber` of its table from the next move on. */
  | { readonly kind: 'compensate'; readonly side: 'left' | 'right'; readonly offsetNumber: number }
  /** The next move ends where it is programmed: the offset is off again. */
  | { readonly kind: 'stop compensating' }
  /** `lean`: where the wire's upper end is then, from the lower one (U and V); left out while it stands upright. */
  | { readonly kind: 'move'; readonly to: Point; readonly bulge: number; readonly lean?: Point }
  /** The wire is cut, to be threaded again elsewhere. */
  | { readonly kind: 'cut wire'; readonly say: string }
  /** A person has to do something; the program waits. */
  | { readonly kind: 'stop'; readonly say: string };

/** The kind that a block can really be written as: compensated needs a contour with straight leads in every run. */
export function writableKind(work: readonly WorkStep[], wanted: ProgramKind): ProgramKind {
  const runs = work.flatMap((step) => step.runs);
  return wanted === 'compensated' && runs.every(({ contour }) => contour !== null)
    ? 'compensated'
    : 'wire centre';
}

/**
 * A block's work as steps: threading, the runs one after the other, and the stops between. Where a run starts
 * elsewhere than the last one ended, a straight feed joins them: the wire is in the kerf and a rapid move would break
 * it. Compensation is off at every stop, because a control that stops with the offset on may cut into an inside corner.
 */
export function programSteps(work: readonly WorkStep[], kind: ProgramKind): readonly ProgramStep[] {
  const compensated = writableKind(work, kind) === 'compensated';
  const cutting = work.filter(({ runs }) => runs.some(({ path }) => path.cut.length > 0));
  return cutting.flatMap((step, index) => [
    ...stepsOf(step, compensated),
    ...(index + 1 < cutting.length || step.threading.after !== null
      ? [{ kind: 'cut wire', say: sayAfter(step) } as const]
      : []),
  ]);
}

const sayAfter = ({ threading: { after } }: WorkStep): string =>
  after === null ? 'cut the wire' : `cut the wire and ${after}`;

/** Entry of the offset table that a pass uses: 1 for the rough cut. */
export const offsetNumber = (pass: PassPath): number => pass.pass + 1;

function stepsOf({ start, runs }: WorkStep, compensated: boolean): readonly ProgramStep[] {
  const runOf = (run: WorkRun): CutRun => (compensated ? run.contour : null) ?? run.path;
  const [first] = runs;
  const path = new Path(start, first ? runOf(first) : null);
  for (const work of runs) {
    const { pass, part, stop } = work;
    const run = runOf(work);
    if (run.cut.length < 2) continue;
    if (stop !== null) path.steps.push({ kind: 'stop', say: stop });
    path.steps.push({ kind: 'pass', name: passName(pass), feed: pass.feed, onTab: part === 'tabs' });
    if (compensated) path.offsetRun(run, offsetNumber(pass));
    else path.run(run);
  }
  return path.steps;
}

/** The steps of one threading as they grow, and where the wire is. */
class Path {
  readonly steps: ProgramStep[];
  private at: Point;

  constructor(start: StartHole | null, first: CutRun | null) {
    const at = start ?? first?.leadIn[0] ?? first?.cut[0] ?? { x: 0, y: 0 };
    this.at = { x: at.x, y: at.y };
    this.steps = [{ kind: 'thread', at: this.at, hole: start, ...(start?.lean ? { lean: start.lean } : {}) }];
  }

  run({ leadIn, cut, leadOut, upper }: CutRun) {
    this.follow(leadIn, upper?.leadIn);
    this.follow(cut, upper?.cut);
    this.follow(leadOut, upper?.leadOut);
  }

  /** With the offset on from the last straight before the contour to the first one after it. */
  offsetRun({ leadIn, cut, leadOut, wireSide }: CutRun, number: number) {
    const on = leadIn.length - 2 - arcsAtEnd(leadIn);
    const off = 1 + arcsAtStart(leadOut);
    this.follow(leadIn.slice(0, on + 1));
    this.steps.push({ kind: 'compensate', side: wireSide, offsetNumber: number });
    for (const chain of [leadIn.slice(on), cut, leadOut.slice(0, off)]) this.follow(chain);
    this.steps.push({ kind: 'stop compensating' });
    this.follow(leadOut.slice(off - 1));
  }

  /** `upper`: where the wire's upper end is over each vertex. */
  private follow(chain: Chain, upper?: Chain) {
    this.feedTo(chain[0]);
    chain.forEach((vertex, index) => {
      const next = chain[index + 1];
      const above = upper?.[index + 1];
      if (next) this.move(next, vertex.bulge, above && { x: above.x - next.x, y: above.y - next.y });
    });
  }

  private feedTo(point: Point | undefined) {
    if (point && !meets(point, this.at)) this.move(point, 0);
  }

  private move(to: Point, bulge: number, lean?: Point) {
    this.at = { x: to.x, y: to.y };
    this.steps.push({ kind: 'move', to: this.at, bulge, ...(lean ? { lean } : {}) });
  }
}

const apart = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

const meets = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && apart(a, b) <= tolerance.samePoint;

/** 1 where a lead runs into the contour by an arc. */
const arcsAtEnd = (lead: Chain): number => (isArc(lead.at(-2)) ? 1 : 0);
const arcsAtStart = (lead: Chain): number => (isArc(lead[0]) ? 1 : 0);
const isArc = (vertex: Vertex | undefined): boolean => vertex !== undefined && vertex.bulge !== 0;
