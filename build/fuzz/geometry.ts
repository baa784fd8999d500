import { fork } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { compareOffset } from './compare-offset';
import { projectFolder } from '../run-command';
import { geometryCase, geometryFamilies } from './geometry-cases';
import { shrinkContour } from './shrink-contour';

/**
 * `npm run fuzz:geometry [cases per family] [first seed] [family]`: offsets of random contours against clipper-lib.
 * Prints a table by family; what differs is shrunk and kept in dist/fuzz, ready to become a fixture.
 */
const [, , wantedCases = '100000', wantedSeed = '1', wantedFamily = '', role = ''] = process.argv;
const batchSize = 500;

interface Batch {
  readonly family: string;
  readonly first: number;
  readonly count: number;
}

interface Tally {
  readonly family: string;
  cases: number;
  same: number;
  slivers: number;
  apart: number;
  error: number;
  points: number;
  overNanometre: number;
  readonly failed: number[];
}

if (role === 'worker') work();
else void watch(Number(wantedCases), Number(wantedSeed));

function work(): void {
  process.on('message', (batch: Batch) => process.send?.(tallyOf(batch)));
}

function emptyTally(family: string): Tally {
  return {
    family,
    cases: 0,
    same: 0,
    slivers: 0,
    apart: 0,
    error: 0,
    points: 0,
    overNanometre: 0,
    failed: [],
  };
}

function tallyOf({ family, first, count }: Batch): Tally {
  const tally = emptyTally(family);
  for (let seed = first; seed < first + count; seed++) {
    const { contour, distance } = geometryCase(family, seed);
    const found = compared(contour, distance);
    tally.cases++;
    if (!found || found.verdict === 'differs') {
      tally.failed.push(seed);
      continue;
    }
    tally.points += found.points;
    tally.overNanometre += found.overNanometre;
    tally.error = Math.max(tally.error, found.error);
    if (found.verdict === 'sliver') tally.slivers++;
    else {
      tally.same++;
      tally.apart = Math.max(tally.apart, found.apart);
    }
  }
  return tally;
}

/** Null where the offset threw. */
function compared(
  ...[contour, distance]: Parameters<typeof compareOffset>
): ReturnType<typeof compareOffset> | null {
  try {
    return compareOffset(contour, distance);
  } catch {
    return null;
  }
}

async function watch(cases: number, firstSeed: number): Promise<void> {
  const wanted = geometryFamilies.filter((family) => wantedFamily === '' || family === wantedFamily);
  const batches: Batch[] = [];
  for (let first = firstSeed; first < firstSeed + cases; first += batchSize) {
    const count = Math.min(batchSize, firstSeed + cases - first);
    for (const family of wanted) batches.push({ family, first, count });
  }
  const tallies = new Map(wanted.map((family) => [family, emptyTally(family)]));
  const total = batches.length;
  let done = 0;
  const serve = (): Promise<void> =>
    new Promise((finish, fail) => {
      const worker = fork(process.argv[1] ?? '', ['0', '0', '', 'worker']);
      const next = (): void => {
        const batch = batches.shift();
        if (batch) worker.send(batch);
        else worker.disconnect();
      };
      worker.on('message', (tally: Tally) => {
        add(tallies.get(tally.family) as Tally, tally);
        if (++done % 20 === 0) console.log(`${done} of ${total} batches`);
        next();
      });
      worker.on('exit', (code) => (code === 0 ? finish() : fail(new Error(`a worker ended with ${code}`))));
      next();
    });
  await Promise.all(Array.from({ length: availableParallelism() }, serve));
  report([...tallies.values()]);
}

function add(sum: Tally, part: Tally): void {
  sum.cases += part.cases;
  sum.same += part.same;
  sum.slivers += part.slivers;
  sum.apart = Math.max(sum.apart, part.apart);
  sum.error = Math.max(sum.error, part.error);
  sum.points += part.points;
  sum.overNanometre += part.overNanometre;
  sum.failed.push(...part.failed);
}

function report(tallies: readonly Tally[]): void {
  console.table(
    tallies.map(({ family, cases, same, slivers, apart, error, points, overNanometre, failed }) => ({
      family,
      cases,
      same,
      'same but for slivers': slivers,
      differ: failed.length,
      'most apart, µm': Number((apart * 1000).toFixed(3)),
      'largest error, mm': error.toExponential(1),
      'within 1e-9': `${((100 * (points - overNanometre)) / Math.max(1, points)).toFixed(4)} %`,
    })),
  );
  const folder = join(projectFolder, 'dist/fuzz');
  mkdirSync(folder, { recursive: true });
  for (const { family, failed } of tallies) {
    for (const seed of failed.slice(0, 20)) {
      const { contour, distance } = geometryCase(family, seed);
      const fails = (candidate: typeof contour): boolean => {
        const found = compared(candidate, distance);
        return !found || found.verdict === 'differs';
      };
      const smallest = shrinkContour(contour, fails);
      const say = compared(smallest, distance)?.say ?? 'threw';
      console.log(`FAILED ${family} seed ${seed}, offset ${distance}: ${say} (${smallest.length} vertices)`);
      const name = `offset-${family.replaceAll(' ', '-')}-${seed}.json`;
      writeFileSync(join(folder, name), `${JSON.stringify({ family, seed, distance, contour: smallest })}\n`);
    }
  }
  process.exitCode = tallies.some(({ failed }) => failed.length > 0) ? 1 : 0;
}
