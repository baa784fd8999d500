import { valueOfReading } from '../inspect/reading';
import type { Job } from '../job';
import { degrees, mmPerInch } from '../units';
import { csvText } from './csv-text';

/** Every pinned reading with its value and its points, one row each, in the job's unit; angles in degrees. */
export function writeReadingsCsv({ inspection: { readings }, output: { unit } }: Job): string {
  const length = (mm: number) => (unit === 'inch' ? (mm / mmPerInch).toFixed(6) : mm.toFixed(5));
  const rows = readings.map((reading, k) => {
    const { value, kind } = valueOfReading(reading);
    const points = Object.entries(reading).flatMap(([name, point]) =>
      typeof point === 'string' ? [] : [name, length(point.x), length(point.y)],
    );
    return [
      String(k + 1),
      reading.kind,
      kind === 'angle' ? degrees(value).toFixed(5) : length(value),
      kind === 'angle' ? 'degrees' : unit,
      ...points,
      ...Array.from({ length: widest - points.length }, () => ''),
    ];
  });
  const place = (k: number) => [`point ${k}`, `x ${k} (${unit})`, `y ${k} (${unit})`];
  return csvText([['reading', 'what', 'value', 'in', ...[1, 2, 3].flatMap(place)], ...rows]);
}

/** Cells of the three points that an angle has. */
const widest = 9;
