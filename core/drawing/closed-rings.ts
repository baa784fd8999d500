import { tolerance } from '../geometry/tolerance';
import { canonicalRings, canonicalStrands, distinctRings, distinctStrands } from './canonical-strands';
import { chainStrands, type ChainedStrands, type DirectedStrand, type OpenRun } from './chain-strands';
import { coveredBy } from './covered-by';
import { cutAtContacts } from './cut-at-contacts';
import { faceRings, middleOf } from './face-rings';
import { isAllDoubled } from './lies-on';
import { limits } from './limits';
import type { RepairLog } from './repair-log';
import { ringOf, ringOfClosed, type Ring } from './ring';
import { wayOut } from './smooth-pairs';
import type { Strand } from './strand';
import type { UnusedCount } from './unused-count';
import * as portable from '../geometry/portable-math';

export interface RingsAndRest {
  readonly rings: readonly Ring[];
  readonly open: readonly OpenRun[];
}

/**
 * The closed rings of strands, whatever is left open, and in the log what was put right on the way: pieces drawn twice
 * are taken once; what stays open is cut where an end lies on it (T-joints, pieces that partly overlap) and chained
 * again; an edge drawn for two outlines belongs to both. Null where there are more rings than are read.
 */
export function closedRings(
  strands: readonly Strand[],
  gapTolerance: number,
  log: RepairLog,
  unused: UnusedCount,
): RingsAndRest | null {
  const gap = log.isOn('gap') ? gapTolerance : tolerance.samePoint;
  const leaveOut = ({ layer, kind }: Strand, reason: string): void => unused.add(layer, kind, reason);
  const asRing = (run: readonly DirectedStrand[]): Ring => ringOf(run, !log.isOn('tiny step'));
  const closed = strands.filter((strand) => strand.closed);
  const loose = chainLoose(strands, gap, log, unused);
  if (closed.length + loose.rings.length > limits.contours) return null;
  const drawn = closed.map((strand) => ringOfClosed(strand, !log.isOn('tiny step')));
  const all = [...drawn, ...loose.rings.map(asRing)];
  const solid = all.filter((ring) => {
    const isSolid = holdsArea(ring);
    if (!isSolid) for (const strand of ring.strands) leaveOut(strand, 'closed, but holds no area');
    return isSolid;
  });
  const sorted = canonicalRings(solid);
  const distinct = log.isOn('duplicate') ? distinctRings(sorted) : { kept: sorted, dropped: [] };
  for (const { piece } of distinct.dropped) {
    for (const strand of piece.strands) leaveOut(strand, 'duplicate');
    log.add('duplicate', middleOf({ chain: piece.contour }), piece.length);
  }
  const rings = distinct.kept.items;
  for (const { gaps, steps } of rings) {
    for (const { at, size } of gaps) log.add('gap', at, size);
    for (const { at, size } of steps) log.add('tiny step', at, size);
  }
  if (loose.open.length === 0) return { rings, open: [] };
  const isCovered = coveredBy(rings);
  const used = new Set<Strand>();
  for (const ring of rings) for (const { cutFrom } of ring.strands) if (cutFrom) used.add(cutFrom);
  const open: OpenRun[] = [];
  for (const run of loose.open) {
    const covered = log.isOn('duplicate') && run.strands.every(isCovered);
    // What a T-joint cuts off within the gap tolerance is the overshoot that was put right.
    const isTrimmed = run.strands.every(({ cutFrom, length }) => cutFrom !== null && length <= gap);
    if (!covered && !isTrimmed) open.push(run);
    const reason = covered ? 'duplicate' : run.isBranch ? 'branch off a contour' : 'open chain';
    for (const strand of run.strands) {
      if (covered) log.add('duplicate', middleOf(strand), strand.length);
      if (!strand.cutFrom || !used.has(strand.cutFrom)) leaveOut(strand, reason);
    }
  }
  return { rings, open };
}

function chainLoose(
  strands: readonly Strand[],
  gap: number,
  log: RepairLog,
  unused: UnusedCount,
): Pick<ChainedStrands, 'rings' | 'open'> {
  const all = canonicalStrands(strands.filter(({ closed }) => !closed));
  const distinct = log.isOn('duplicate') ? distinctStrands(all) : { kept: all, dropped: [] };
  const doubled = new Set<Strand>();
  for (const { piece, by } of distinct.dropped) {
    doubled.add(by);
    unused.add(piece.layer, piece.kind, 'duplicate');
    log.add('duplicate', middleOf(piece), piece.length);
  }
  const chained = chainStrands(distinct.kept, gap);
  const cut = chainedAgain(distinct.kept.items, chained, gap, log, doubled);
  return log.isOn('shared edge') ? withSharedEdges(cut.strands, cut.chained, doubled, log) : cut.chained;
}

interface Cut {
  readonly strands: readonly Strand[];
  readonly chained: ChainedStrands;
}

