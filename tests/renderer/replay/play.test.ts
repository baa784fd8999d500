import { describe, expect, it } from 'vitest';
import { goToLine, goToTime, stepMove, stepPause, togglePlaying } from '../../../renderer/replay/play';
import { keepPlaying, type ClockPage } from '../../../renderer/replay/keep-playing';
import { keepProgramCurrent } from '../../../renderer/replay/keep-program-current';
import { pathHit } from '../../../renderer/replay/path-index';
import { currentLine, type Replay } from '../../../renderer/replay/replay';
import { placeAt } from '../../../renderer/replay/timeline';
import { playCommand, showCutCommand } from '../../../renderer/state/commands/replay-cut';
import { openTestApp, testJob, testPlan, type TestApp } from '../support/test-app';

/** A window on the 20 × 10 blank with its die's program fetched. */
async function replaying(): Promise<TestApp & { readonly replay: () => Replay }> {
  const app = openTestApp();
  keepProgramCurrent(app);
  void showCutCommand.run(app);
  await settled();
  return { ...app, replay: () => app.store.getState().replay };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

function shown({ replay }: { replay: () => Replay }) {
  const { program } = replay();
  if (!program) throw new Error('no program');
  return program;
}

describe('the program that is played', () => {
  it('is fetched when the cut is looked at, and is the text of the first block', async () => {
    const app = await replaying();
    const program = shown(app);
    expect(program.problem).toBeNull();
    expect(program.blockId).toBe(testPlan().blocks[0]?.id);
    expect(program.lines[0]).toBe('%');
    expect(program.lines.at(-1)).toMatch(/M30$/);
    expect(program.wireRadius).toBe(testJob.wire.diameter / 2);
    // The slug of the opening is cut free and gone with the stop after it, or at the end.
    expect(program.loose).toHaveLength(1);
    expect(program.loose[0]?.time).toBeGreaterThan(program.timeline.total / 2);
  });

  it('changes with the block, and begins anew', async () => {
    const app = await replaying();
    goToTime(app, 100);
    app.store.setState(({ replay }) => ({
      replay: { ...replay, blockId: 'blank-1-punch', isPlaying: true },
    }));
    await settled();
    expect(shown(app).blockId).toBe('blank-1-punch');
    expect(app.replay()).toMatchObject({ time: 0, isPlaying: false });
    // A punch stays in its block's waste until it is cut off; nothing falls out of it.
    expect(shown(app).loose).toEqual([]);
  });

  it('comes anew with every plan, and the clock stays', async () => {
    const app = await replaying();
    const before = shown(app);
    goToTime(app, 100);
    app.store.setState({ made: { job: testJob, plan: testPlan() } });
    await settled();
    expect(shown(app)).not.toBe(before);
    expect(app.replay().time).toBe(100);
  });

  it('is a way of looking at the job, and no part of its history', async () => {
    const app = await replaying();
    const { history } = app.store.getState();
    togglePlaying(app);
    goToLine(app, 30);
    stepMove(app, 1);
    expect(app.store.getState().history).toBe(history);
  });
});

describe('the clock', () => {
  it('stays within the program', async () => {
    const app = await replaying();
    goToTime(app, 1e9);
    expect(app.replay().time).toBe(shown(app).timeline.total);
    goToTime(app, -3);
    expect(app.replay().time).toBe(0);
  });

  it('goes from stop to stop, and to both ends', async () => {
    const app = await replaying();
    const { pauses, total } = shown(app).timeline;
    const times = pauses.map(({ time }) => time);
    const visited: number[] = [];
    for (let i = 0; i <= times.length; i++) {
      stepPause(app, 1);
      visited.push(app.replay().time);
    }
    expect(visited).toEqual([...times.filter((time) => time > 0), total].slice(0, visited.length));
    for (let i = 0; i <= times.length; i++) stepPause(app, -1);
    expect(app.replay().time).toBe(0);
  });

  it('goes to the place of a line and keeps the line picked out until it runs on', async () => {
    const app = await replaying();
    const program = shown(app);
    const { line } = program.timeline.moves[5] as { line: number };
    goToLine(app, line);
    expect(app.store.getState().selected).toEqual({ kind: 'line', line });
    expect(currentLine(app.replay())).toBe(line);
    stepMove(app, 1);
    expect(app.store.getState().selected).toBeNull();
    expect(currentLine(app.replay())).toBeGreaterThan(line);
  });

  it('finds the line and the time of a place on the path', async () => {
    const app = await replaying();
    const { timeline } = shown(app);
    for (const time of [0.3, 0.5, 0.7].map((share) => share * timeline.total)) {
      const { at, move } = placeAt(timeline, time);
      if (timeline.moves[move]?.isRapid) continue;
      const hit = pathHit(timeline, at, 0.001);
      const there = placeAt(timeline, hit?.time ?? Number.NaN).at;
      expect(Math.hypot(there.x - at.x, there.y - at.y)).toBeLessThan(0.001);
      expect(hit?.line).toBe(timeline.moves[hit?.move ?? -1]?.line);
    }
    expect(pathHit(timeline, { x: 1000, y: 1000 }, 1)).toBeNull();
  });

  it('cannot be played where the picture shows something else', async () => {
    const app = await replaying();
    expect(playCommand.enabled(app.store.getState())).toBe(true);
    void showCutCommand.run(app);
    expect(playCommand.enabled(app.store.getState())).toBe(false);
  });
});

describe('playing', () => {
  /** A page whose clock the test turns. */
  function testPage(reducedMotion: boolean) {
    let now = 0;
    let frame: ((time: number) => void) | null = null;
    let timer: (() => void) | null = null;
    const page = {
      requestAnimationFrame: (run: (time: number) => void) => ((frame = run), 1),
      cancelAnimationFrame: () => (frame = null),
      setTimeout: (run: () => void) => ((timer = run), 1),
      clearTimeout: () => (timer = null),
      matchMedia: () => ({ matches: reducedMotion }),
      performance: { now: () => now },
    } as unknown as ClockPage;
    const pass = (milliseconds: number) => {
      now += milliseconds;
      const [run, wait] = [frame, timer];
      [frame, timer] = [null, null];
      run?.(now);
      wait?.();
    };
    return { page, pass, isWaiting: () => frame !== null || timer !== null };
  }

  it.each([false, true])('runs at its pace until the end (less motion asked for: %s)', async (calm) => {
    const app = await replaying();
    const { page, pass, isWaiting } = testPage(calm);
    keepPlaying(app, page);
    const { total } = shown(app).timeline;
    app.store.setState(({ replay }) => ({ replay: { ...replay, pace: 10 } }));
    expect(isWaiting()).toBe(false);
    togglePlaying(app);
    pass(500);
    expect(app.replay().time).toBeCloseTo(5, 9);
    pass(1000);
    expect(app.replay().time).toBeCloseTo(15, 9);
    togglePlaying(app);
    pass(1000);
    expect(app.replay().time).toBeCloseTo(15, 9);
    expect(isWaiting()).toBe(false);
    togglePlaying(app);
    pass(total * 100);
    expect(app.replay()).toMatchObject({ time: total, isPlaying: false });
    expect(isWaiting()).toBe(false);
    // From the end it begins anew.
    togglePlaying(app);
    expect(app.replay()).toMatchObject({ time: 0, isPlaying: true });
  });
});
