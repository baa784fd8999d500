import { readFileSync } from 'node:fs';

/**
 * Seconds of the processor that `work` takes in this thread: what the clock would show if the machine had nothing else to
 * do. Where the system does not tell threads apart, those of the whole process, garbage collection beside it included.
 */
export function processorTime(work: () => void): number {
  const start = processorUsed();
  work();
  return processorUsed() - start;
}

/** Seconds of the processor that this thread has used so far. */
export function processorUsed(): number {
  if (process.platform !== 'linux') {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1e6;
  }
  // Behind the name in brackets the fields are apart by blanks: the 14th and 15th of all are ticks in user and system mode
  // (proc(5), /proc/pid/stat), a hundred to the second.
  const stat = readFileSync(`/proc/self/task/${process.pid}/stat`, 'utf8');
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}
