/** Seconds of the processor that `work` takes in this process: the clock counts what else the machine does. */
export function processorTime(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}
