import { clearanceToleranceOf } from './inspection-settings';
import { evenPosition, type EvenPosition } from './inspect/even-position';
import { inspectionOf, measuredParts, type Inspection, type MeasuredParts } from './inspect/inspection';
import { movedRegion, type Motion } from './inspect/motion';
import { pairClearance, type PairClearance } from './inspect/pair-clearance';
import type { Job } from './job';
import type { Pipeline } from './pipeline';
import type { Pair, Plan } from './plan';
import { done, failed, type Result } from './problem';
import { revisionOf, type Revision, type RevisionQuestion } from './revision';
import * as portable from './geometry/portable-math';

/** A pair that is looked at, and where its punch stands. */
export interface PairView {
  readonly contourId: string;
  readonly motion: Motion;
}

/** What can be asked about a job's parts beyond its plan. */
export interface Inspector {
  clearance(job: Job, view: PairView): Result<PairClearance>;
  /** The position of the punch that makes the clearance most even, found from where it stands. */
  evenPosition(job: Job, view: PairView): Result<EvenPosition>;
  measured(job: Job): Result<MeasuredParts>;
  inspection(job: Job): Result<Inspection>;
  /** What a newer revision of a job changes. */
  revision(question: RevisionQuestion): Result<Revision>;
}

/** `other` plans the job that is compared with, so that both are remembered. */
export function createInspector(pipeline: Pipeline, other: Pipeline): Inspector {
  return {
    clearance: (job, view) =>
      withPair(pipeline, job, view, (pair, { clearance: { perSide } }) =>
        pairClearance(pair, view.motion, perSide, clearanceToleranceOf(job.inspection, perSide)),
      ),
    evenPosition: (job, view) =>
      withPair(pipeline, job, view, ({ punch, die }) => {
        const found = evenPosition(movedRegion(view.motion, punch.asCut), die.asCut);
        return found && { ...found, motion: joined(view.motion, found.motion) };
      }),
    measured: (job) => withPlan(pipeline, job, (plan) => measuredParts(plan, job.inspection)),
    inspection: (job) => withPlan(pipeline, job, (plan) => inspectionOf(plan, job.inspection)),
    revision: ({ kind, older, newer: asked }) => {
      const was = (older.drawing.content === asked.drawing.content ? pipeline : other).plan(older);
      if (!was.ok) return was;
      // An earlier job's choices are its own; a new drawing has them from the job.
      const { job, lost } =
        kind === 'new drawing' ? pipeline.followed(older, asked) : { job: asked, lost: [] };
      const is = pipeline.plan(job);
      if (!is.ok) return is;
      return done(revisionOf({ job: older, plan: was.value }, { job, plan: is.value }, lost));
    },
  };
}

function withPlan<T>(pipeline: Pipeline, job: Job, look: (plan: Plan) => T): Result<T> {
  const plan = pipeline.plan(job);
  return plan.ok ? done(look(plan.value)) : plan;
}

function withPair<T>(
  pipeline: Pipeline,
  job: Job,
  { contourId }: PairView,
  look: (pair: Pair, plan: Plan) => T | null,
): Result<T> {
  const plan = pipeline.plan(job);
  if (!plan.ok) return plan;
  const pair = plan.value.pairs.find((one) => one.contourId === contourId);
  const found = pair ? look(pair, plan.value) : null;
  return found === null ? noPair(contourId) : done(found);
}

const noPair = (contourId: string) =>
  failed(
    'pair-none',
    'This contour has no punch and die that could be laid over each other',
    contourId,
    'Choose another contour, or a smaller clearance.',
  );

/** One motion after another as one, about the first one's point. */
function joined(first: Motion, then: Motion): Motion {
  // The second turns about where the first has taken its own point to.
  const cos = portable.cos(then.turn);
  const sin = portable.sin(then.turn);
  const x = first.about.x + first.dx - then.about.x;
  const y = first.about.y + first.dy - then.about.y;
  return {
    about: first.about,
    turn: first.turn + then.turn,
    dx: then.about.x + then.dx + x * cos - y * sin - first.about.x,
    dy: then.about.y + then.dy + x * sin + y * cos - first.about.y,
  };
}
