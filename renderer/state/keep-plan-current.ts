import type { Job } from '../../core/job';
import type { Plan } from '../../core/plan';
import { stale } from '../worker/core-client';
import { jobOf, type CornerName, type Target } from './app-state';
import type { App } from './app-store';
import { planBox } from './plan-box';
import { fitted } from './viewport';

/** Asks for a plan whenever the job changes, and takes it in when it comes. Returns the way to stop that. */
export function keepPlanCurrent(app: App): () => void {
  const { store } = app;
  let asked: Job | null = null;
  const look = () => {
    const job = jobOf(store.getState());
    if (job === asked) return;
    asked = job;
    if (job) void makePlan(app, job);
  };
  look();
  return store.subscribe(look);
}

async function makePlan({ store, core }: App, job: Job): Promise<void> {
  // No progress yet: most edits are answered before anyone could read it.
  const result = await core.plan(job, (step, fraction) => store.setState({ progress: { step, fraction } }));
  if (result === stale) return;
  if (result.ok) {
    store.setState((state) => ({
      made: { job, plan: result.value },
      problem: null,
      progress: null,
      unitQuestion: null,
      ...(state.fitPending
        ? { fitPending: false, viewport: fitted(planBox(result.value), state.canvasSize) }
        : {}),
      selected: stillThere(state.selected, result.value),
      hovered: stillThere(state.hovered, result.value),
      openCorner: hasCorner(result.value, state.openCorner) ? state.openCorner : null,
      pointedCorner: null,
    }));
    return;
  }
  store.setState({ problem: result.problem, progress: null, unitQuestion: null });
  if (result.problem.code !== 'units-needed') return;
  // The question stands over the window; whoever closes it unanswered still reads the problem.
  const size = await core.drawingSize(job);
  if (jobOf(store.getState()) !== job) return;
  store.setState(size.ok ? { unitQuestion: size.value } : { problem: size.problem });
}

/** A target that the new plan no longer has is let go. */
function stillThere(target: Target | null, plan: Plan): Target | null {
  if (target === null) return null;
  const isThere =
    target.kind === 'finding'
      ? plan.findings.some((finding) => finding.key === target.key)
      : plan.pairs.some((pair) => pair.die.id === target.id || pair.punch.id === target.id);
  return isThere ? target : null;
}

const hasCorner = ({ pairs }: Plan, corner: CornerName | null): boolean =>
  pairs.some(({ contourId }) => contourId === corner?.contourId);
