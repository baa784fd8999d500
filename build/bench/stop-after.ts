import { Worker } from 'node:worker_threads';

/** Ends this process, by a signal, once it has taken so many seconds of processor time, whatever it is doing. */
export function stopAfter(seconds: number): void {
  const watch = `
    const { workerData } = require('node:worker_threads');
    setInterval(() => {
      const { user, system } = process.cpuUsage();
      if (user + system > workerData * 1e6) process.kill(process.pid, 'SIGKILL');
    }, 200);`;
  new Worker(watch, { eval: true, workerData: seconds }).unref();
}
