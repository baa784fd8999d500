import type { Job } from '../../core/job';
import type { Motion } from '../../core/inspect/motion';
import type { App } from './app-store';
import { inspectedPair } from './inspected-pair';
import { setInspect } from './set-inspect';

/**
 * While inspection is looked at, asks for what it shows whenever the plan, the pair, the position of the punch or the
 * measured points change. Only the newest question's answer is taken in. Returns the way to stop that.
 */
export function keepInspectionCurrent(app: App): () => void {
  const clearance = asker<{ job: Job; contourId: string; motion: Motion }>();
  const measured = asker<{ job: Job }>();
  const look = () => {
    const state = app.store.getState();
    const { made, inspect, pane } = state;
    if (pane !== 'inspect' || !made || state.problem) return;
    const { job } = made;
    const pair = inspectedPair(state);
    if (pair && (inspect.section === 'clearance' || inspect.section === 'measuring')) {
      void clearance.ask(
        { job, contourId: pair.contourId, motion: inspect.motion },
        async (question, isNewest) => {
          const answer = await app.core.clearance(job, question);
          if (!isNewest()) return;
          setInspect(app, { clearance: answer.ok ? answer.value : null });
          // A contour without a pair is said where its clearance would stand.
          if (!answer.ok && answer.problem.code !== 'pair-none')
            app.store.setState({ trouble: answer.problem });
        },
      );
    }
    if (inspect.section === 'points') {
      void measured.ask({ job }, async (_question, isNewest) => {
        const answer = await app.core.measured(job);
        if (!isNewest()) return;
        setInspect(app, { measured: answer.ok ? answer.value : null });
        if (!answer.ok) app.store.setState({ trouble: answer.problem });
      });
    }
  };
  look();
  return app.store.subscribe(look);
}

/** Asks again only when the question is another one; `isNewest` tells whether a later one was asked meanwhile. */
function asker<Q extends object>() {
  let last: Q | null = null;
  return {
    ask: async (
      question: Q,
      answer: (question: Q, isNewest: () => boolean) => Promise<void>,
    ): Promise<void> => {
      if (last && sameParts(last, question)) return;
      last = question;
      await answer(question, () => last === question);
    },
  };
}

const sameParts = <Q extends object>(a: Q, b: Q): boolean =>
  (Object.keys(a) as (keyof Q)[]).every((key) => a[key] === b[key]);
