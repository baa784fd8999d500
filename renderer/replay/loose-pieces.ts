import { besideLoop } from '../../core/check/beside-loop';
import { closingMove } from '../../core/check/closing-move';
import type { ProgramReading } from '../../core/check/program-reading';
import type { Contour } from '../../core/geometry/contour';
import type { Plan } from '../../core/plan';
import type { Timeline } from './timeline';
import { membersOf } from '../../core/wire/members-of';

/** Waste that hangs by nothing any more and is taken out of the block. */
export interface LoosePiece {
  /** Everything inside is gone. */
  readonly loop: Contour;
  /** Seconds; at a stop where there is one after it was cut free. */
  readonly time: number;
}

/** Where and when a program's moves cut waste free that they run all round: what falls out of a die's openings. */
export function loosePieces(
  plan: Plan,
  blockId: string,
  timeline: Timeline,
  { step }: ProgramReading,
): readonly LoosePiece[] {
  const block = plan.blocks.find(({ id }) => id === blockId);
  const members = membersOf(plan);
  const cuts = members.filter(({ id }) => block?.memberIds.includes(id)).flatMap((member) => member.cuts);
  return cuts.flatMap(({ waste, passes }) => {
    const loop = passes[0]?.loop;
    if (waste !== 'inside' || !loop) return [];
    const closing = closingMove(timeline.moves, loop, besideLoop(passes, 0, step));
    if (closing === null) return [];
    const free = timeline.starts[closing + 1] ?? timeline.total;
    const stops = timeline.pauses.map(({ time }) => time).filter((time) => time >= free);
    return [{ loop, time: stops[0] ?? free }];
  });
}
