import type { App } from '../state/app-store';
import type { Replay } from './replay';
import { timeOfLine, timeOfStep } from './timeline';

/** Sets the clock, within the program; what was picked in its text is let go. */
export function goToTime(app: App, time: number): void {
  app.store.setState(({ replay, selected }) => ({
    replay: { ...replay, time: Math.min(Math.max(0, time), replay.program?.timeline.total ?? 0) },
    selected: selected?.kind === 'line' ? null : selected,
  }));
}

/** Plays or pauses; from the end it begins anew. */
export function togglePlaying(app: App): void {
  const { replay } = app.store.getState();
  if (!replay.program || replay.program.timeline.total === 0) return;
  const isAtEnd = replay.time >= replay.program.timeline.total;
  if (!replay.isPlaying && isAtEnd) goToTime(app, 0);
  changeReplay(app, { isPlaying: !replay.isPlaying });
}

/** One move on or back. */
export function stepMove(app: App, way: 1 | -1): void {
  const { program, time } = app.store.getState().replay;
  if (!program) return;
  changeReplay(app, { isPlaying: false });
  goToTime(app, timeOfStep(program.timeline, time, way));
}

/** To the next stop, or to the one before; to the end or start where there is none. */
export function stepPause(app: App, way: 1 | -1): void {
  const { program, time, isPlaying } = app.store.getState().replay;
  if (!program) return;
  const { pauses, total } = program.timeline;
  const times = pauses.map((pause) => pause.time);
  // While it plays, back means the stop before the one just passed.
  const slack = isPlaying ? total / 200 : 0;
  const next =
    way > 0
      ? Math.min(total, ...times.filter((other) => other > time))
      : Math.max(0, ...times.filter((other) => other < time - slack));
  goToTime(app, next);
}

/** To the place of a line of the program, which stays picked out. */
export function goToLine(app: App, line: number): void {
  const { program } = app.store.getState().replay;
  if (!program) return;
  changeReplay(app, { isPlaying: false, time: timeOfLine(program.timeline, line) });
  app.store.setState({ selected: { kind: 'line', line } });
}

export function changeReplay(app: App, change: Partial<Replay>): void {
  app.store.setState(({ replay }) => ({ replay: { ...replay, ...change } }));
}
