import type { Band } from './band';
import type { ClearanceMap } from './clearance-map';
import type { MapStretch } from './clearance-bands';
import type { ClearancePlace } from './clearance-place';

/** A stretch of the punch with too little or too much clearance, whatever the bands in it. */
export interface OutsidePlace {
  /** The worst band in it. */
  readonly band: Exclude<Band, 'within'>;
  readonly worst: ClearancePlace;
  /** Where it begins, and its length, mm; it may run over the end of its loop. */
  readonly from: number;
  readonly length: number;
}

/** The places outside the tolerance, worst first: neighbouring stretches on the same side of it are one place. */
export function outsidePlaces(map: ClearanceMap): readonly OutsidePlace[] {
  const places = map.loops.slice(0, -1).flatMap((start, k) => {
    const end = map.loops[k + 1] ?? map.perimeter;
    const inLoop = map.stretches.filter(({ from }) => from >= start && from < end);
    return joinedSeam(runsOf(inLoop)).map((run) => placeOf(run, map));
  });
  const off = ({ worst }: OutsidePlace) => Math.abs(worst.clearance - map.wanted);
  return places.sort((a, b) => off(b) - off(a));
}

const sideOf = ({ band }: MapStretch): 'low' | 'high' | null =>
  band === 'within' ? null : band === 'wide' ? 'high' : 'low';

function runsOf(stretches: readonly MapStretch[]): readonly (readonly MapStretch[])[] {
  const runs: MapStretch[][] = [];
  stretches.forEach((stretch, k) => {
    const before = stretches[k - 1];
    if (before && sideOf(before) === sideOf(stretch)) runs.at(-1)?.push(stretch);
    else runs.push([stretch]);
  });
  return runs;
}

/** The loop's end meets its beginning. Runs within the tolerance are left out. */
function joinedSeam(runs: readonly (readonly MapStretch[])[]): readonly (readonly MapStretch[])[] {
  const [first, last] = [runs[0], runs.at(-1)];
  const [start, end] = [first?.[0], last?.[0]];
  const joins = first && last && first !== last && start && end && sideOf(start) === sideOf(end);
  const whole = joins ? [...runs.slice(1, -1), [...last, ...first]] : runs;
  return whole.filter(([one]) => one && sideOf(one) !== null);
}

function placeOf(run: readonly MapStretch[], { wanted }: ClearanceMap): OutsidePlace {
  const worst = run.reduce((a, b) =>
    Math.abs(b.worst.clearance - wanted) > Math.abs(a.worst.clearance - wanted) ? b : a,
  );
  return {
    band: worst.band as OutsidePlace['band'],
    worst: worst.worst,
    from: run[0]?.from ?? 0,
    length: run.reduce((sum, { from, to }) => sum + to - from, 0),
  };
}
