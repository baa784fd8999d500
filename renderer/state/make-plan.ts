import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { stale } from '../worker/core-client';
import { jobOf, type AppState, type CornerName } from './app-state';
import type { App } from './app-store';
import { linesBox } from './lines-box';
import { planBox } from './plan-box';
import { sameTarget, targetOfRepair, type Target } from './target';
import { fitted } from './viewport';

/** Asks for the plan of a job and takes it in when it comes; then for what is to be seen of its drawing. */
export async function makePlan(app: App, job: Job): Promise<void> {
  const { store, core } = app;
  // No progress yet: most edits are answered before anyone could read it.
  const result = await core.plan(job, (step, fraction) => store.setState({ progress: { step, fraction } }));
  if (result === stale) return;
  if (result.ok) {
    store.setState((state) => ({
      made: { job, plan: result.value },
      problem: null,
      progress: null,
      unitAsked: false,
      ...(state.fitPending
        ? { fitPending: false, viewport: fitted(planBox(result.value), state.canvasSize) }
        : {}),
      selected: stillThere(state.selected, result.value),
      hovered: stillThere(state.hovered, result.value),
      openCorner: hasCorner(result.value, state.openCorner) ? state.openCorner : null,
      pointedCorner: null,
    }));
  } else {
    // What is wrong with the drawing is put right beside it.
    const isDrawings = drawingProblems.has(result.problem.code);
    store.setState({
      problem: result.problem,
      progress: null,
      ...(isDrawings ? { pane: 'drawing' as const } : {}),
    });
  }
  await surveyDrawing(app, job);
  // The question stands over the window; whoever closes it unanswered still reads the problem.
  const { problem, survey } = store.getState();
  if (problem?.code === 'units-needed' && survey && jobOf(store.getState()) === job)
    store.setState({ unitAsked: true });
}

const drawingProblems: ReadonlySet<string> = new Set(['no-closed-contour', 'all-contours-left-out']);

/** Asks what is to be seen of the drawing, unless that is known. */
async function surveyDrawing({ store, core }: App, job: Job): Promise<void> {
  const { survey: known, surveyed } = store.getState();
  if (known && surveyed && isSameView(surveyed, job.drawing)) return;
  const survey = await core.survey(job);
  const now = jobOf(store.getState());
  if (survey === stale || !now || !isSameView(now.drawing, job.drawing)) return;
  store.setState((state) => ({
    survey: survey.ok ? survey.value : null,
    surveyed: job.drawing,
    ...(survey.ok ? viewOfLines(state, survey.value.lines) : {}),
  }));
}

/** A drawing without a plan is fitted to its lines; the plan still to come is fitted anew. */
function viewOfLines(
  state: AppState,
  lines: Parameters<typeof linesBox>[0],
): Partial<Pick<AppState, 'viewport'>> {
  const box = state.fitPending ? linesBox(lines) : null;
  return box ? { viewport: fitted(box, state.canvasSize) } : {};
}

/** Whether two drawings are read in the same way; the text is compared by itself, since no edit changes it. */
function isSameView(a: Job['drawing'], b: Job['drawing']): boolean {
  if (a === b) return true;
  const bare = (drawing: Job['drawing']) => JSON.stringify({ ...drawing, content: '' });
  return a.content === b.content && bare(a) === bare(b);
}

/** A target that the new plan no longer has is let go. */
function stillThere(target: Target | null, plan: Plan): Target | null {
  return target === null || isInPlan(target, plan) ? target : null;
}

function isInPlan(target: Target, { findings, pairs, drawing }: Plan): boolean {
  switch (target.kind) {
    case 'finding':
      return findings.some(({ key }) => key === target.key);
    case 'member':
      return pairs.some(({ die, punch }) => die.id === target.id || punch.id === target.id);
    case 'contour':
      return [...drawing.contours, ...drawing.leftOut].some(({ id }) => id === target.id);
    case 'repairs':
      return drawing.repairs.some(({ kind }) => kind === target.repair);
    case 'repair':
      return drawing.repairs.some((repair) => sameTarget(targetOfRepair(repair), target));
    case 'layer':
    case 'colour':
    case 'gaps':
      return true;
  }
}

const hasCorner = ({ pairs }: Plan, corner: CornerName | null): boolean =>
  pairs.some(({ contourId }) => contourId === corner?.contourId);
