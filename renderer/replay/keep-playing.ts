import type { App } from '../state/app-store';
import { changeReplay } from './play';

/** Of the page: what a clock needs. */
export type ClockPage = Pick<
  Window,
  | 'requestAnimationFrame'
  | 'cancelAnimationFrame'
  | 'setTimeout'
  | 'clearTimeout'
  | 'matchMedia'
  | 'performance'
>;

/** Milliseconds between pictures for those who asked for less motion. */
const calmStep = 500;

/**
 * Lets the clock run while the cut is played: with every picture that the screen shows, or, where the system asks for
 * less motion, twice a second. Ends at the end of the program.
 */
export function keepPlaying(app: App, page: ClockPage): void {
  let cancel: (() => void) | null = null;
  let last = 0;
  const next = () => {
    const isCalm = page.matchMedia('(prefers-reduced-motion: reduce)').matches;
    if (isCalm) {
      const timer = page.setTimeout(() => tick(page.performance.now()), calmStep);
      cancel = () => page.clearTimeout(timer);
    } else {
      const frame = page.requestAnimationFrame(tick);
      cancel = () => page.cancelAnimationFrame(frame);
    }
  };
  const tick = (now: number) => {
    const { program, time, pace } = app.store.getState().replay;
    const total = program?.timeline.total ?? 0;
    const reached = time + (Math.max(0, now - last) / 1000) * pace;
    last = now;
    if (reached >= total) changeReplay(app, { time: total, isPlaying: false });
    else {
      changeReplay(app, { time: reached });
      next();
    }
  };
  app.store.subscribe(({ replay, selected }, before) => {
    if (replay.isPlaying === before.replay.isPlaying) return;
    cancel?.();
    cancel = null;
    if (!replay.isPlaying) return;
    if (selected?.kind === 'line') app.store.setState({ selected: null });
    last = page.performance.now();
    next();
  });
}
