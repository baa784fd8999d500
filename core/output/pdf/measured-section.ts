import type { Box } from '../../geometry/contour';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import type { ComparedPoint } from '../../inspect/compare-points';
import type { ComparedSet } from '../../inspect/compare-set';
import { sayTolerance, zoneLimits, zoneMiddle, type ProfileTolerance } from '../../inspect/profile-tolerance';
import { roundExaggeration } from '../../inspect/round-exaggeration';
import { degrees, formatLength, type DisplayUnit } from '../../units';
import { columnNumber } from './column-number';
import { histogramDrawing } from './histogram-drawing';
import { colours } from './member-drawing';
import type { Paper } from './paper';
import { onPaper, setStroke, strokeRegion, type PaperView } from './paper-view';
import type { SheetFlow } from './sheet-flow';

/** One set of measured points: verdict, fit, picture with whiskers, the worst place, spread, and every point. */
export function measuredSection(
  flow: SheetFlow,
  paper: Paper,
  { set, target, comparison }: ComparedSet,
  zone: ProfileTolerance,
  unit: DisplayUnit,
): void {
  const { points } = comparison;
  flow.needs(sectionRoom);
  flow.heading(`${set.name}: ${target.name}`);
  flow.text(verdictOf({ set, target, comparison }, zone, unit), { bold: true });
  const box = target.profile.map(contourBox).reduce(boxAround, contourBox([]));
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const largest = points.reduce((most, { deviation }) => Math.max(most, Math.abs(deviation)), 0);
  const times = roundExaggeration(largest, size * whiskerShare);
  flow.picture({
    box,
    height: 78,
    say: `Deviations ${times} times as large, square to the profile; thick fails, a ring marks an outlier; limits across.`,
    draw: (view) => {
      strokeRegion(view, target.profile, { colour: colours.die, width: 0.2 });
      for (const point of points) whisker(view, point, times, zoneLimits(zone));
    },
  });
  flow.facts(factsOf({ set, target, comparison }, zone, unit));
  addWorst(flow, { set, target, comparison }, zone, size, unit);
  histogramDrawing(
    paper,
    flow.area(34),
    points.map(({ deviation }) => deviation),
    zone,
    unit,
  );
  const number = (mm: number) => columnNumber(mm, unit);
  flow.table(
    [
      { name: 'Point' },
      { name: `x measured, ${unit}`, isNumber: true },
      { name: `y measured, ${unit}`, isNumber: true },
      { name: `Deviation, ${unit}`, isNumber: true },
      { name: 'Verdict' },
    ],
    worstOf(points, zone).map(({ id, measured, deviation, passes, isOutlier }) => [
      id,
      number(measured.x),
      number(measured.y),
      number(deviation),
      `${passes ? 'passes' : 'FAILS'}${isOutlier ? ', outlier' : ''}`,
    ]),
  );
  if (points.length > mostRows)
    flow.text(
      `The other ${points.length - mostRows} points lie nearer to the middle of the zone; the measured CSV has all.`,
    );
}

/** Rows of a table that somebody would still read. */
const mostRows = 500;

/** All points, or of very many those farthest from the middle of the zone; as they were measured. */
function worstOf(points: readonly ComparedPoint[], zone: ProfileTolerance): readonly ComparedPoint[] {
  if (points.length <= mostRows) return points;
  const middle = zoneMiddle(zone);
  const off = ({ deviation }: ComparedPoint) => Math.abs(deviation - middle);
  const least = off([...points].sort((a, b) => off(b) - off(a))[mostRows - 1] as ComparedPoint);
  return points.filter((point) => off(point) >= least).slice(0, mostRows);
}

/** Verdict, picture and numbers stay together, mm. */
const sectionRoom = 135;

/** The longest whisker as a share of the part's size. */
const whiskerShare = 0.07;

