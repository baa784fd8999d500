import type { Box } from '../geometry/contour';
import { boxAround, contourBox } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { done, failed, type Result } from '../problem';
import { drawingUnits, type DrawingUnit } from '../units';
import { canonicalStrands, compareChains } from './canonical-strands';
import { chainStrands, type OpenRun } from './chain-strands';
import { crossingContours } from './crossing-contours';
import type { Drawing } from './drawing';
import {
  crossingFindings,
  damageFindings,
  fitFinding,
  gapFinding,
  openFindings,
  unusedFindings,
} from './drawing-findings';
import { coverOf, openedRing } from './lies-on';
import { nestRings } from './nest-rings';
import { openPlaces } from './open-places';
import type { RawDrawing } from './raw-drawing';
import { ringOf, type Ring } from './ring';
import { sayLength } from '../say';
import { strandOfPiece, type Strand } from './strand';
import { UnusedCount } from './unused-count';
import { withoutDuplicates } from './without-duplicates';

/**
 * The closed contours of a drawing in mm, nested, with an account of all that is not among them. Ends within
 * `gapTolerance` (mm) are joined. A drawing without any closed contour is a problem.
 */
export function outlineOf(raw: RawDrawing, unit: DrawingUnit, gapTolerance: number): Result<Drawing> {
  const factor = drawingUnits[unit].mm;
  const farthest = Math.max(...Object.values(raw.box).map(Math.abs)) * factor;
  if (raw.pieces.length > 0 && farthest > farthestCoordinate) return tooFar(farthest, unit);
  const unused = new UnusedCount();
  unused.addAll(raw.unused);
  const strands = strandsOf(raw, factor, unused);
  const { rings, open } = ringsOf(strands, gapTolerance, unused);
  if (rings.length === 0) return noContour(unused, open, gapTolerance);
  const contours = nestRings(rings);
  const ringAt = new Map(rings.map((ring) => [ring.contour, ring]));
  const crossings = crossingContours(contours.map(({ contour }) => contour));
  const findings = [
    ...crossingFindings(crossings, contours),
    ...openFindings(openPlaces(open), gapTolerance),
    ...damageFindings(raw.damage).filter(({ weight }) => weight === 'decide'),
    ...contours.flatMap((contour) => gapFinding(contour, ringAt.get(contour.contour)?.gaps ?? [])),
    ...contours.flatMap((contour) =>
      ringAt.get(contour.contour)?.strands.some(({ isFitted }) => isFitted) ? fitFinding(contour) : [],
    ),
    ...damageFindings(raw.damage).filter(({ weight }) => weight === 'note'),
    ...unusedFindings(unused.list()),
  ];
  const boxes = contours.map(({ contour }) => contourBox(contour));
  return done({
    unit,
    contours,
    unused: unused.list(),
    box: boxes.reduce((a, b) => boxAround(a, b), boxes[0] as Box),
    largestFitError: Math.max(...contours.map(({ fitError }) => fitError)),
    findings,
  });
}

/** 100 km in mm: beyond it doubles are coarser than a tenth of the same-point distance. */
const farthestCoordinate = 1e8;

const tooFar = (farthest: number, unit: DrawingUnit) =>
  failed(
    'drawing-too-far',
    `Read in ${unit}, the drawing reaches ${(farthest / 1e6).toPrecision(3)} km from its origin`,
    'coordinates of the drawing',
    'Choose the unit it was really drawn in, or move the part to the origin.',
  );

/** All pieces as strands, those without length counted and left out. */
function strandsOf(raw: RawDrawing, factor: number, unused: UnusedCount): readonly Strand[] {
  const strands: Strand[] = [];
  for (const piece of raw.pieces) {
    const strand = strandOfPiece(piece, factor);
    if (strand.chain.length < 2) unused.add(piece.layer, piece.kind, 'zero length');
    else {
      strands.push(strand);
      if (strand.zeroLength > 0)
        unused.add(piece.layer, piece.kind, 'segment of zero length', strand.zeroLength);
    }
  }
  return strands;
}

interface RingsAndRest {
  readonly rings: readonly Ring[];
  readonly open: readonly OpenRun[];
}

