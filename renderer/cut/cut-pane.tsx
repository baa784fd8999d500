import { sayProblem } from '../../core/problem';
import { Choice } from '../controls/choice';
import { changeReplay } from '../replay/play';
import type { ShownProgram } from '../replay/shown-program';
import { useApp, useAppState } from '../state/use-app';
import { PauseList } from './pause-list';
import { ProgramList } from './program-list';
import { membersOf } from '../../core/wire/members-of';

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
      {program && !program.problem && <ProofLine program={program} />}
      {program && <PauseList program={program} />}
      {program && <ProgramList program={program} />}
    </section>
  );
}

/** What the proof says of this very text. */
function ProofLine({ program }: { program: ShownProgram }) {
  const { plan } = program.made;
  const block = plan.blocks.find(({ id }) => id === program.blockId);
  const members = membersOf(plan).filter(({ id }) => block?.memberIds.includes(id));
  const isProved = members.length > 0 && members.every(({ proof }) => proof.passed);
  const moves = new Set(program.timeline.moves.map(({ move }) => move)).size;
  return (
    <p className="cut-note panel-note">
      {moves} moves read back from this text; {isProved ? 'proved.' : 'not proved: see the review list.'}
    </p>
  );
}

const none: readonly { readonly id: string }[] = [];