/** Once more, after what stayed open was cut where an end lies on it. */
function chainedAgain(
  strands: readonly Strand[],
  chained: ChainedStrands,
  gap: number,
  log: RepairLog,
  doubled: Set<Strand>,
): Cut {
  const before = { strands, chained };
  if (chained.open.length === 0 || (!log.isOn('T-joint') && !log.isOn('overlap'))) return before;
  const isCovered = coveredBy(chained.rings.map((ring) => ringOf(ring)));
  const loose = new Set(chained.open.flatMap((run) => run.strands).filter((strand) => !isCovered(strand)));
  if (loose.size === 0) return before;
  const pieces = cutAtContacts(strands, loose, gap);
  if (!pieces) return before;
  const distinct = distinctStrands(canonicalStrands(pieces));
  if (!log.isOn(distinct.dropped.length > 0 ? 'overlap' : 'T-joint')) return before;
  const again = chainStrands(distinct.kept, gap);
  // What was closed stays closed: pieces that only divide an outline must not take it apart.
  if (ringLength(again) < ringLength(chained)) return before;
  for (const { piece, by } of distinct.dropped) {
    doubled.add(by);
    log.add('overlap', middleOf(piece), piece.length);
  }
  for (const ring of again.rings) logJoints(ring, log);
  return { strands: distinct.kept.items, chained: again };
}

const ringLength = ({ rings }: ChainedStrands): number => {
  let length = 0;
  for (const ring of rings) for (const { strand } of ring) length += strand.length;
  return length;
};

/** Where a ring leaves a strand that it was cut from for another one. */
function logJoints(ring: readonly DirectedStrand[], log: RepairLog): void {
  ring.forEach((here, i) => {
    const next = ring[(i + 1) % ring.length] as DirectedStrand;
    if (here.strand.cutFrom === next.strand.cutFrom) return;
    const end = endOf(here);
    const start = endOf({ ...next, forward: !next.forward });
    const isCutEnd = (strand: Strand, { x, y }: { x: number; y: number }): boolean =>
      strand.cutFrom !== null &&
      [strand.cutFrom.chain[0], strand.cutFrom.chain[strand.cutFrom.chain.length - 1]].every(
        (own) => own?.x !== x || own.y !== y,
      );
    const isCut = isCutEnd(here.strand, end) || isCutEnd(next.strand, start);
    if (isCut && turnBetween(here, next) > straightOn)
      log.add('T-joint', end, Math.hypot(start.x - end.x, start.y - end.y));
  });
}

/** By how much the way turns from one strand into the next, radians. */
function turnBetween(here: DirectedStrand, next: DirectedStrand): number {
  const pair = [here.strand, next.strand];
  const [a, b] = [wayOut(pair, here.forward ? 1 : 0), wayOut(pair, next.forward ? 2 : 3)];
  return Math.PI - Math.abs(portable.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y));
}

/** Pieces that overlap run on in one direction; a T-joint turns. */
const straightOn = 2 ** -16;

function endOf({ strand, forward }: DirectedStrand): { x: number; y: number } {
  const { x, y } = strand.chain[forward ? strand.chain.length - 1 : 0] as { x: number; y: number };
  return { x, y };
}

/** Where an edge that was drawn twice leads off a ring, the areas on both its sides become rings. */
function withSharedEdges(
  strands: readonly Strand[],
  chained: ChainedStrands,
  doubled: ReadonlySet<Strand>,
  log: RepairLog,
): Pick<ChainedStrands, 'rings' | 'open'> {
  const branches = doubled.size === 0 ? [] : chained.open.filter(({ isBranch }) => isBranch);
  if (branches.length === 0) return chained;
  const together = componentOf(strands, chained.nodes, new Set(branches.flatMap((run) => run.strands)));
  if (![...together].some((strand) => doubled.has(strand))) return chained;
  const numbers = [...strands.keys()].filter((i) => together.has(strands[i] as Strand));
  const faces = faceRings(
    numbers.map((i) => strands[i] as Strand),
    numbers.flatMap((i) => [chained.nodes[2 * i] as number, chained.nodes[2 * i + 1] as number]),
    (strand) => doubled.has(strand),
  );
  if (faces.shared.length === 0) return chained;
  for (const strand of faces.shared) log.add('shared edge', middleOf(strand), strand.length);
  const left = new Set(faces.left);
  const open = chained.open
    .map((run) => ({
      ...run,
      strands: run.strands.filter((strand) => !together.has(strand) || left.has(strand)),
    }))
    .filter((run) => run.strands.length > 0);
  const rings = chained.rings.filter((ring) => !ring.some(({ strand }) => together.has(strand)));
  return { rings: [...rings, ...faces.rings], open };
}

/** All strands that hang together with some. */
function componentOf(
  strands: readonly Strand[],
  nodes: Int32Array,
  seeds: ReadonlySet<Strand>,
): ReadonlySet<Strand> {
  const at = new Map<number, number[]>();
  nodes.forEach((node, end) => {
    const ends = at.get(node);
    if (ends) ends.push(end);
    else at.set(node, [end]);
  });
  const found = new Set<Strand>();
  const queue = [...strands.keys()].filter((i) => seeds.has(strands[i] as Strand));
  for (let i = queue.pop(); i !== undefined; i = queue.pop()) {
    const strand = strands[i] as Strand;
    if (found.has(strand)) continue;
    found.add(strand);
    for (const end of [2 * i, 2 * i + 1])
      for (const other of at.get(nodes[end] as number) ?? []) queue.push(other >> 1);
  }
  return found;
}

/**
 * A line drawn there and back closes too: every piece of it lies on another. A figure of eight may hold as much
 * clockwise as counter-clockwise and is a contour all the same, one that crosses itself.
 */
function holdsArea({ contour, area, length }: Ring): boolean {
  if (contour.length < 2) return false;
  if (area > (length / 2) * tolerance.duplicate) return true;
  return !isAllDoubled(contour, tolerance.duplicate);
}
