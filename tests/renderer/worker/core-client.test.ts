import { describe, expect, it } from 'vitest';
import { newJob, type Job } from '../../../core/job';
import type { Plan } from '../../../core/plan';
import { done, type Result } from '../../../core/problem';
import { CoreClient, stale } from '../../../renderer/worker/core-client';
import type { CoreConnection, ReportProgress } from '../../../renderer/worker/messages';
import { testPlan, testSurvey } from '../support/test-app';
import { noInspection } from '../support/no-inspection';

const jobNamed = (name: string): Job => newJob(`${name}.dxf`, '');
const quiet = () => {};

/** A worker whose plans are answered, refused or left hanging by the test. */
function testWorker() {
  const asked: { job: Job; answer: (result: Result<Plan>) => void; break: (error: Error) => void }[] = [];
  let die: (cause: string) => void = quiet;
  let ended = 0;
  const connection: CoreConnection = {
    ...noInspection,
    plan: (job) =>
      new Promise((resolve, reject) => {
        asked.push({ job, answer: resolve, break: reject });
      }),
    files: () => Promise.resolve(done([])),
    survey: () => Promise.resolve(done(testSurvey())),
    program: () => Promise.reject(new Error('not asked here')),
    verify: () => Promise.reject(new Error('not asked here')),
    died: new Promise((resolve) => {
      die = resolve;
    }),
    end: () => {
      ended += 1;
    },
  };
  return { connection, asked, die: (cause: string) => die(cause), ended: () => ended };
}

const turn = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('CoreClient', () => {
  it('hands on a plan that is not yet proved, until a newer question overtakes it', async () => {
    const tellers: ReportProgress[] = [];
    const connection: CoreConnection = {
      ...testWorker().connection,
      plan: (_job, progress) => {
        tellers.push(progress);
        return new Promise(() => {});
      },
    };
    const client = new CoreClient(() => connection, 0);
    const seen: string[] = [];
    const ask = (name: string) =>
      client.plan(jobNamed(name), (_step, _fraction, unproved) => {
        if (unproved) seen.push(name);
      });
    void ask('a');
    await turn();
    tellers[0]?.('Proving', 0.5, testPlan());
    void ask('b');
    await turn();
    tellers[0]?.('Proving', 0.9, testPlan());
    expect(seen).toEqual(['a']);
  });

  it('answers with the plan', async () => {
    const worker = testWorker();
    const reply = new CoreClient(() => worker.connection).plan(jobNamed('a'), quiet);
    await turn();
    const plan = testPlan();
    worker.asked[0]?.answer(done(plan));
    expect(await reply).toEqual(done(plan));
  });

  it('starts its worker ahead of the first question, and only one', async () => {
    const worker = testWorker();
    let started = 0;
    const client = new CoreClient(() => {
      started += 1;
      return worker.connection;
    });
    client.warmUp();
    expect(started).toBe(1);
    const reply = client.plan(jobNamed('a'), quiet);
    await turn();
    worker.asked[0]?.answer(done(testPlan()));
    await reply;
    expect(started).toBe(1);
  });

  it('asks for the newest only, and calls overtaken replies stale', async () => {
    const worker = testWorker();
    const client = new CoreClient(() => worker.connection);
    const first = client.plan(jobNamed('a'), quiet);
    await turn();
    const replies = [first, ...['b', 'c'].map((name) => client.plan(jobNamed(name), quiet))];
    await turn();
    worker.asked[0]?.answer(done(testPlan()));
    await turn();
    worker.asked[1]?.answer(done(testPlan()));
    const [a, b, c] = await Promise.all(replies);
    expect([a, b]).toEqual([stale, stale]);
    expect(c).not.toBe(stale);
    expect(worker.asked.map(({ job }) => job.name)).toEqual(['a', 'c']);
  });

  it('starts a dead worker again and asks once more', async () => {
    const workers = [testWorker(), testWorker()];
    let started = 0;
    const client = new CoreClient(() => (workers[started++] ?? testWorker()).connection);
    const reply = client.plan(jobNamed('a'), quiet);
    await turn();
    workers[0]?.die('out of memory');
    await turn();
    workers[1]?.asked[0]?.answer(done(testPlan()));
    expect(await reply).toHaveProperty('ok', true);
    expect(workers[0]?.ended()).toBe(1);
    expect(started).toBe(2);
  });

  it('says so when the same job kills it twice', async () => {
    const workers = [testWorker(), testWorker(), testWorker()];
    let started = 0;
    const client = new CoreClient(() => (workers[started++] ?? testWorker()).connection);
    const reply = client.plan(jobNamed('a'), quiet);
    await turn();
    workers[0]?.die('out of memory');
    await turn();
    workers[1]?.die('out of memory');
    expect(await reply).toMatchObject({
      ok: false,
      problem: { code: 'calculation-stopped', where: 'out of memory' },
    });
    // The next question gets a fresh worker.
    void client.plan(jobNamed('b'), quiet);
    await turn();
    expect(workers[2]?.asked).toHaveLength(1);
  });

  it('gives up a plan that keeps a newer one waiting, together with its worker', async () => {
    const workers = [testWorker(), testWorker()];
    let started = 0;
    const client = new CoreClient(() => (workers[started++] ?? testWorker()).connection, 5);
    const slow = client.plan(jobNamed('slow'), quiet);
    await turn();
    const newer = client.plan(jobNamed('newer'), quiet);
    expect(await slow).toBe(stale);
    expect(workers[0]?.ended()).toBeGreaterThan(0);
    await turn();
    expect(workers[1]?.asked.map(({ job }) => job.name)).toEqual(['newer']);
    workers[1]?.asked[0]?.answer(done(testPlan()));
    expect(await newer).toHaveProperty('ok', true);
    expect(started).toBe(2);
  });

  it('turns a bug of the pipeline into a problem', async () => {
    const worker = testWorker();
    const reply = new CoreClient(() => worker.connection).plan(jobNamed('a'), quiet);
    await turn();
    worker.asked[0]?.break(new Error('Broken assumption: a loop'));
    expect(await reply).toMatchObject({
      ok: false,
      problem: { code: 'calculation-failed', where: 'Broken assumption: a loop' },
    });
  });

  it('lets nothing come back after forget', async () => {
    const worker = testWorker();
    const client = new CoreClient(() => worker.connection);
    const reply = client.plan(jobNamed('a'), quiet);
    await turn();
    client.forget();
    worker.asked[0]?.answer(done(testPlan()));
    expect(await reply).toBe(stale);
  });

  it('passes progress on until the answer is there', async () => {
    const steps: string[] = [];
    let late: (step: string, fraction: number) => void = quiet;
    const connection: CoreConnection = {
      ...testWorker().connection,
      plan: (_, progress) => {
        progress('Offsets', 0.5);
        late = progress;
        return Promise.resolve(done(testPlan()));
      },
    };
    await new CoreClient(() => connection).plan(jobNamed('a'), (step, fraction) =>
      steps.push(`${step} ${fraction}`),
    );
    late('Done', 1);
    expect(steps).toEqual(['Offsets 0.5']);
  });
});
