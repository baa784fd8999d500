import { CirclePause, Spool } from 'lucide-react';
import { changeReplay, goToLine } from '../replay/play';
import type { ShownProgram } from '../replay/shown-program';
import type { TimedPause } from '../replay/timeline';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';
import { clockText } from './clock-text';
import { pauseWords } from './pause-words';

/** Every threading and stop of the program with its time; a click goes there. */
export function PauseList({ program }: { program: ShownProgram }) {
  const { pauses } = program.timeline;
  const threadings = pauses.filter(({ isThreading }) => isThreading).length;
  return (
    <section className="pauses" aria-label="Threadings and stops">
      <h3>
        {counted(threadings, 'threading')}, {counted(pauses.length - threadings, 'other stop')}
      </h3>
      <ol className="pause-rows">
        {pauses.map((pause) => (
          <PauseRow key={pause.line} pause={pause} />
        ))}
      </ol>
    </section>
  );
}

function PauseRow({ pause }: { pause: TimedPause }) {
  const app = useApp();
  const isHere = useAppState(({ selected }) => selected?.kind === 'line' && selected.line === pause.line);
  const Icon = pause.isThreading ? Spool : CirclePause;
  return (
    <li>
      <button
        type="button"
        className="pause-row"
        aria-current={isHere || undefined}
        onPointerEnter={() => hoverTarget(app, { kind: 'line', line: pause.line })}
        onPointerLeave={() => hoverTarget(app, null)}
        onClick={() => {
          goToLine(app, pause.line);
          changeReplay(app, { isPlaying: false });
        }}
      >
        <Icon aria-hidden="true" />
        <span>{pauseWords(pause)}</span>
        <span className="pause-time">{clockText(pause.time)}</span>
      </button>
    </li>
  );
}

const counted = (count: number, name: string): string => `${count} ${name}${count === 1 ? '' : 's'}`;
