import type { SetupSettings } from '../cut-settings';
import type { Cut, PassRuns } from '../plan';

/** One run of a cut before it has a path: which part of the loop, and which way along it. */
export interface OrderedRun {
  /** 0 the rough cut. */
  readonly pass: number;
  readonly part: keyof PassRuns;
  /** Which stretch or tab; a run all round counts as stretch 0. */
  readonly index: number;
  readonly isRound: boolean;
  /** In the job's direction, or against it. */
  readonly forwards: boolean;
  readonly stop: string | null;
}

export interface OrderedThreading {
  readonly start: number;
  readonly attended: boolean;
  readonly runs: readonly OrderedRun[];
  readonly after: string | null;
}

export interface OrderQuery {
  readonly tabs: number;
  readonly passes: number;
  readonly slug: Cut['slug'];
  readonly sequence: SetupSettings['sequence'];
}

/**
 * The order of work of one cut.
 *
 * Kept: every pass but the tabs, then, after a stop to hold the piece, the tabs: cut off and skimmed. Dropped: roughed
 * but for the tabs, stopped, cut off, the slug taken out, then the skims all round, without a mark where the tab was.
 * The wire runs there and back, never through uncut stock between passes; after a new threading it begins at the
 * stretch's begin, beside its hole. A single tab follows from where the wire is; where the roughing of all parts goes
 * first, or several tabs lie apart, the wire is threaded for each.
 */
export function orderOfWork(query: OrderQuery): readonly OrderedThreading[] {
  if (query.tabs === 0) return [allRound(0, query.passes, true)];
  return query.slug === 'kept' ? keptOrder(query) : droppedOrder(query);
}

function keptOrder({ tabs, passes, sequence }: OrderQuery): readonly OrderedThreading[] {
  const say = 'secure the piece before the tab is cut';
  const after = 'take the piece out';
  if (tabs === 1 && sequence === 'part by part') {
    const runs = [
      ...thereAndBack('main', 0, passes, true),
      ...stopped(thereAndBack('tabs', 0, passes, passes % 2 === 1), say),
    ];
    return [{ start: 0, attended: true, runs, after }];
  }
  return [
    ...numbers(tabs).map((i) => unattended(i, thereAndBack('main', i, passes, true))),
    ...numbers(tabs).map((i) => tabThreading(i, tabs, thereAndBack('tabs', i, passes, false), say, after)),
  ];
}

function droppedOrder({ tabs, passes, sequence }: OrderQuery): readonly OrderedThreading[] {
  const say = 'secure the slug before the tab is cut';
  const after = 'take the slug out';
  const skims = passes > 1 ? [allRound(1, passes, false)] : [];
  if (tabs === 1 && sequence === 'part by part') {
    const runs = [...thereAndBack('main', 0, 1, true), ...stopped(thereAndBack('tabs', 0, 1, true), say)];
    return [{ start: 0, attended: true, runs, after }, ...skims];
  }
  return [
    ...numbers(tabs).map((i) => unattended(i, thereAndBack('main', i, 1, true))),
    ...numbers(tabs).map((i) => tabThreading(i, tabs, thereAndBack('tabs', i, 1, false), say, after)),
    ...skims,
  ];
}

const unattended = (start: number, runs: readonly OrderedRun[]): OrderedThreading => ({
  start,
  attended: false,
  runs,
  after: null,
});

/** A tab is cut from the hole of the stretch behind it, where the lead-in lies. */
const tabThreading = (
  tab: number,
  tabs: number,
  runs: readonly OrderedRun[],
  say: string,
  after: string,
): OrderedThreading => ({
  start: (tab + 1) % tabs,
  attended: true,
  runs: stopped(runs, say),
  after: tab === tabs - 1 ? after : null,
});

/** Passes that run all round, from one on. */
function allRound(first: number, passes: number, piecesComeLoose: boolean): OrderedThreading {
  const runs = numbers(passes - first).map((k) => ({
    pass: first + k,
    part: 'main' as const,
    index: 0,
    isRound: true,
    forwards: k % 2 === 0,
    stop: null,
  }));
  return { start: 0, attended: piecesComeLoose, runs, after: piecesComeLoose ? 'take the piece out' : null };
}

/** One part of the loop by the first passes, each the other way than the one before. */
const thereAndBack = (
  part: OrderedRun['part'],
  index: number,
  passes: number,
  forwards: boolean,
): readonly OrderedRun[] =>
  numbers(passes).map((pass) => ({
    pass,
    part,
    index,
    isRound: false,
    forwards: forwards === (pass % 2 === 0),
    stop: null,
  }));

const stopped = (runs: readonly OrderedRun[], stop: string): readonly OrderedRun[] =>
  runs.map((run, k) => (k === 0 ? { ...run, stop } : run));

const numbers = (count: number): readonly number[] => Array.from({ length: Math.max(0, count) }, (_, i) => i);
