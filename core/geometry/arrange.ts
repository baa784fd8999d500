import { crossSegments, crossingRoom, endAt } from './cross-segments';
import { MeetingNodes } from './meeting-nodes';
import { alongSegment } from './along-segment';
import { withRoom, int, num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';
import * as portable from './portable-math';

/**
 * Segments cut at every place where they meet, gathered into runs. A run is a longest string of pieces with nothing
 * else meeting it on the way, so whatever is true of one of its points (inside, outside, too near) is true of all.
 */
export interface Arrangement {
  /** The pieces, each on its element's carrier. */
  readonly pieces: SegmentTable;
  /** The uncut elements, the one each piece was cut from, and how far along it the piece's middle lies. */
  readonly elements: SegmentTable;
  readonly elementOf: Int32Array;
  readonly middleAlong: Float64Array;
  readonly runCount: number;
  /** Pieces of run r are `pieceOrder[runStart[r]] … pieceOrder[runStart[r + 1] - 1]`. */
  readonly runStart: Int32Array;
  readonly pieceOrder: Int32Array;
  /** Node at each run's start and end; -1 for a ring that meets nothing, and equal numbers mean the same point. */
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
}

/** Calls back with every pair of elements whose boxes touch. */
export type PairVisitor = (visit: (i: number, j: number) => void) => void;

/**
 * Cuts the elements of a table at all their meeting points. `table.next` links elements that share an end; points
 * within `samePoint` are one.
 * O(n + k log k) for k meeting points, given the pairs.
 */
export function arrange(
  table: SegmentTable,
  eachPair: PairVisitor,
  samePoint: number = tolerance.samePoint,
): Arrangement {
  const nodes = new MeetingNodes(table, samePoint);
  const out = new Float64Array(crossingRoom);
  const splits = new Splits();
  eachPair((i, j) => {
    const count = crossSegments(table, i, table, j, out, samePoint);
    for (let k = 0; k < count; k++) {
      const x = num(out, 2 * k);
      const y = num(out, 2 * k + 1);
      const endI = endAt(table, i, x, y, samePoint);
      const endJ = endAt(table, j, x, y, samePoint);
      if (endI < 0 && endJ < 0) {
        const node = nodes.addCrossing(x, y);
        splits.add(i, alongSegment(table, i, x, y), node);
        splits.add(j, alongSegment(table, j, x, y), node);
      } else if (endI < 0) {
        const node = nodes.junctionAtEnd(j, endJ === 1, x, y);
        splits.add(i, alongSegment(table, i, x, y), node);
      } else if (endJ < 0) {
        const node = nodes.junctionAtEnd(i, endI === 1, x, y);
        splits.add(j, alongSegment(table, j, x, y), node);
      } else {
        nodes.joinEnds(i, endI === 1, j, endJ === 1, x, y);
      }
    }
  });
  nodes.mergeNear();
  return gatherRuns(cutPieces(table, nodes, splits), table, nodes);
}

/** Places at which elements are to be cut, and their order along each element. */
class Splits {
  readonly element: number[] = [];
  readonly along: number[] = [];
  readonly node: number[] = [];

  add(element: number, along: number, node: number): void {
    this.element.push(element);
    this.along.push(along);
    this.node.push(node);
  }

  /** Indices of all splits by element, then along it. */
  sorted(): number[] {
    const order = this.element.map((_, k) => k);
    return order.sort(
      (a, b) =>
        (this.element[a] as number) - (this.element[b] as number) ||
        (this.along[a] as number) - (this.along[b] as number),
    );
  }
}

/**
 * The pieces: a whole element is a piece as it stands, at the same index of the same columns, since most elements are
 * met by nothing; the pieces of a cut element follow behind all elements.
 */
interface Pieces {
  readonly table: SegmentTable;
  readonly elementOf: Int32Array;
  readonly middleAlong: Float64Array;
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
  /** The next piece of the same element; -1 after its last. */
  readonly nextOfElement: Int32Array;
  /** First piece of each element; -1 where all its pieces are point-like. */
  readonly first: Int32Array;
}

function cutPieces(table: SegmentTable, nodes: MeetingNodes, splits: Splits): Pieces {
  const order = splits.sorted();
  const room = table.count + roomForCuts(table, nodes, splits);
  const pieces: Pieces = {
    table: withRoom(table, room),
    elementOf: new Int32Array(room),
    middleAlong: new Float64Array(room),
    startNode: new Int32Array(room),
    endNode: new Int32Array(room),
    nextOfElement: new Int32Array(room).fill(-1),
    first: new Int32Array(table.count),
  };
  let k = 0;
  for (let i = 0; i < table.count; i++) {
    const isCut = k < order.length && splits.element[order[k] as number] === i;
    const from = nodes.end(i, false);
    const to = nodes.end(i, true);
    if (!isCut && !nodes.isJunction(from) && !nodes.isJunction(to)) {
      setPiece(pieces, i, i, 1 / 2, nodes.root(from), nodes.root(to));
      pieces.first[i] = i;
      continue;
    }
    const cutter = { element: i, fromNode: from, fromAlong: 0, last: -1 };
    pieces.first[i] = -1;
    for (; k < order.length && splits.element[order[k] as number] === i; k++) {
      const at = order[k] as number;
      addPiece(table, nodes, cutter, splits.node[at] as number, splits.along[at] as number, pieces);
    }
    addPiece(table, nodes, cutter, to, 1, pieces);
  }
  return pieces;
}

/** How many pieces follow behind the elements at most: one more than its cuts for every element that is met. */
function roomForCuts(table: SegmentTable, nodes: MeetingNodes, { element }: Splits): number {
  let room = 2 * element.length;
  for (let i = 0; i < table.count; i++) {
    if (nodes.isJunction(nodes.end(i, false)) || nodes.isJunction(nodes.end(i, true))) room++;
  }
  return room;
}

/** How far the cutting of an element has come. */
interface Cutter {
  readonly element: number;
  fromNode: number;
  fromAlong: number;
  /** The last piece made; -1 before the first. */
  last: number;
}

/** Adds the element's next piece, up to a node; one between a node and itself is point-like (arcs are at most half turns). */
function addPiece(
  elements: SegmentTable,
  nodes: MeetingNodes,
  cutter: Cutter,
  toNode: number,
  toAlong: number,
  pieces: Pieces,
): void {
  const i = cutter.element;
  const from = nodes.root(cutter.fromNode);
  const to = nodes.root(toNode);
  if (from === to) return;
  const { table } = pieces;
  const piece = table.count++;
  table.x0[piece] = nodes.isJunction(from) ? nodes.placeX(from) : num(elements.x0, i);
  table.y0[piece] = nodes.isJunction(from) ? nodes.placeY(from) : num(elements.y0, i);
  table.x1[piece] = nodes.isJunction(to) ? nodes.placeX(to) : num(elements.x1, i);
  table.y1[piece] = nodes.isJunction(to) ? nodes.placeY(to) : num(elements.y1, i);
  const bulge = num(elements.bulge, i);
  if (bulge !== 0) {
    const part = toAlong - cutter.fromAlong;
    table.bulge[piece] = part === 1 ? bulge : portable.tan(portable.atan(bulge) * part);
    table.cx[piece] = num(elements.cx, i);
    table.cy[piece] = num(elements.cy, i);
    table.radius[piece] = num(elements.radius, i);
  }
  setPiece(pieces, piece, i, (cutter.fromAlong + toAlong) / 2, from, to);
  if (cutter.last < 0) pieces.first[i] = piece;
  else pieces.nextOfElement[cutter.last] = piece;
  cutter.last = piece;
  cutter.fromNode = toNode;
  cutter.fromAlong = toAlong;
}

function setPiece(
  pieces: Pieces,
  piece: number,
  element: number,
  middleAlong: number,
  from: number,
  to: number,
): void {
  pieces.elementOf[piece] = element;
  pieces.middleAlong[piece] = middleAlong;
  pieces.startNode[piece] = from;
  pieces.endNode[piece] = to;
}

function gatherRuns(pieces: Pieces, table: SegmentTable, nodes: MeetingNodes): Arrangement {
  const total = pieces.table.count;
  const runStart = new Int32Array(total + 1);
  const pieceOrder = new Int32Array(total);
  const startNode = new Int32Array(total);
  const endNode = new Int32Array(total);
  const taken = new Uint8Array(total);
  let runs = 0;
  let placed = 0;
  const gather = (first: number, ring: boolean): void => {
    let last = first;
    for (
      let piece = first;
      piece >= 0 && taken[piece] === 0;
      piece = nextPiece(pieces, table, nodes, piece)
    ) {
      taken[piece] = 1;
      pieceOrder[placed++] = piece;
      last = piece;
    }
    startNode[runs] = ring ? -1 : int(pieces.startNode, first);
    endNode[runs] = ring ? -1 : int(pieces.endNode, last);
    runStart[++runs] = placed;
  };
  for (let i = 0; i < table.count; i++) {
    let piece = int(pieces.first, i);
    if (piece >= 0 && !nodes.hasPrevious(i)) gather(piece, false);
    for (; piece >= 0; piece = int(pieces.nextOfElement, piece)) {
      if (taken[piece] === 0 && nodes.isJunction(int(pieces.startNode, piece))) gather(piece, false);
    }
  }
  // What is left runs round without a beginning.
  for (let i = 0; i < table.count; i++) {
    const piece = int(pieces.first, i);
    if (piece >= 0 && taken[piece] === 0) gather(piece, true);
  }
  return {
    pieces: pieces.table,
    elements: table,
    elementOf: pieces.elementOf,
    middleAlong: pieces.middleAlong,
    runCount: runs,
    runStart: runStart.subarray(0, runs + 1),
    pieceOrder,
    startNode: startNode.subarray(0, runs),
    endNode: endNode.subarray(0, runs),
  };
}

/** The piece that follows without anything else meeting it there; -1 where the run ends. */
function nextPiece(pieces: Pieces, table: SegmentTable, nodes: MeetingNodes, piece: number): number {
  if (nodes.isJunction(int(pieces.endNode, piece))) return -1;
  const ofElement = int(pieces.nextOfElement, piece);
  if (ofElement >= 0) return ofElement;
  const follower = int(table.next, int(pieces.elementOf, piece));
  return follower < 0 ? -1 : int(pieces.first, follower);
}
