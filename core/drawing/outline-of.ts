import type { Finding } from '../finding';
import { boxAround } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import { done, failed, type Result } from '../problem';
import { drawingUnits, type DrawingUnit } from '../units';
import { fillingFindings, leftOutFindings, repairFindings, unsupportedFindings } from './account-findings';
import type { OpenRun } from './chain-strands';
import { checkDimensions } from './check-dimensions';
import { chooseFillings, chooseNothing, choosePieces } from './choose-pieces';
import { closedRings, type RingsAndRest } from './closed-rings';
import type { Drawing, DrawingChoice, DrawingContour, RepairSwitch } from './drawing';
import {
  damageFindings,
  fitFinding,
  gapFinding,
  meetingFindings,
  openFindings,
  unusedFindings,
} from './drawing-findings';
import { limits } from './limits';
import { meetingsOf } from './meetings';
import { nameRings, type NamedRings } from './name-rings';
import { noContour } from './no-contour';
import { openPlaces } from './open-places';
import type { Piece, RawDrawing } from './raw-drawing';
import { reasonForKind } from './reason-for-kind';
import type { Ring } from './ring';
import { RepairLog } from './repair-log';
import { isSheetLayer } from './sheet-rings';
import { strandOfPiece, type Strand } from './strand';
import { untold, type Tell } from './tell';
import { UnusedCount } from './unused-count';

export interface OutlineOptions {
  readonly choice: DrawingChoice;
  /** Kinds of repair that are not to be made. */
  readonly repairsOff: readonly RepairSwitch[];
}

/**
 * The closed contours of a drawing in mm, nested, with an account of all that is not among them. Ends within
 * `gapTolerance` (mm) are joined. A drawing without any closed contour is a problem.
 */
export function outlineOf(
  raw: RawDrawing,
  unit: DrawingUnit,
  gapTolerance: number,
  { choice = chooseNothing, repairsOff = [] }: Partial<OutlineOptions> = {},
  tell: Tell = untold,
): Result<Drawing> {
  const factor = drawingUnits[unit].mm;
  const { minX, minY, maxX, maxY } = raw.box;
  const farthest = Math.max(...[minX, minY, maxX, maxY].map(Math.abs)) * factor;
  if (raw.pieces.length > 0 && farthest > farthestCoordinate) return tooFar(farthest, unit);
  const unused = new UnusedCount();
  unused.addAll(raw.unused);
  const log = new RepairLog(repairsOff);
  const pieces = choosePieces(raw, choice, unused);
  const strands = strandsOf(pieces, factor, unused, log);
  if (!strands) return tooManyArcs;
  tell(0.2);
  const found = closedRings(strands, gapTolerance, log, unused);
  if (!found) return tooManyContours;
  const { rings: drawn, fillings } = orFillings(found, raw, choice, factor, gapTolerance, log, unused);
  if (drawn.length === 0) return noContour(unused, found.open, gapTolerance);
  tell(0.6);
  const met = meetingsOf(drawn, log);
  if (!met) return tooCrowded(drawn.length);
  tell(0.8);
  const named = nameRings(
    met.rings,
    raw.texts.map(({ x, y }) => ({ x: x * factor, y: y * factor })),
    choice.contours,
  );
  if (!named) return tooCrowded(drawn.length);
  const { contours, leftOut } = named;
  if (contours.length === 0) return allLeftOut(leftOut.length);
  const at = new Map(named.taken.map((ring, i) => [ring, i]));
  const meetings = met.meetings.flatMap((meeting) => {
    const first = at.get(met.rings[meeting.first] as (typeof met.rings)[number]);
    const second = at.get(met.rings[meeting.second] as (typeof met.rings)[number]);
    return first === undefined || second === undefined
      ? []
      : [{ ...meeting, first: Math.min(first, second), second: Math.max(first, second) }];
  });
  meetings.sort((a, b) => a.first - b.first || a.second - b.second);
  const { dimensions, findings: stated } = checkDimensions(raw.dimensions, factor, contours);
  const repairs = log.list();
  const findings: readonly Finding[] = [
    ...meetingFindings(
      meetings.filter(({ isTouch }) => !isTouch),
      contours,
    ),
    ...meetingFindings(
      meetings.filter(({ isTouch }) => isTouch),
      contours,
    ),
    ...fillingFindings(fillings),
    ...openFindings(openPlaces(found.open.filter(isOfPart)), gapTolerance),
    ...unsupportedFindings(unused.list()),
    ...stated,
    ...damageFindings(raw.damage).filter(({ weight }) => weight === 'decide'),
    ...leftOutFindings(leftOut, contours),
    ...gapFindings(named),
    ...repairFindings(repairs),
    ...contours.filter((_, i) => named.taken[i]?.isFitted).map(fitFinding),
    ...damageFindings(raw.damage).filter(({ weight }) => weight === 'note'),
    ...unusedFindings(unused.list()),
  ];
  return done({
    format: raw.format,
    unit,
    contours,
    leftOut,
    unused: unused.list(),
    box: named.taken.map(({ box }) => box).reduce(boxAround),
    largestFitError: contours.reduce((most, { fitError }) => Math.max(most, fitError), 0),
    repairs,
    dimensions,
    findings,
  });
}

