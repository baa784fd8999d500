import type { ReliefSettings } from '../die/relief-rules';
import { exitEnlargement } from '../die/regrinds';
import type { Point, Region } from '../geometry/contour';
import { nearestPosition } from '../geometry/loop-position';
import { offsetRegion } from '../geometry/offset-region';
import type { Cut, CutRun, PassPath, Threading } from '../plan';
import { radians } from '../units';
import { asCutRegion, pathLoops } from './as-cut';
import type { CutLayout } from './cut-layout';
import { cutRun, overlapsOf } from './cut-run';
import { chordedLoop, counterClockwise, leaningRun } from './leaning-run';
import { contourAt } from './taper-chain';
import { leanOf, type ChordWishes } from './taper-chords';
import { taperedLoop, type TaperLoop } from './taper-loop';
import * as portable from '../geometry/portable-math';

/** A relief in numbers: what of the die is straight, how steep the rest is and how it is cut. mm and radians. */
export interface ReliefPlan {
  readonly kind: 'one tapered cut' | 'land and relief';
  readonly land: number;
  readonly height: number;
  readonly angle: number;
  readonly corners: ReliefSettings['corners'];
  readonly chords: ChordWishes;
}

/** What the job's relief means for a block of a height; null where there is none. */
export function reliefPlan(settings: ReliefSettings, height: number): ReliefPlan | null {
  const { kind, corners, angleDeg } = settings;
  if (kind === 'none') return null;
  return {
    kind,
    land: kind === 'land and relief' ? settings.land : 0,
    height,
    angle: radians(angleDeg),
    corners,
    chords: { tolerance: settings.chordTolerance, circular: settings.arcs === 'circular' },
  };
}

/** How much wider the opening is at the exit face than at the end of the land, on each side, mm. */
export const growthOf = ({ height, land, angle }: ReliefPlan): number =>
  exitEnlargement(height, { land, relief: angle });

/** Square to a leaning wire is less than level: what is `distance` from a wall at the angle is so far in the plane. */
export const levelDistance = (distance: number, angle: number): number => distance / portable.cos(angle);

/** What is cut with a leaning wire, or the place that it can't get round. */
export type LeaningCuts =
  | {
      readonly ok: true;
      readonly cuts: readonly Cut[];
      /** The finishing path of every opening, as its programs have it. */
      readonly loops: readonly TaperLoop[];
    }
  | { readonly ok: false; readonly at: Point };

/** Cuts whose every pass leans: the opening tapered from its cutting edge. */
export function taperedCuts(cuts: readonly Cut[], relief: ReliefPlan): LeaningCuts {
  const loops: TaperLoop[] = [];
  const leaning: Cut[] = [];
  for (const cut of cuts) {
    const passes: PassPath[] = [];
    for (const pass of cut.passes) {
      const taper = taperedLoop(counterClockwise(pass.loop), growthOf(relief), relief.corners);
      if (!taper.ok) return taper;
      const lean = (run: CutRun): CutRun => leaningRun(run, taper.loop, relief.chords);
      const chorded = chordedLoop(taper.loop, relief.chords);
      passes.push({
        ...pass,
        loop: contourAt(chorded, 0),
        main: pass.main.map(lean),
        tabs: pass.tabs.map(lean),
        contour: null,
        lean: 'taper',
      });
      if (pass === cut.passes.at(-1)) loops.push(chorded);
    }
    leaning.push({ ...cut, passes });
  }
  return { ok: true, cuts: leaning, loops };
}

export interface ReliefQuery {
  readonly designed: Region;
  /** The upright cuts and how they lie, largest first. */
  readonly upright: readonly { readonly cut: Cut; readonly layout: CutLayout }[];
  readonly relief: ReliefPlan;
  /** Half the wire and the gap of the pass, mm; its feed, mm/min. */
  readonly cuttingRadius: number;
  readonly feed: number;
}

