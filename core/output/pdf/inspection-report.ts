import { bandNames } from '../../inspect/band';
import type { Inspection, MeasuredPairOf } from '../../inspect/inspection';
import type { PairClearance } from '../../inspect/pair-clearance';
import { valueOfReading } from '../../inspect/reading';
import type { Job } from '../../job';
import type { Plan } from '../../plan';
import { sayProblem } from '../../problem';
import { degrees, formatLength, formatLengthNumber, type DisplayUnit } from '../../units';
import { clearanceFacts, clearancePicture, clearanceSection } from './clearance-section';
import { columnNumber } from './column-number';
import { measuredSection } from './measured-section';
import { finishedPaper, newPaper } from './paper';
import { readingDrawing, readingsBox } from './reading-drawing';
import type { SheetFonts } from './sheet-fonts';
import { SheetFlow } from './sheet-flow';
import { sheetHead } from './sheet-head';

/** What inspection found: clearance of every pair, measured points, measured pairs, and the readings pinned. */
export function inspectionReport(job: Job, plan: Plan, inspection: Inspection, fonts: SheetFonts): string {
  const paper = newPaper(job.sheet.page, 'portrait', fonts, sheetHead(job, plan, 'Inspection report'));
  const flow = new SheetFlow(paper);
  const { unit } = job.output;
  const { profile } = job.inspection;
  const shown = shownPairs(inspection.pairs);
  if (inspection.pairs.length > 1) pairTable(flow, inspection.pairs, shown.length, unit);
  for (const pair of shown) {
    clearanceSection(flow, paper, pair, `Clearance of contour ${pair.contourId} as cut`, unit);
  }
  for (const set of inspection.measured) {
    if (set.ok) measuredSection(flow, paper, set.value, profile, unit);
    else flow.text(sayProblem(set.problem), { bold: true });
  }
  for (const pair of inspection.measuredPairs) measuredPairSection(flow, pair, unit);
  addReadings(flow, job, plan, unit);
  return finishedPaper(paper);
}

/** Pairs that get a page each; beyond, only those with a place outside the tolerance do, the worst of them. */
const fewPairs = 6;
const mostSections = 30;

function shownPairs(pairs: readonly PairClearance[]): readonly PairClearance[] {
  if (pairs.length <= fewPairs) return pairs;
  const off = ({ map }: PairClearance) =>
    Math.max(map.wanted - map.least.clearance, map.greatest.clearance - map.wanted);
  return pairs
    .filter(({ map }) => map.outside > 0)
    .sort((a, b) => off(b) - off(a))
    .slice(0, mostSections);
}

/** One row for every pair. */
function pairTable(flow: SheetFlow, pairs: readonly PairClearance[], shown: number, unit: DisplayUnit): void {
  flow.heading('Clearance as cut');
  flow.table(
    [
      { name: 'Contour' },
      { name: `Wanted, ${unit}`, isNumber: true },
      { name: `Least, ${unit}`, isNumber: true },
      { name: `Greatest, ${unit}`, isNumber: true },
      { name: `Mean, ${unit}`, isNumber: true },
      { name: `Outside ± ${formatLength(pairs[0]?.map.tolerance ?? 0, unit)}, ${unit}`, isNumber: true },
    ],
    pairs.map(({ contourId, map }) => [
      contourId,
      ...[map.wanted, map.least.clearance, map.greatest.clearance, map.mean, map.outside].map((mm) =>
        columnNumber(mm, unit),
      ),
    ]),
  );
  if (shown < pairs.length)
    flow.text(
      shown === 0
        ? 'All of them are within the tolerance all round.'
        : `${shown} of them, worst first, have their picture below; the clearance CSV has every place.`,
    );
}

/** Rows of a table that somebody would still read; beyond, only places outside the tolerance are listed. */
const mostRows = 500;

/** The picture and the first rows stay together, mm. */
const readingsRoom = 110;

/** Verdict, picture and numbers stay together, mm. */
const pairRoom = 140;

function measuredPairSection(
  flow: SheetFlow,
  { contourId, punchSet, dieSet, pair }: MeasuredPairOf,
  unit: DisplayUnit,
): void {
  flow.needs(pairRoom);
  flow.heading(`Measured clearance of contour ${contourId}: ${punchSet} in ${dieSet}`);
  const outside = pair.places.filter(({ band }) => band !== 'within');
  const failing = outside.length;
  const listed = pair.places.length <= mostRows ? pair.places : outside.slice(0, mostRows);
  flow.text(
    failing === 0
      ? `PASSES: all ${pair.places.length} measured places are within the tolerance.`
      : `FAILS: ${failing} of ${pair.places.length} measured places are outside the tolerance.`,
    { bold: true },
  );
  clearancePicture(flow, pair.die, pair.map);
  const length = (mm: number) => formatLength(mm, unit);
  flow.facts([
    ...clearanceFacts(pair.map, unit),
    [
      'Longest way not measured',
      `punch ${length(pair.widestGap.punch)}, die ${length(pair.widestGap.die)}; taken as even between its ends`,
    ],
  ]);
  flow.table(
    [
      { name: 'Point' },
      { name: 'Of' },
      { name: `x, ${unit}`, isNumber: true },
      { name: `y, ${unit}`, isNumber: true },
      { name: `Clearance, ${unit}`, isNumber: true },
      { name: 'Verdict' },
    ],
    listed.map(({ id, member, at, clearance, band }) => [
      id,
      member,
      ...[at.x, at.y, clearance].map((mm) => columnNumber(mm, unit)),
      bandNames[band],
    ]),
  );
  if (listed.length < pair.places.length)
    flow.text('Only places outside the tolerance are listed; the measured CSV has all.');
}

function addReadings(flow: SheetFlow, { inspection }: Job, plan: Plan, unit: DisplayUnit): void {
  const { readings } = inspection;
  if (readings.length === 0) return;
  flow.needs(readingsRoom);
  flow.heading('Readings');
  flow.picture({
    box: readingsBox(plan, readings),
    height: 70,
    say: 'Members as cut, die solid, punch dashed; readings under their numbers.',
    draw: (view) => readingDrawing(view, plan, readings),
  });
  flow.table(
    [{ name: 'No.' }, { name: 'Reading' }, { name: 'Value', isNumber: true }, { name: `Between, ${unit}` }],
    readings.map((reading, k) => {
      const { value, kind } = valueOfReading(reading);
      const places = Object.entries(reading).flatMap(([name, point]) =>
        typeof point === 'string'
          ? []
          : [`${name} ${formatLengthNumber(point.x, unit)}, ${formatLengthNumber(point.y, unit)}`],
      );
      return [
        String(k + 1),
        reading.kind,
        kind === 'angle' ? `${degrees(value).toFixed(4)}°` : formatLength(value, unit),
        places.join('; '),
      ];
    }),
  );
}
