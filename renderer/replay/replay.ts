import { placeAt } from './timeline';
import type { ShownProgram } from './shown-program';

/** How the cut is being played: a way of looking at the job, no part of it, and never in its history. */
export interface Replay {
  /** The block whose program is wanted; null: the first. */
  readonly blockId: string | null;
  /** The program that is there; it may be an older one while the wanted one is being made. */
  readonly program: ShownProgram | null;
  /** Seconds of cutting since the program's start. */
  readonly time: number;
  readonly isPlaying: boolean;
  /** Seconds of cutting in a second of playing. */
  readonly pace: number;
}

export const paces = [1, 10, 100, 1000] as const;

export const newReplay: Replay = { blockId: null, program: null, time: 0, isPlaying: false, pace: 100 };

/** The line that the wire is on; null where nothing is shown or the program moves nothing. */
export function currentLine({ program, time }: Replay): number | null {
  if (!program) return null;
  const { move, line } = placeAt(program.timeline, time);
  return move < 0 ? null : line;
}
