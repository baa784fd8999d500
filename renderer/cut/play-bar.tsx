import { Slider, ToggleGroup } from 'radix-ui';
import { CommandButton } from '../controls/command-button';
import { changeReplay, goToTime, stepMove } from '../replay/play';
import { paces } from '../replay/replay';
import {
  nextMoveCommand,
  nextPauseCommand,
  pauseIcon,
  playCommand,
  previousMoveCommand,
  previousPauseCommand,
} from '../state/commands/replay-cut';
import { useApp, useAppState } from '../state/use-app';
import { clockText, clockWords } from './clock-text';

/** Under the picture while the cut is looked at: the clock, and what moves it. */
export function PlayBar() {
  const isShown = useAppState(({ pane, replay }) => pane === 'cut' && replay.program !== null);
  const isPlaying = useAppState(({ replay }) => replay.isPlaying);
  if (!isShown) return null;
  const play = isPlaying ? { ...playCommand, icon: pauseIcon } : playCommand;
  return (
    <div className="play-bar" role="group" aria-label="Replay">
      <div className="play-buttons">
        <CommandButton command={previousPauseCommand} />
        <CommandButton command={previousMoveCommand} />
        <CommandButton command={play} />
        <CommandButton command={nextMoveCommand} />
        <CommandButton command={nextPauseCommand} />
      </div>
      <Clock />
      <Pace />
    </div>
  );
}

/** The time, and a slider with a tick for every stop. */
function Clock() {
  const app = useApp();
  const time = useAppState(({ replay }) => replay.time);
  const timeline = useAppState(({ replay }) => replay.program?.timeline);
  if (!timeline) return null;
  const { total, pauses } = timeline;
  return (
    <>
      <span className="play-time">{clockText(time)}</span>
      <Slider.Root
        className="play-slider"
        value={[time]}
        max={total}
        step={total / 1000}
        onValueChange={([chosen]) => goToTime(app, chosen ?? 0)}
        onKeyDown={(event) => {
          const way = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
          if (way === undefined || event.shiftKey) return;
          // From move to move, as everywhere while the cut is looked at.
          event.preventDefault();
          stepMove(app, way > 0 ? 1 : -1);
        }}
      >
        <Slider.Track className="play-track">
          <Slider.Range className="play-range" />
          <svg className="play-ticks" preserveAspectRatio="none" viewBox="0 0 1000 10" aria-hidden="true">
            {pauses.map(({ line, time: at }) => (
              <path key={line} d={`M${(1000 * at) / (total || 1)} 0V10`} />
            ))}
          </svg>
        </Slider.Track>
        <Slider.Thumb
          className="play-thumb"
          aria-label="Time of cutting"
          aria-valuetext={`${clockWords(time)} of ${clockWords(total)}`}
        />
      </Slider.Root>
      <span className="play-time play-total">{clockText(total)}</span>
    </>
  );
}

/** How fast the clock runs. */
function Pace() {
  const app = useApp();
  const pace = useAppState(({ replay }) => replay.pace);
  return (
    <ToggleGroup.Root
      className="switch"
      type="single"
      aria-label="Pace"
      value={String(pace)}
      onValueChange={(chosen) => {
        if (chosen !== '') changeReplay(app, { pace: Number(chosen) });
      }}
    >
      {paces.map((each) => (
        <ToggleGroup.Item
          key={each}
          className="switch-item"
          value={String(each)}
          aria-label={each === 1 ? 'As fast as it is cut' : `${each} times as fast as it is cut`}
        >
          {each}×
        </ToggleGroup.Item>
      ))}
    </ToggleGroup.Root>
  );
}
