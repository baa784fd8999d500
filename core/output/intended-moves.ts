import type { IntendedMove, IntendedMoves, IntendedPause } from '../check/intended-moves';
import { programBlocks } from '../check/program-blocks';
import type { Point } from '../geometry/contour';
import type { ProgramStyle } from '../program-style';
import type { ProgramStep } from './program-steps';

/** The moves and pauses that steps ask for in a style, exact and without text: the program has to say the same. */
export function intendedMoves(steps: readonly ProgramStep[], style: ProgramStyle): IntendedMoves {
  const moves: IntendedMove[] = [];
  const pauses: IntendedPause[] = [];
  let feed = 0;
  let side: IntendedMove['side'] = 'off';
  let register: number | null = null;
  const add = (to: Point, bulge: number, isRapid: boolean, lean: Point = { x: 0, y: 0 }) =>
    moves.push({ isRapid, to, lean, bulge, feed: isRapid ? null : feed, side, register });
  const pause = (words: readonly string[]) => pauses.push({ after: moves.length, words });
  for (const step of steps) {
    switch (step.kind) {
      case 'thread':
        add(step.at, 0, true, step.lean);
        pause(machineWords(style.thread, style.ownWords));
        break;
      case 'pass':
        feed = step.feed;
        break;
      case 'compensate':
        side = step.side;
        register = style.offsets.first + step.offsetNumber - 1;
        break;
      case 'stop compensating':
        side = 'off';
        register = null;
        break;
      case 'move':
        add(step.to, step.bulge, false, step.lean);
        break;
      case 'cut wire':
        pause(machineWords(style.cutWire, style.ownWords));
        break;
      case 'stop':
        pause(['M00']);
        break;
    }
  }
  return { moves, pauses };
}

/** The M words of a style's own blocks; none where they cannot be read. */
function machineWords(lines: readonly string[], ownWords: readonly string[]): readonly string[] {
  const blocks = programBlocks(lines.join('\n'), ownWords);
  if (!blocks.ok) return [];
  return blocks.value
    .flatMap(({ words }) => words)
    .flatMap(({ letter, value }) => (letter === 'M' ? [`M${String(value).padStart(2, '0')}`] : []));
}
