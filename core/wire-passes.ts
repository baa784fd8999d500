import { byPart, heightOf, partsOf, passesOf, type Job } from './job';
import type { PartName } from './plan';
import { done, type Result } from './problem';
import { passOffsets, type WirePass } from './wire/pass-offsets';

/** The passes of each part as the wire room wants them. */
export type WirePasses = Readonly<Record<PartName, readonly WirePass[]>>;

/** The job's passes with their feeds, checked: what passOffsets refuses is the problem. */
export function wirePasses(job: Job): Result<WirePasses> {
  const passes = byPart((part) => passesFor(job, part));
  for (const part of partsOf(job)) {
    const offsets = passOffsets(job.wire.diameter, passes[part]);
    if (!offsets.ok) return offsets;
  }
  return done(passes);
}

const passesFor = (job: Job, part: PartName): readonly WirePass[] =>
  passesOf(job, part).map(({ sparkGap, stockLeft, rate, feed }) => ({
    sparkGap,
    stockLeft,
    // mm²/min over mm: the surface grows by the block's height for every mm of path.
    feed: feed ?? rate / heightOf(job, part),
  }));