/**
 * Cuts with the relief as a last pass of its own, threaded anew through the open die: one pass all round with the
 * rough cut's gap and feed, since nothing fits against it. It meets the land at its lower end and leaves it alone
 * above, where the leaning wire is in the open.
 */
export function reliefCuts({ designed, upright, relief, cuttingRadius, feed }: ReliefQuery): LeaningCuts {
  const offset = levelDistance(cuttingRadius, relief.angle);
  const paths = pathLoops(designed, 'die', offset);
  const loops: TaperLoop[] = [];
  const cuts: Cut[] = [];
  for (const { cut, layout } of upright) {
    const path = pathOf(cut, paths);
    if (!path) {
      cuts.push(cut);
      continue;
    }
    const taper = taperedLoop(path, growthOf(relief), relief.corners);
    if (!taper.ok) return taper;
    const chorded = chordedLoop(taper.loop, relief.chords);
    const order = {
      pass: cut.passes.length,
      part: 'main',
      index: 0,
      isRound: true,
      forwards: true,
      stop: null,
    } as const;
    const on = { loop: path, waste: cut.waste, outer: 0 };
    const start = cut.starts[0] ?? null;
    const run = leaningRun(
      cutRun(order, layout, on, overlapsOf(order, layout), start),
      taper.loop,
      relief.chords,
    );
    loops.push(chorded);
    cuts.push(withRelief(cut, { offset, feed, loop: contourAt(chorded, 0), run }));
  }
  return { ok: true, cuts, loops };
}

function withRelief(
  cut: Cut,
  { offset, feed, loop, run }: Pick<PassPath, 'offset' | 'feed' | 'loop'> & { readonly run: CutRun },
): Cut {
  const number = cut.passes.length;
  const pass: PassPath = {
    pass: number,
    offset,
    feed,
    loop,
    main: [run],
    tabs: [],
    contour: null,
    lean: 'relief',
  };
  const threading: Threading = {
    start: 0,
    attended: false,
    runs: [{ pass: number, part: 'main', index: 0, stop: null }],
    after: null,
  };
  return { ...cut, passes: [...cut.passes, pass], threadings: [...cut.threadings, threading] };
}

/** The relief's path through the opening that a cut has made: the one nearest to the cut's own finishing path. */
function pathOf(cut: Cut, paths: Region): Region[number] | null {
  const at = cut.passes.at(-1)?.loop[0];
  if (!at) return null;
  const away = (loop: Region[number]): number => nearestPosition(loop, at).distance;
  return paths.reduce<Region[number] | null>(
    (best, loop) => (best && away(best) <= away(loop) ? best : loop),
    null,
  );
}

/**
 * The opening as a relief is to make it, from the end of the land down: what the wire leaves there, wider by
 * depth·tan(angle), with corners by the same rule. Null where a corner of constant radius has no room.
 */
export function wallsOf(
  designed: Region,
  cuttingRadius: number,
  relief: ReliefPlan,
): ((share: number) => Region) | null {
  const land = asCutRegion(designed, 'die', levelDistance(cuttingRadius, relief.angle));
  const growth = growthOf(relief);
  if (relief.corners === 'conical') {
    return (share) => offsetRegion(land, growth * share);
  }
  const walls = land.map((loop) => taperedLoop(loop, growth, relief.corners));
  if (!walls.every((wall) => wall.ok)) return null;
  const loops = walls.map(({ loop }) => loop);
  return (share) => loops.map((loop) => contourAt(loop, share));
}

/** Where the wire leans most, and by how much, radians. */
export function greatestLean(
  loops: readonly TaperLoop[],
  height: number,
): { readonly angle: number; readonly at: Point } {
  let [run, at]: [number, Point] = [0, { x: 0, y: 0 }];
  for (const pair of loops.flat()) {
    const lean = leanOf(pair);
    const own = Math.hypot(lean.x, lean.y);
    if (own > run) [run, at] = [own, { x: pair.lower.x, y: pair.lower.y }];
  }
  return { angle: portable.atan(run / height), at };
}
