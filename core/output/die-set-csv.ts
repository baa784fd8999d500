import type { Job } from '../job';
import type { Plan } from '../plan';
import { newtonPerShortTon } from '../say';
import { degrees, mmPerInch } from '../units';
import { csvText, plainCell } from './csv-text';
import { dieSetRows, type DieSetRow } from './die-set-rows';

/** Every number of the die set as CSV (RFC 4180) in metric and inch units, with the rule it comes from. */
export function dieSetCsv(plan: Plan, job: Job): string {
  const header = ['group', 'what', 'value', 'unit', 'value (inch)', 'unit (inch)', 'rule'];
  const rows = dieSetRows(plan, job).map((row) => {
    const [metric, unit, inch, inchUnit] = numbersOf(row);
    return [plainCell(row.group), plainCell(row.label), metric, unit, inch, inchUnit, plainCell(row.rule)];
  });
  return csvText([header, ...rows]);
}

function numbersOf({ value, kind }: DieSetRow): readonly [string, string, string, string] {
  switch (kind) {
    case 'length':
      return [value.toFixed(5), 'mm', (value / mmPerInch).toFixed(6), 'in'];
    case 'force':
      return [value.toFixed(0), 'N', (value / newtonPerShortTon).toFixed(3), 'short tons'];
    case 'angle':
      return [degrees(value).toFixed(5), '°', degrees(value).toFixed(5), '°'];
    case 'share':
      return [(100 * value).toFixed(2), '%', (100 * value).toFixed(2), '%'];
    case 'count':
      return [String(Number(value.toPrecision(5))), '', String(Number(value.toPrecision(5))), ''];
  }
}