function ringsOf(strands: readonly Strand[], gap: number, unused: UnusedCount): RingsAndRest {
  const leaveOut = ({ layer, kind }: Strand, reason: string): void => unused.add(layer, kind, reason);
  const loose = withoutDuplicates(canonicalStrands(strands.filter(({ closed }) => !closed)));
  for (const strand of loose.dropped) leaveOut(strand, 'duplicate');
  const chained = chainStrands(loose.kept, gap);
  const drawn = strands.filter(({ closed }) => closed).map((strand) => ringOf([{ strand, forward: true }]));
  const all = [...drawn, ...chained.rings.map(ringOf)];
  const solid = all.filter(holdsArea);
  for (const ring of all.filter((other) => !holdsArea(other))) {
    for (const strand of ring.strands) leaveOut(strand, 'closed, but holds no area');
  }
  const distinct = withoutDuplicates(
    solid.map((ring) => ({ ring, chain: openedRing(ring.contour), length: ring.length })).sort(byGeometry),
  );
  for (const { ring } of distinct.dropped) for (const strand of ring.strands) leaveOut(strand, 'duplicate');
  const rings = distinct.kept.map(({ ring }) => ring);
  const isCovered = coveredBy(rings);
  const open: OpenRun[] = [];
  for (const run of chained.open) {
    const covered = run.strands.every(isCovered);
    if (!covered) open.push(run);
    const reason = covered ? 'duplicate' : run.isBranch ? 'branch off a contour' : 'open chain';
    for (const strand of run.strands) leaveOut(strand, reason);
  }
  return { rings, open };
}

/** Equal contours end up side by side whatever their order in the file. */
const byGeometry = (a: { chain: Ring['contour'] }, b: { chain: Ring['contour'] }): number =>
  compareChains(a.chain, b.chain);

/**
 * A line drawn there and back closes too: every piece of it lies on another. A figure of eight may hold as much
 * clockwise as counter-clockwise and is a contour all the same, one that crosses itself.
 */
function holdsArea({ contour, area, length }: Ring): boolean {
  if (contour.length < 2) return false;
  if (area > (length / 2) * tolerance.duplicate) return true;
  return !contour.every((_, i) => {
    const turned = [...contour.slice(i), ...contour.slice(0, i)];
    const [piece, others] = [turned.slice(0, 2), openedRing(turned).slice(1)];
    return coverOf(others, tolerance.duplicate)(piece);
  });
}

/** Whether a strand lies on one of the contours: a piece of an edge drawn a second time. */
function coveredBy(rings: readonly Ring[]): (strand: Strand) => boolean {
  const covers = rings.map(({ contour }) => ({
    box: contourBox(contour),
    isOn: coverOf(openedRing(contour), tolerance.duplicate),
  }));
  const near = tolerance.duplicate;
  return ({ chain }) =>
    covers.some(
      ({ box, isOn }) =>
        chain.every(
          ({ x, y }) =>
            x >= box.minX - near && x <= box.maxX + near && y >= box.minY - near && y <= box.maxY + near,
        ) && isOn(chain),
    );
}

function noContour(unused: UnusedCount, open: readonly OpenRun[], gapTolerance: number) {
  const gaps = openPlaces(open).flatMap(({ gap }) => (gap === null ? [] : [gap]));
  const rows = unused.list();
  const total = rows.reduce((sum, { count }) => sum + count, 0);
  const [most] = [...rows].sort((a, b) => b.count - a.count);
  const where = most
    ? `${total} entities, most of them ${most.kind} on layer ${most.layer}: ${most.reason}`
    : 'no entities at all';
  const smallest = Math.min(...gaps);
  const whatToDo = Number.isFinite(smallest)
    ? `The smallest gap between open ends is ${sayLength(smallest)}, the gap tolerance ${sayLength(gapTolerance)}: ` +
      'close the outline in the drawing, or raise the gap tolerance.'
    : 'Draw the outline of the part with lines, arcs, circles, polylines, ellipses or splines on a layer that is on.';
  return failed('no-closed-contour', 'The drawing has no closed contour', where, whatToDo);
}
