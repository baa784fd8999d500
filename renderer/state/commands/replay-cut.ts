import { ChevronFirst, ChevronLast, Pause, Play, Route, StepBack, StepForward } from 'lucide-react';
import { stepMove, stepPause, togglePlaying } from '../../replay/play';
import type { AppState } from '../app-state';
import type { Command } from '../command';

export const showCutCommand: Command = {
  id: 'show-cut',
  group: 'Cut',
  label: ({ pane }) => (pane === 'cut' ? 'Back to the review list' : 'Replay the cut'),
  shortcuts: ['P'],
  icon: Route,
  enabled: ({ made }) => made !== null,
  run: ({ store }) =>
    store.setState(({ pane, replay }) =>
      pane === 'cut'
        ? { pane: 'review', replay: { ...replay, isPlaying: false } }
        : { pane: 'cut', hovered: null },
    ),
};

export const playCommand: Command = {
  id: 'play',
  group: 'Cut',
  label: ({ replay }) => (replay.isPlaying ? 'Pause' : 'Play'),
  shortcuts: ['Space'],
  icon: Play,
  enabled: canPlay,
  run: togglePlaying,
};

/** The icon of the other state. */
export const pauseIcon = Pause;

export const nextMoveCommand: Command = {
  id: 'next-move',
  group: 'Cut',
  label: () => 'Next move',
  shortcuts: ['ArrowRight'],
  icon: StepForward,
  enabled: canPlay,
  run: (app) => stepMove(app, 1),
};

export const previousMoveCommand: Command = {
  id: 'previous-move',
  group: 'Cut',
  label: () => 'Previous move',
  shortcuts: ['ArrowLeft'],
  icon: StepBack,
  enabled: canPlay,
  run: (app) => stepMove(app, -1),
};

export const nextPauseCommand: Command = {
  id: 'next-pause',
  group: 'Cut',
  label: () => 'Next stop',
  shortcuts: ['PageDown'],
  icon: ChevronLast,
  enabled: canPlay,
  run: (app) => stepPause(app, 1),
};

export const previousPauseCommand: Command = {
  id: 'previous-pause',
  group: 'Cut',
  label: () => 'Previous stop',
  shortcuts: ['PageUp'],
  icon: ChevronFirst,
  enabled: canPlay,
  run: (app) => stepPause(app, -1),
};

function canPlay({ pane, replay }: AppState): boolean {
  return pane === 'cut' && (replay.program?.timeline.total ?? 0) > 0;
}
