import { passesOf, type Job } from './job';
import type { MemberRole } from './plan';
import { done, type Result } from './problem';
import { passOffsets, type WirePass } from './wire/pass-offsets';

/** The passes of each member as the wire room wants them. */
export type WirePasses = Readonly<Record<MemberRole, readonly WirePass[]>>;

/** The job's passes with their feeds, checked: what passOffsets refuses is the problem. */
export function wirePasses(job: Job): Result<WirePasses> {
  const passes = { die: passesFor(job, 'die'), punch: passesFor(job, 'punch') };
  for (const own of [passes.die, passes.punch]) {
    const offsets = passOffsets(job.wire.diameter, own);
    if (!offsets.ok) return offsets;
  }
  return done(passes);
}

const passesFor = (job: Job, role: MemberRole): readonly WirePass[] =>
  passesOf(job, role).map(({ sparkGap, stockLeft, rate, feed }) => ({
    sparkGap,
    stockLeft,
    // mm²/min over mm: the surface grows by the block's height for every mm of path.
    feed: feed ?? rate / job.blocks[role],
  }));
