import { bandNames, type Band } from '../../inspect/band';
import type { Region } from '../../geometry/contour';
import type { ClearanceMap } from '../../inspect/clearance-map';
import { outsidePlaces } from '../../inspect/outside-places';
import type { PairClearance } from '../../inspect/pair-clearance';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import { formatLength, type DisplayUnit } from '../../units';
import { chartDrawing } from './chart-drawing';
import { columnNumber } from './column-number';
import { colours, memberStroke } from './member-drawing';
import type { Paper } from './paper';
import { strokeChain, strokeRegion, type Stroke } from './paper-view';
import type { SheetFlow } from './sheet-flow';

/** Colour and line style of each band: thicker the more it matters, so that it reads without colour. */
export const bandStrokes: Readonly<Record<Band, Stroke>> = {
  contact: { colour: colours.ink, width: 1.3 },
  tight: { colour: colours.punch, width: 0.95 },
  within: { colour: colours.within, width: 0.45 },
  wide: { colour: colours.wide, width: 0.7, dash: [1.4, 0.9] },
};

/** The clearance of one pair: picture, numbers, chart and every place outside the tolerance. */
export function clearanceSection(
  flow: SheetFlow,
  paper: Paper,
  pair: PairClearance,
  title: string,
  unit: DisplayUnit,
): void {
  const { map } = pair;
  flow.needs(sectionRoom);
  flow.heading(title);
  clearancePicture(flow, pair.die, map);
  flow.facts(clearanceFacts(map, unit));
  const area = flow.area(38);
  chartDrawing(paper, area, map, pair.chart, unit);
  const outside = outsidePlaces(map);
  if (outside.length === 0) {
    flow.text('The clearance is within the tolerance all round.');
    return;
  }
  flow.table(
    [
      { name: 'Outside the tolerance' },
      { name: `Worst, ${unit}`, isNumber: true },
      { name: `x, ${unit}`, isNumber: true },
      { name: `y, ${unit}`, isNumber: true },
      { name: `Length, ${unit}`, isNumber: true },
    ],
    outside
      .slice(0, mostPlaces)
      .map(({ band, worst, length }) => [
        bandNames[band],
        ...[worst.clearance, worst.at.x, worst.at.y, length].map((mm) => columnNumber(mm, unit)),
      ]),
  );
  if (outside.length > mostPlaces) flow.text(`${outside.length - mostPlaces} more places are less far out.`);
}

const mostPlaces = 30;

/** A picture, its numbers and its chart stay together, mm. */
const sectionRoom = 165;

/** The die's edge, and the punch's by its clearance. */
export function clearancePicture(flow: SheetFlow, die: Region, map: ClearanceMap): void {
  flow.picture({
    box: die.map(contourBox).reduce(boxAround, contourBox([])),
    height: 78,
    say: 'Die solid blue; punch by clearance: thick too little, thin within, dashed too much, black touching.',
    draw: (view) => {
      strokeRegion(view, die, memberStroke('die', 0.2));
      for (const { band, chain } of map.stretches) strokeChain(view, chain, bandStrokes[band]);
    },
  });
}

export function clearanceFacts(map: ClearanceMap, unit: DisplayUnit): readonly (readonly [string, string])[] {
  const length = (mm: number) => formatLength(mm, unit);
  const place = ({ at }: ClearanceMap['least']) => ` at x ${length(at.x)}, y ${length(at.y)}`;
  return [
    ['Wanted', `${length(map.wanted)} ± ${length(map.tolerance)} per side`],
    ['Least', `${length(map.least.clearance)}${place(map.least)}`],
    ['Greatest', `${length(map.greatest.clearance)}${place(map.greatest)}`],
    ['Mean', length(map.mean)],
    [
      'Outside the tolerance',
      `${length(map.outside)} of ${length(map.perimeter)} (${((100 * map.outside) / map.perimeter).toFixed(1)} %)`,
    ],
  ];
}