export function verdictOf(
  { set, comparison }: ComparedSet,
  zone: ProfileTolerance,
  unit: DisplayUnit,
): string {
  const { passes, profile, counted, points } = comparison;
  const left = set.fit.outliers === 'leave out' ? points.length - counted : 0;
  const without = left > 0 ? ` ${left} ${left === 1 ? 'outlier is' : 'outliers are'} left out.` : '';
  return `${passes ? 'PASSES' : 'FAILS'}: profile ${formatLength(profile, unit)} of ${formatLength(zone.width, unit)} allowed.${without}`;
}

function factsOf(
  { set, comparison }: ComparedSet,
  zone: ProfileTolerance,
  unit: DisplayUnit,
): readonly (readonly [string, string])[] {
  const length = (mm: number) => formatLength(mm, unit);
  const { found, least, greatest, mean, rms, counted, points } = comparison;
  const limits = zoneLimits(zone);
  const free = [
    ...(set.fit.freedom.shiftX ? ['shift x'] : []),
    ...(set.fit.freedom.shiftY ? ['shift y'] : []),
    ...(set.fit.freedom.turn ? ['turn'] : []),
  ];
  const isFixed = set.fit.method === 'as measured' || free.length === 0;
  return [
    ['Points', `${points.length} from ${set.fileName}, ${counted} of them counted`],
    ['Fit', isFixed ? 'none: fixed datum, as measured' : `${set.fit.method}, free: ${free.join(', ')}`],
    [
      'Part as it lay',
      `x ${length(found.dx)}, y ${length(found.dy)}, turned ${degrees(found.turn).toFixed(4)}°`,
    ],
    [
      'Tolerance',
      `line profile ${sayTolerance(zone, length)}: ${length(limits.low)} to ${length(limits.high)}`,
    ],
    ['Deviations', `${length(least)} to ${length(greatest)}, mean ${length(mean)}, rms ${length(rms)}`],
    ['Sign', 'positive: more material than the profile'],
  ];
}

function addWorst(
  flow: SheetFlow,
  { target, comparison }: ComparedSet,
  zone: ProfileTolerance,
  size: number,
  unit: DisplayUnit,
): void {
  const worst = comparison.points[comparison.worst];
  if (!worst) return;
  const reach = size / 25;
  const times = roundExaggeration(Math.abs(worst.deviation), reach / 2);
  const box: Box = {
    minX: worst.foot.x - reach,
    minY: worst.foot.y - reach,
    maxX: worst.foot.x + reach,
    maxY: worst.foot.y + reach,
  };
  flow.picture({
    box,
    height: 40,
    say: `Worst place: point ${worst.id}, ${formatLength(worst.deviation, unit)}, drawn ${times} times as large.`,
    draw: (view) => {
      strokeRegion(view, target.profile, { colour: colours.die, width: 0.3 });
      for (const point of comparison.points) whisker(view, point, times, zoneLimits(zone));
    },
  });
}

/** mm on paper across a whisker, either side. */
const limitStroke = 0.7;

function whisker(
  view: PaperView,
  { foot, nx, ny, deviation, passes, isOutlier }: ComparedPoint,
  times: number,
  { low, high }: ReturnType<typeof zoneLimits>,
): void {
  const { doc } = view.paper;
  setStroke(view.paper, { colour: colours.faint, width: 0.12 });
  for (const limit of [low, high]) {
    const at = onPaper(view, { x: foot.x + nx * limit * times, y: foot.y + ny * limit * times });
    doc.line(
      at.x - ny * limitStroke,
      at.y - nx * limitStroke,
      at.x + ny * limitStroke,
      at.y + nx * limitStroke,
    );
  }
  const from = onPaper(view, foot);
  const to = onPaper(view, { x: foot.x + nx * deviation * times, y: foot.y + ny * deviation * times });
  setStroke(
    view.paper,
    passes ? { colour: colours.within, width: 0.2 } : { colour: colours.punch, width: 0.6 },
  );
  doc.line(from.x, from.y, to.x, to.y);
  doc.circle(to.x, to.y, 0.35);
  if (isOutlier) doc.circle(to.x, to.y, 1.1);
}
