import { followContours } from '../../core/follow-contours';
import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { stale } from '../worker/core-client';
import { drawingOf, type AppState, type CornerName } from './app-state';
import type { App } from './app-store';
import { linesBox } from './lines-box';
import { planBox } from './plan-box';
import { sameTarget, targetOfRepair, type Target } from './target';
import { fitted } from './viewport';

/**
 * Asks what is to be seen of a job's drawing and then for its plan, and takes both in as they come: a drawing can be looked
 * at and chosen from while its tools are still being worked out.
 */
export async function makePlan(app: App, job: Job): Promise<void> {
  const { store, core } = app;
  if (!(await surveyDrawing(app, job))) return;
  const tell = tellIn(app);
  const result = await core.plan(job, (step, fraction, unproved) => {
    if (unproved) takeIn(app, job, unproved);
    tell(step, fraction);
  });
  if (result === stale) return;
  if (result.ok) {
    takeIn(app, job, result.value);
    store.setState({ progress: null });
    return;
  }
  // What is wrong with the drawing is put right beside it. The question for its unit stands over the window; whoever
  // closes it unanswered still reads the problem.
  const { code } = result.problem;
  store.setState(({ survey, pane }) => ({
    problem: result.problem,
    progress: null,
    unitAsked: code === 'units-needed' && survey !== null,
    pane: drawingProblems.has(code) ? 'drawing' : pane,
  }));
}

/** A plan to be shown, proved or not yet. */
function takeIn({ store }: App, job: Job, plan: Plan): void {
  store.setState((state) => ({
    made: { job, plan },
    problem: null,
    unitAsked: false,
    ...(state.fitPending ? { fitPending: false, viewport: fitted(planBox(plan), state.canvasSize) } : {}),
    selected: stillThere(state.selected, state, plan),
    hovered: stillThere(state.hovered, state, plan),
    openCorner: hasCorner(plan, state.openCorner) ? state.openCorner : null,
    pointedCorner: null,
  }));
}

const drawingProblems: ReadonlySet<string> = new Set(['no-closed-contour', 'all-contours-left-out']);

// No progress at first: most edits are answered before anyone could read it.
const tellIn =
  ({ store }: App) =>
  (step: string, fraction: number): void =>
    store.setState({ progress: { step, fraction } });

/** Asks what is to be seen of the drawing, unless that is known; false where the job has been overtaken meanwhile. */
async function surveyDrawing(app: App, job: Job): Promise<boolean> {
  const { store, core } = app;
  const { survey: known, surveyed } = store.getState();
  if (known && surveyed && isSameReading(surveyed, job)) {
    store.setState({ surveyed: job });
    return true;
  }
  const survey = await core.survey(job, tellIn(app));
  if (survey === stale) return false;
  const next = survey.ok ? survey.value : null;
  store.setState((state) => ({
    survey: next,
    surveyed: job,
    // A drawing without a plan is fitted to its lines; the plan still to come is fitted anew.
    ...(state.fitPending ? viewOfLines(state, next?.lines ?? []) : {}),
  }));
  if (!surveyed || !known?.drawing || !next?.drawing || !isAnotherReading(surveyed, job)) return true;
  const { job: followed, lost } = followContours(job, known.drawing, next.drawing);
  if (followed === job) return true;
  store.setState((state) =>
    state.history?.present === job
      ? {
          history: { ...state.history, present: followed },
          ...(lost.length > 0 ? { said: lostWords(lost) } : {}),
        }
      : {},
  );
  // The changed job asks for its own plan.
  return false;
}

const lostWords = (lost: readonly string[]): string =>
  `Contour ${lost.join(', ')} is no longer there, and what was chosen for it is gone`;

function viewOfLines(
  { canvasSize }: AppState,
  lines: Parameters<typeof linesBox>[0],
): Partial<Pick<AppState, 'viewport'>> {
  const box = linesBox(lines);
  return box ? { viewport: fitted(box, canvasSize) } : {};
}

/** Whether two jobs read their drawing in the same way; its text is compared by itself, since no edit changes it. */
function isSameReading(a: Job, b: Job): boolean {
  if (a.drawing === b.drawing) return true;
  const bare = ({ drawing }: Job) => JSON.stringify({ ...drawing, content: '' });
  return a.drawing.content === b.drawing.content && bare(a) === bare(b);
}

/**
 * Whether only the reading has changed: then what was chosen for single contours follows them. A step back brings its own
 * choices, with the names that they had.
 */
const isAnotherReading = (before: Job, job: Job): boolean =>
  before.drawing.content === job.drawing.content &&
  before.drawing.choice.contours === job.drawing.choice.contours &&
  before.uses === job.uses &&
  before.sizeShifts === job.sizeShifts &&
  before.corners === job.corners &&
  before.cuts === job.cuts;

/** A target that is no longer there is let go. */
function stillThere(target: Target | null, state: AppState, { findings, pairs }: Plan): Target | null {
  return target === null || isThere(target) ? target : null;

  function isThere(one: Target): boolean {
    const drawing = drawingOf(state);
    switch (one.kind) {
      case 'finding':
        return findings.some(({ key }) => key === one.key);
      case 'member':
        return pairs.some(({ die, punch }) => die.id === one.id || punch.id === one.id);
      case 'contour':
        return [...(drawing?.contours ?? []), ...(drawing?.leftOut ?? [])].some(({ id }) => id === one.id);
      case 'repairs':
        return drawing?.repairs.some(({ kind }) => kind === one.repair) ?? false;
      case 'repair':
        return drawing?.repairs.some((repair) => sameTarget(targetOfRepair(repair), one)) ?? false;
      case 'layer':
      case 'colour':
      case 'gaps':
      case 'line':
        return true;
    }
  }
}

const hasCorner = ({ pairs }: Plan, corner: CornerName | null): boolean =>
  pairs.some(({ contourId }) => contourId === corner?.contourId);
