import type { Contour, Point, Region } from '../geometry/contour';
import { contourArea, contourBox } from '../geometry/contour-measures';
import { movedContour, movedPoint, type Motion } from '../geometry/moved-contour';
import { offsetRegion } from '../geometry/offset-region';
import { sideSeparation, sidesOf, type Sides } from '../geometry/side-separation';

export interface StripQuery {
  /** The blank's outline, counter-clockwise. */
  readonly outline: Contour;
  readonly up: 1 | 2;
  /** Between blanks, and from a blank to the strip's edge, mm. */
  readonly bridge: number;
  readonly edge: number;
  /** How the blank lies in the strip, radians counter-clockwise; null: however it takes least stock. */
  readonly turn: number | null;
}

/** A strip that runs along +x; the drawing is turned and moved into it. */
export interface StripLayout {
  readonly up: 1 | 2;
  /** Where each blank of one step lies: motions of the drawing. */
  readonly places: readonly Motion[];
  /** Step from stroke to stroke, mm. */
  readonly feed: number;
  /** The strip's lower edge and its width, mm. */
  readonly bottom: number;
  readonly width: number;
  readonly bridge: number;
  readonly edge: number;
  /** Area of the blanks' outlines over the strip's area. */
  readonly used: number;
}

/**
 * The blank laid into a strip with the least stock: one in a row, or two, the second beside the first or above it, turned
 * by a half turn or not. At every angle the step is exact: the outline grown by half the bridge just touches its own
 * copy. The angle, and where the second one lies, are searched: all round in even steps, then narrowed down to a
 * hundredth of a micron.
 */
export function stripLayout(query: StripQuery): StripLayout {
  // About its own middle, where it turns in place.
  const box = contourBox(query.outline);
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const centred = movedContour(query.outline, { turn: 0, x: -middle.x, y: -middle.y });
  const grown = largest(offsetRegion([centred], query.bridge / 2));
  const area = Math.abs(contourArea(query.outline));
  const tries = query.up === 1 ? [oneUp] : [twoInARow, twoRowsTurned, twoRowsAlike];
  // Where to lie is found on an outline of few corners; how far apart, on the outline itself.
  const simple = fewerCorners(grown);
  let best: Trial | null = null;
  for (const lay of tries) {
    const { turn, slide } = search(lay, simple, query);
    const found = trial(lay, turnedBy(grown, turn), turn, slide, query);
    if (!best || found.area < best.area) best = found;
  }
  return layoutOf(best as Trial, query, area, middle);
}

/** Angles looked at in a half turn before narrowing down. */
const angles = 90;
/** Segments of an outline that a search is worth. */
const mostSegments = 240;

/** Every so many a vertex, straight between them; few enough segments stay as they are. */
function fewerCorners(contour: Contour): Contour {
  const every = Math.ceil(contour.length / mostSegments);
  return every === 1 ? contour : contour.filter((_, i) => i % every === 0).map((v) => ({ ...v, bulge: 0 }));
}

/** A layout at an angle; `slide` says where between its limits the second blank is. */
interface Trial {
  readonly turn: number;
  readonly slide: number;
  readonly feed: number;
  /** From the lowest to the highest point of the grown blanks, mm. */
  readonly height: number;
  readonly low: number;
  /** The second blank's move from the first, which is turned only; null: one up. */
  readonly second: (Point & { readonly isTurned: boolean }) | null;
  /** Stock for one blank, mm². */
  readonly area: number;
}

type Lay = (turned: Turned, slide: number, query: StripQuery) => Omit<Trial, 'turn' | 'slide' | 'area'>;

/** The grown blank at an angle, and what its neighbours need to know of it. */
interface Turned {
  readonly own: Sides;
  readonly opposite: Sides;
  /** The same lying on their side: "up" becomes "right". */
  readonly ownUp: Sides;
  readonly oppositeUp: Sides;
  readonly low: number;
  readonly high: number;
  readonly pitch: number;
  /** How many steps to either side a blank can lie above another one. */
  readonly reach: number;
}

function turnedBy(grown: Contour, turn: number): Turned {
  const own = movedContour(grown, { turn, x: 0, y: 0 });
  const opposite = own.map(({ x, y, bulge }) => ({ x: -x, y: -y, bulge }));
  const box = contourBox(own);
  const sides = sidesOf([own]);
  const pitch = sideSeparation(sides, sides, 0);
  const onSide = (contour: Contour): Region => [contour.map(({ x, y, bulge }) => ({ x: y, y: -x, bulge }))];
  return {
    own: sides,
    opposite: sidesOf([opposite]),
    ownUp: sidesOf(onSide(own)),
    oppositeUp: sidesOf(onSide(opposite)),
    low: box.minY,
    high: box.maxY,
    pitch,
    reach: Math.ceil((box.maxX - box.minX) / pitch) + 1,
  };
}

const oneUp: Lay = ({ low, high, pitch }) => ({ feed: pitch, low, height: high - low, second: null });

