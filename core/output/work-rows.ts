import type { Block, Plan, StartHole } from '../plan';
import { blockWork, type WorkRun, type WorkStep } from '../wire/block-work';
import { namedHoles } from './named-holes';
import { passName } from './pass-name';

/** One thing that happens at the machine. */
export interface WorkRow {
  readonly kind: 'thread' | 'cut' | 'stop' | 'cut wire';
  readonly cutId: string;
  /** In words: the hole, the pass, or what has to be done. */
  readonly say: string;
  /** Whether someone has to be there. */
  readonly attended: boolean;
}

/** A block's order of work, line by line: where the wire is threaded, what is cut, where the machine stops and why. */
export function workRows(plan: Plan, block: Block): readonly WorkRow[] {
  const names = new Map(namedHoles(plan).map(({ hole, name }) => [hole, name]));
  const work = blockWork(plan, block);
  return work.flatMap((step, number): readonly WorkRow[] => {
    const { cut, start, threading, runs } = step;
    const row = (kind: WorkRow['kind'], say: string, attended: boolean): WorkRow => ({
      kind,
      cutId: cut.id,
      say,
      attended,
    });
    // Up to the first stop the machine runs by itself; without a stop the piece falls in the first pass.
    const firstStop = runs.findIndex(({ stop }) => stop !== null);
    const isAttended = (k: number): boolean => threading.attended && k >= firstStop;
    const isLast = number + 1 === work.length;
    return [
      row('thread', startName(start, names), false),
      ...runs.flatMap((run, k) => [
        ...(run.stop === null ? [] : [row('stop', run.stop, true)]),
        row('cut', runName(step, run), isAttended(k)),
      ]),
      ...(isLast && threading.after === null
        ? []
        : [row('cut wire', threading.after ?? '', threading.after !== null)]),
    ];
  });
}

function startName(start: StartHole | null, names: ReadonlyMap<StartHole, string>): string {
  if (start === null) return 'no start hole';
  return start.kind === 'edge' ? 'edge of the block' : (names.get(start) ?? '');
}

/** "rough", "skim 1, tab", "rough, stretch 2". */
function runName({ cut }: WorkStep, { pass, part, path }: WorkRun): string {
  const index = pass[part].indexOf(path) + 1;
  const isOneOfMany = cut.tabs.length > 1 && pass.tabs.length > 0;
  const of = part === 'tabs' ? ', tab' : isOneOfMany ? ', stretch' : '';
  return `${passName(pass)}${of}${of !== '' && isOneOfMany ? ` ${index}` : ''}`;
}
