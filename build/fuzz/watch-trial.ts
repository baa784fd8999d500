import { fork, type ChildProcess } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { processorTime } from '../bench/processor-time';
import { projectFolder } from '../run-command';

/** Something that is damaged in a seeded way and tried. */
export interface WatchedTrial {
  /** Begins the names of what is kept of failing cases. */
  readonly name: string;
  /** The damaged bytes of a seed, the same at every call. */
  bytes(seed: number): Uint8Array;
  /** Returns in a word what came of it; throws where that is neither a result nor a clear problem. */
  attempt(bytes: Uint8Array, seed: number): string;
}

const mostSeconds = 5;
/** By the clock, on a machine that has other things to do. */
const mostWaiting = 60;
const mostMegabytes = 1000;

interface Reply {
  readonly seed: number;
  readonly outcome: string;
  readonly error: string | null;
  readonly seconds: number;
  readonly megabytes: number;
}

/** The other side of `watchTrial`: a process that attempts the seeds it is sent. */
export function attemptTrials(trial: WatchedTrial): void {
  process.on('message', (seed: number) => {
    const bytes = trial.bytes(seed);
    let [outcome, error]: [string, string | null] = ['', null];
    const seconds = processorTime(() => {
      try {
        outcome = trial.attempt(bytes, seed);
      } catch (thrown) {
        error = thrown instanceof Error ? (thrown.stack ?? thrown.message) : String(thrown);
      }
    });
    const megabytes = process.memoryUsage().rss / 1e6;
    process.send?.({ seed, outcome, error, seconds, megabytes } satisfies Reply);
  });
}

/**
 * Tries many seeds, each in a process that is watched: no exception, no more than 5 s of the processor, no more than 1 GB.
 * What fails is kept in dist/fuzz. `words` start this script as that process. Resolves to how many failed.
 */
export function watchTrial(
  trial: WatchedTrial,
  cases: number,
  firstSeed: number,
  words: readonly string[],
): Promise<number> {
  return new Promise((resolve) => {
    const outcomes = new Map<string, number>();
    const failures: { seed: number; say: string }[] = [];
    let slowest: Reply = { seed: 0, outcome: '', error: null, seconds: 0, megabytes: 0 };
    let largest = slowest;
    let next = firstSeed;
    let done = 0;
    const fail = (seed: number, say: string): void => void failures.push({ seed, say });

    const take = ({ seed, outcome, error, seconds, megabytes }: Reply): void => {
      if (error !== null) fail(seed, error);
      else outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
      if (seconds > mostSeconds) fail(seed, `took ${seconds.toFixed(1)} s`);
      if (megabytes > mostMegabytes) fail(seed, `took ${Math.round(megabytes)} MB`);
      if (seconds > slowest.seconds) slowest = { seed, outcome, error, seconds, megabytes };
      if (megabytes > largest.megabytes) largest = { seed, outcome, error, seconds, megabytes };
      if (++done % 1000 === 0) console.log(`${trial.name}: ${done} of ${cases}, ${failures.length} failed`);
    };

    const runWorker = (): void => {
      const worker: ChildProcess = fork(process.argv[1] ?? '', words, {
        execArgv: [`--max-old-space-size=${mostMegabytes}`],
      });
      let seed = 0;
      let timer: NodeJS.Timeout | undefined;
      let served = 0;
      const giveNext = (): void => {
        // A fresh process now and then, so that one case's memory is not counted against another.
        if (next >= firstSeed + cases || served >= 400) {
          worker.disconnect();
          if (next < firstSeed + cases) runWorker();
          else if (done === cases) finish();
          seed = -1;
          return;
        }
        seed = next++;
        served++;
        worker.send(seed);
        timer = setTimeout(() => worker.kill('SIGKILL'), mostWaiting * 1000);
      };
      worker.on('message', (reply: Reply) => {
        clearTimeout(timer);
        take(reply);
        giveNext();
      });
      worker.on('exit', (_code, signal) => {
        clearTimeout(timer);
        if (seed < 0) return;
        fail(
          seed,
          signal === 'SIGKILL' ? `no answer in ${mostWaiting} s` : 'the process died (out of memory?)',
        );
        done++;
        if (done === cases) finish();
        else if (next < firstSeed + cases) runWorker();
      });
      giveNext();
    };

    const finish = (): void => {
      console.table(
        [...outcomes].sort((a, b) => b[1] - a[1]).map(([outcome, count]) => ({ outcome, count })),
      );
      console.log(
        `slowest ${slowest.seconds.toFixed(2)} s (seed ${slowest.seed}), largest ${Math.round(largest.megabytes)} MB (seed ${largest.seed})`,
      );
      const folder = join(projectFolder, 'dist/fuzz');
      mkdirSync(folder, { recursive: true });
      for (const { seed, say } of failures.slice(0, 20)) {
        console.log(`FAILED seed ${seed}: ${say}`);
        writeFileSync(join(folder, `${trial.name}-${seed}`), trial.bytes(seed));
      }
      console.log(`${trial.name}: ${cases} cases, ${failures.length} failed`);
      resolve(failures.length);
    };

    runWorker();
  });
}
