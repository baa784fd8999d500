import type { Inspection } from '../inspect/inspection';
import { outsidePlaces } from '../inspect/outside-places';
import type { Job } from '../job';
import { mmPerInch, type DisplayUnit } from '../units';
import { csvText, plainCell } from './csv-text';

/** Every measured point with its deviation and verdict, one row a point, in the job's unit. */
export function writeMeasuredCsv({ measured, measuredPairs }: Inspection, job: Job): string {
  const { unit } = job.output;
  const rows = measured.flatMap((set) =>
    set.ok
      ? set.value.comparison.points.map(({ id, measured: at, deviation, passes, isOutlier }) => [
          plainCell(set.value.set.name),
          plainCell(set.value.target.id),
          plainCell(id),
          ...numbers([at.x, at.y, deviation], unit),
          passes ? 'passes' : 'fails',
          isOutlier ? 'outlier' : '',
          clearanceAt(measuredPairs, set.value.target.id, id, unit),
        ])
      : [],
  );
  const head = ['set', 'measured on', 'point', `x (${unit})`, `y (${unit})`, `deviation (${unit})`];
  return csvText([[...head, 'verdict', 'outlier', `clearance (${unit})`], ...rows]);
}

/** The clearance of every pair: its numbers, then every place outside the tolerance, in the job's unit. */
export function writeClearanceCsv({ pairs }: Inspection, job: Job): string {
  const { unit } = job.output;
  const rows = pairs.flatMap(({ contourId, map }) => {
    const row = (kind: string, clearance: number, place: { x: number; y: number } | null, length: number) => [
      plainCell(contourId),
      kind,
      ...numbers([clearance], unit),
      ...(place ? numbers([place.x, place.y], unit) : ['', '']),
      ...numbers([length], unit),
    ];
    return [
      row('least', map.least.clearance, map.least.at, 0),
      row('greatest', map.greatest.clearance, map.greatest.at, 0),
      row('mean', map.mean, null, map.perimeter),
      ...outsidePlaces(map).map(({ band, worst, length }) => row(band, worst.clearance, worst.at, length)),
    ];
  });
  const head = ['contour', 'what', `clearance (${unit})`, `x (${unit})`, `y (${unit})`, `length (${unit})`];
  return csvText([head, ...rows]);
}

function clearanceAt(
  pairs: Inspection['measuredPairs'],
  target: string,
  id: string,
  unit: DisplayUnit,
): string {
  for (const { contourId, pair } of pairs) {
    const place = pair.places.find((one) => one.id === id && target.endsWith(`-${contourId}-${one.member}`));
    if (place) return numbers([place.clearance], unit)[0] ?? '';
  }
  return '';
}

/** 0.01 µm: below what anything measures. */
const numbers = (values: readonly number[], unit: DisplayUnit): string[] =>
  values.map((mm) => (unit === 'inch' ? (mm / mmPerInch).toFixed(6) : mm.toFixed(5)));
