import { sayProblem } from '../../core/problem';
import { Choice } from '../controls/choice';
import { changeReplay } from '../replay/play';
import { useApp, useAppState } from '../state/use-app';
import { PauseList } from './pause-list';
import { ProgramList } from './program-list';

/** Beside the picture: the program that is played, its stops and its text. */
export function CutPane() {
  const app = useApp();
  const blocks = useAppState(({ made }) => made?.plan.blocks ?? none);
  const program = useAppState(({ replay }) => replay.program);
  const isStale = useAppState(
    ({ problem, made, replay }) =>
      problem !== null || (replay.program !== null && replay.program.made !== made),
  );
  if (blocks.length === 0) return <p className="panel-note cut-note">There is nothing to cut yet.</p>;
  return (
    <section className="cut" aria-label="The cut" data-stale={isStale || undefined}>
      <header className="cut-head">
        <h2>Program of</h2>
        <Choice
          label="Program"
          value={program?.blockId ?? blocks[0]?.id ?? ''}
          options={blocks.map(({ id }) => ({ value: id, name: id }))}
          onChoose={(blockId) => changeReplay(app, { blockId, isPlaying: false })}
        />
      </header>
      {program?.problem && (
        <p className="cut-note" role="alert">
          {sayProblem(program.problem)}
        </p>
      )}
      {program && <PauseList program={program} />}
      {program && <ProgramList program={program} />}
    </section>
  );
}

const none: readonly { readonly id: string }[] = [];
