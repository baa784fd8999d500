import { singleBlock, type SingleBlock } from './die/single-block';
import type { Job } from './job';
import type { Result } from './problem';

/** Width of the one leaning cut, square to the wire, mm: the wire and the rough cut's gap on both sides. */
export const oneBlockKerf = ({ wire, passes }: Pick<Job, 'wire' | 'passes'>): number =>
  wire.diameter + 2 * (passes[0]?.sparkGap ?? 0);

/** How the wire leans for punch and die from one block, the same for all contours of the job. */
export const oneBlockLean = (
  job: Pick<Job, 'wire' | 'passes' | 'blocks'>,
  clearance: number,
): Result<SingleBlock> => singleBlock({ kerf: oneBlockKerf(job), height: job.blocks.die, clearance });