/** For the few contours in which gaps were closed. */
function gapFindings({ contours, taken }: NamedRings): readonly Finding[] {
  const findings: Finding[] = [];
  for (let i = 0; i < taken.length; i++) {
    const { gaps } = taken[i] as Ring;
    if (gaps.length > 0) findings.push(...gapFinding(contours[i] as DrawingContour, gaps));
  }
  return findings;
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

const tooManyArcs = failed(
  'drawing-too-large',
  `The splines and ellipses of the drawing would become more than ${limits.fittedArcs.toLocaleString('en-US')} arcs`,
  'curves of the drawing',
  'Check the unit, or choose the layers or colours that hold the outline.',
);

const tooManyContours = failed(
  'drawing-too-large',
  `The drawing has more than ${limits.contours.toLocaleString('en-US')} closed contours`,
  'contours of the drawing',
  'Choose the layers or colours that hold the outline, or save the part without its pattern.',
);

const tooCrowded = (count: number) =>
  failed(
    'drawing-too-crowded',
    `The ${count.toLocaleString('en-US')} closed contours overlap so much that they cannot be told apart`,
    'contours of the drawing',
    'Choose the layers or colours that hold the outline, or save the part without its pattern.',
  );

const allLeftOut = (count: number) =>
  failed(
    'all-contours-left-out',
    `All ${count} closed contours of the drawing are left out`,
    'choice of contours',
    'Take at least one of them again.',
  );

/** What is open on a layer for construction lines or the sheet was never an outline. */
const isOfPart = ({ strands }: OpenRun): boolean => strands.some(({ layer }) => !isSheetLayer(layer));

/** All pieces as strands, those without length counted and left out. */
function strandsOf(
  pieces: readonly Piece[],
  factor: number,
  unused: UnusedCount,
  log: RepairLog,
): readonly Strand[] | null {
  const strands: Strand[] = [];
  const budget = { arcs: limits.fittedArcs };
  for (const piece of pieces) {
    const strand = strandOfPiece(piece, factor, budget);
    if (!strand) return null;
    for (const place of strand.zeroLength) log.add('zero length', place, 0);
    if (strand.chain.length < 2) unused.add(piece.layer, piece.kind, 'zero length');
    else {
      strands.push(strand);
      if (strand.zeroLength.length > 0)
        unused.add(piece.layer, piece.kind, 'segment of zero length', strand.zeroLength.length);
    }
  }
  return strands;
}

/** Where no edge closes, the boundaries of fillings; how many of each kind make the outline. */
function orFillings(
  found: RingsAndRest,
  raw: RawDrawing,
  choice: DrawingChoice,
  factor: number,
  gapTolerance: number,
  log: RepairLog,
  unused: UnusedCount,
): Pick<RingsAndRest, 'rings'> & { readonly fillings: ReadonlyMap<string, number> } {
  if (found.rings.length > 0) return { rings: found.rings, fillings: new Map() };
  const pieces = chooseFillings(raw, choice);
  for (const { layer, kind } of pieces) unused.add(layer, kind, reasonForKind(kind), -1);
  const closed = closedRings(
    strandsOf(pieces, factor, unused, log) ?? [],
    Math.max(gapTolerance, tolerance.samePoint),
    log,
    unused,
  );
  const rings = closed?.rings ?? [];
  const fillings = new Map<string, number>();
  for (const { strands } of rings)
    for (const { kind } of strands) fillings.set(kind, (fillings.get(kind) ?? 0) + 1);
  return { rings, fillings };
}
