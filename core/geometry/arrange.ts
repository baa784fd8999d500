import { crossSegments, crossingRoom, endAt } from './cross-segments';
import { MeetingNodes } from './meeting-nodes';
import { alongSegment, addArc, addSegment, emptyTable, int, num, type SegmentTable } from './segment-table';
import { tolerance } from './tolerance';

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

interface Pieces {
  readonly table: SegmentTable;
  readonly elementOf: Int32Array;
  readonly middleAlong: Float64Array;
  readonly startNode: Int32Array;
  readonly endNode: Int32Array;
  /** First and last piece of each element; -1 where all its pieces are point-like. */
  readonly first: Int32Array;
  readonly last: Int32Array;
}

function cutPieces(table: SegmentTable, nodes: MeetingNodes, splits: Splits): Pieces {
  const order = splits.sorted();
  const room = table.count + order.length;
  const pieces: Pieces = {
    table: emptyTable(room),
    elementOf: new Int32Array(room),
    middleAlong: new Float64Array(room),
    startNode: new Int32Array(room),
    endNode: new Int32Array(room),
    first: new Int32Array(table.count).fill(-1),
    last: new Int32Array(table.count).fill(-1),
  };
  const place = new Float64Array(2);
  let k = 0;
  for (let i = 0; i < table.count; i++) {
    let fromNode = nodes.end(i, false);
    let fromAlong = 0;
    const endNode = nodes.end(i, true);
    for (; k < order.length && splits.element[order[k] as number] === i; k++) {
      const node = splits.node[order[k] as number] as number;
      const along = splits.along[order[k] as number] as number;
      if (addPiece(table, i, nodes, fromNode, fromAlong, node, along, pieces, place)) {
        fromNode = node;
        fromAlong = along;
      }
    }
    addPiece(table, i, nodes, fromNode, fromAlong, endNode, 1, pieces, place);
  }
  return pieces;
}

/** Adds one piece of element i; a piece between one node and itself is point-like (arcs are at most half turns). */
function addPiece(
  table: SegmentTable,
  i: number,
  nodes: MeetingNodes,
  fromNode: number,
  fromAlong: number,
  toNode: number,
  toAlong: number,
  pieces: Pieces,
  place: Float64Array,
): boolean {
  const from = nodes.root(fromNode);
  const to = nodes.root(toNode);
  if (from === to) return false;
  let x0 = num(table.x0, i);
  let y0 = num(table.y0, i);
  let x1 = num(table.x1, i);
  let y1 = num(table.y1, i);
  if (nodes.isJunction(from)) {
    nodes.place(from, place);
    x0 = num(place, 0);
    y0 = num(place, 1);
  }
  if (nodes.isJunction(to)) {
    nodes.place(to, place);
    x1 = num(place, 0);
    y1 = num(place, 1);
  }
  const bulge = num(table.bulge, i);
  let piece: number;
  if (bulge === 0) piece = addSegment(pieces.table, x0, y0, x1, y1, 0);
  else {
    const part = toAlong - fromAlong === 1 ? bulge : Math.tan(Math.atan(bulge) * (toAlong - fromAlong));
    piece = addArc(pieces.table, [x0, y0, x1, y1], part, [
      num(table.cx, i),
      num(table.cy, i),
      num(table.radius, i),
    ]);
  }
  pieces.elementOf[piece] = i;
  pieces.middleAlong[piece] = (fromAlong + toAlong) / 2;
  pieces.startNode[piece] = from;
  pieces.endNode[piece] = to;
  if (int(pieces.first, i) < 0) pieces.first[i] = piece;
  pieces.last[i] = piece;
  return true;
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
  const next = (piece: number): number => {
    if (nodes.isJunction(int(pieces.endNode, piece))) return -1;
    const element = int(pieces.elementOf, piece);
    if (piece !== int(pieces.last, element)) return piece + 1;
    const follower = int(table.next, element);
    return follower < 0 ? -1 : int(pieces.first, follower);
  };
  const gather = (first: number, ring: boolean): void => {
    let last = first;
    for (let piece = first; piece >= 0 && taken[piece] === 0; piece = next(piece)) {
      taken[piece] = 1;
      pieceOrder[placed++] = piece;
      last = piece;
    }
    startNode[runs] = ring ? -1 : int(pieces.startNode, first);
    endNode[runs] = ring ? -1 : int(pieces.endNode, last);
    runStart[++runs] = placed;
  };
  for (let piece = 0; piece < total; piece++) {
    const element = int(pieces.elementOf, piece);
    const begins =
      nodes.isJunction(int(pieces.startNode, piece)) ||
      (piece === int(pieces.first, element) && !nodes.hasPrevious(element));
    if (begins) gather(piece, false);
  }
  for (let piece = 0; piece < total; piece++) if (taken[piece] === 0) gather(piece, true);
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
