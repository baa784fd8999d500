import type { App } from '../state/app-store';
import type { MadePlan } from '../state/made-plan';
import { stale } from '../worker/core-client';
import { showProgram } from './shown-program';

/** Fetches the program of the chosen block while the cut is looked at, and anew with every plan. Returns the way to stop that. */
export function keepProgramCurrent(app: App): () => void {
  let asked: { made: MadePlan; blockId: string } | null = null;
  const look = () => {
    const { pane, made, replay } = app.store.getState();
    if (pane !== 'cut' || !made) return;
    const { blocks } = made.plan;
    const block = blocks.find(({ id }) => id === replay.blockId) ?? blocks[0];
    if (!block) {
      if (replay.program) app.store.setState({ replay: { ...replay, program: null, isPlaying: false } });
      return;
    }
    if (asked?.made === made && asked.blockId === block.id) return;
    asked = { made, blockId: block.id };
    void fetchProgram(app, made, block.id);
  };
  look();
  return app.store.subscribe(look);
}

async function fetchProgram(app: App, made: MadePlan, blockId: string): Promise<void> {
  const sheet = await app.core.program(made.job, blockId);
  // A newer plan asks for its own.
  if (sheet === stale || app.store.getState().made !== made) return;
  if (!sheet.ok) {
    app.store.setState({ trouble: sheet.problem });
    return;
  }
  const program = showProgram(sheet.value, made);
  app.store.setState(({ replay, selected, hovered }) => {
    const isSame = replay.program?.blockId === blockId;
    return {
      replay: {
        ...replay,
        program,
        time: isSame ? Math.min(replay.time, program.timeline.total) : 0,
        isPlaying: isSame && replay.isPlaying,
      },
      // Its lines are others now.
      selected: selected?.kind === 'line' ? null : selected,
      hovered: hovered?.kind === 'line' ? null : hovered,
    };
  });
}
