import type { Contour } from '../geometry/contour';
import type { Cut, CutRun, PassPath, StartHole, Threading } from '../plan';
import type { CutLayout } from './cut-layout';
import { cutRun, overlapsOf } from './cut-run';
import type { OrderedRun, OrderedThreading } from './order-of-work';
import { isArcLead, programmedRun } from './programmed-run';

/** One pass's wire-centre loop and the contour that gives it when a control offsets by itself. */
export interface PassLoops {
  readonly pass: number;
  readonly offset: number;
  readonly feed: number;
  readonly loop: Contour;
  /** Null where there is none. */
  readonly contour: Contour | null;
}

/** The runs of every pass of a cut as it is laid out, in the order of work. */
export function buildCut(
  named: Pick<Cut, 'id' | 'waste' | 'slug'>,
  loops: readonly PassLoops[],
  layout: CutLayout,
  order: readonly OrderedThreading[],
): Cut {
  const starts = layout.stretches.map(({ start }) => start);
  const runs = order.flatMap(({ start, runs: ordered }, threading) =>
    ordered.map((run, k) => ({ run, threading, start: k === 0 ? (starts[start] ?? null) : null })),
  );
  const ofPass = loops.map((_, pass) => runs.filter(({ run }) => run.pass === pass));
  return {
    ...named,
    starts,
    tabs: layout.tabs,
    passes: loops.map((pass, k) => passPath(pass, named.waste, layout, ofPass[k] ?? [])),
    threadings: order.map((threading, number): Threading => {
      const { start, attended, after } = threading;
      const own = runs.filter((one) => one.threading === number);
      return {
        start,
        attended,
        after,
        runs: own.map(({ run }) => ({
          pass: (loops[run.pass] as PassLoops).pass,
          part: run.part,
          index: partOf(ofPass[run.pass] ?? [], run.part).findIndex((one) => one.run === run),
          stop: run.stop,
        })),
      };
    }),
  };
}

interface StartedRun {
  readonly run: OrderedRun;
  readonly start: StartHole | null;
}

const partOf = <R extends StartedRun>(runs: readonly R[], part: OrderedRun['part']): readonly R[] =>
  runs.filter(({ run }) => run.part === part);

function passPath(
  { contour, ...pass }: PassLoops,
  waste: Cut['waste'],
  layout: CutLayout,
  runs: readonly StartedRun[],
): PassPath {
  const own = (part: OrderedRun['part']): readonly CutRun[] =>
    partOf(runs, part).map(({ run, start }) =>
      cutRun(run, layout, { loop: pass.loop, waste, outer: 0 }, overlapsOf(run, layout), start),
    );
  const programmed = (part: OrderedRun['part']): readonly (CutRun | null)[] =>
    partOf(runs, part).map(({ run, start }) => {
      if (!contour) return null;
      const overlaps = overlapsOf(run, layout);
      const on = { loop: contour, waste, outer: pass.offset };
      const whole = cutRun(run, layout, on, overlaps, start);
      // An arc ends where the overlap begins; a straight lead is laid anew to where the run has to begin.
      if (isArcLead(whole.leadIn)) return programmedRun(whole, contour, run.forwards, pass.offset, 0);
      const first = run.forwards ? 'begin' : 'end';
      const bare = cutRun(run, layout, on, { ...overlaps, [first]: 0 }, start);
      return programmedRun(bare, contour, run.forwards, pass.offset, overlaps[first]);
    });
  const [main, tabs] = [programmed('main'), programmed('tabs')];
  return {
    ...pass,
    main: own('main'),
    tabs: own('tabs'),
    contour: isWhole(main) && isWhole(tabs) ? { main, tabs } : null,
  };
}

const isWhole = (runs: readonly (CutRun | null)[]): runs is readonly CutRun[] =>
  runs.every((run) => run !== null);