/** Each second blank turned by a half turn, in the same row; `slide` moves it up and down. */
const twoInARow: Lay = ({ own, opposite, low, high, pitch }, slide) => {
  const height = high - low;
  // Level with the first at 0.5, half its height off at 0 and 1.
  const up = low + high + (slide - 0.5) * height;
  const right = sideSeparation(own, opposite, up);
  const back = sideSeparation(opposite, own, -up);
  const feed = Math.max(right + back, pitch);
  const x = right + (feed - right - back) / 2;
  const lowSecond = up - high;
  const least = Math.min(low, lowSecond);
  return {
    feed,
    low: least,
    height: Math.max(high, up - low) - least,
    second: { x, y: up, isTurned: true },
  };
};

/** A second row above the first; `slide` moves it along the strip, by one step in all. */
function twoRows(isTurned: boolean): Lay {
  return ({ ownUp, oppositeUp, low, high, pitch, reach }, slide) => {
    const x = slide * pitch;
    const above = isTurned ? oppositeUp : ownUp;
    let y = -Infinity;
    // On its side, a move along the strip is a move down.
    for (let k = -reach; k <= reach; k++) {
      y = Math.max(y, sideSeparation(ownUp, above, -(x + k * pitch)));
    }
    const top = isTurned ? y - low : y + high;
    const bottom = isTurned ? y - high : y + low;
    const least = Math.min(low, bottom);
    return { feed: pitch, low: least, height: Math.max(high, top) - least, second: { x, y, isTurned } };
  };
}
const twoRowsTurned = twoRows(true);
const twoRowsAlike = twoRows(false);

function search(lay: Lay, grown: Contour, query: StripQuery): Trial {
  const at = (turn: number, slide: number): Trial => trial(lay, turnedBy(grown, turn), turn, slide, query);
  const slides = lay === oneUp ? [0.5] : Array.from({ length: slideSteps }, (_, k) => (k + 0.5) / slideSteps);
  const turns =
    query.turn === null ? Array.from({ length: angles }, (_, k) => (k / angles) * Math.PI) : [query.turn];
  let best: Trial | null = null;
  for (const turn of turns) {
    const turned = turnedBy(grown, turn);
    for (const slide of slides) {
      const found = trial(lay, turned, turn, slide, query);
      if (!best || found.area < best.area) best = found;
    }
  }
  return narrowed(
    best as Trial,
    at,
    query.turn === null ? Math.PI / angles : 0,
    lay === oneUp ? 0 : 1 / slideSteps,
  );
}

const slideSteps = 16;

/** Steps to either side while they save stock, halved where none does. */
function narrowed(
  start: Trial,
  at: (turn: number, slide: number) => Trial,
  turnStep: number,
  slideStep: number,
): Trial {
  let best = start;
  for (let k = 0, t = turnStep, s = slideStep; k < halvings;) {
    const around = [
      ...(t > 0 ? [at(best.turn + t, best.slide), at(best.turn - t, best.slide)] : []),
      ...(s > 0 ? [at(best.turn, best.slide + s), at(best.turn, best.slide - s)] : []),
    ];
    const better = around.reduce((least, other) => (other.area < least.area ? other : least), best);
    if (better === best || better.area > best.area * (1 - 1 / 1_000_000_000)) {
      k++;
      t /= 2;
      s /= 2;
    }
    best = better;
    if (t === 0 && s === 0) break;
  }
  return best;
}
const halvings = 20;

function trial(lay: Lay, turned: Turned, turn: number, slide: number, query: StripQuery): Trial {
  const laid = lay(turned, slide, query);
  return { ...laid, turn, slide, area: (laid.feed * widthOf(laid.height, query)) / query.up };
}

/** The grown blanks reach half a bridge beyond the blanks themselves. */
const widthOf = (height: number, { bridge, edge }: StripQuery): number => height - bridge + 2 * edge;

function layoutOf(found: Trial, query: StripQuery, area: number, middle: Point): StripLayout {
  const { turn, feed, low, height, second } = found;
  const width = widthOf(height, query);
  const first = aboutMiddle({ turn, x: 0, y: 0 }, middle);
  const others = second
    ? [aboutMiddle({ turn: second.isTurned ? turn + Math.PI : turn, x: second.x, y: second.y }, middle)]
    : [];
  return {
    up: query.up,
    places: [first, ...others],
    feed,
    bottom: low + query.bridge / 2 - query.edge,
    width,
    bridge: query.bridge,
    edge: query.edge,
    used: (query.up * area) / (feed * width),
  };
}

/** The motion of the drawing that moves its middle to a place and turns it about that. */
function aboutMiddle({ turn, x, y }: Motion, middle: Point): Motion {
  const turned = movedPoint(middle, { turn, x: 0, y: 0 });
  return { turn, x: x - turned.x, y: y - turned.y };
}

function largest(region: Region): Contour {
  return region.reduce<Contour>(
    (best, contour) => (Math.abs(contourArea(contour)) > Math.abs(contourArea(best)) ? contour : best),
    region[0] ?? [],
  );
}
