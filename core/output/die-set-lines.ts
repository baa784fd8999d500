import type { Job } from '../job';
import type { Plan } from '../plan';
import { sayAngle, sayForce, sayGap, shortNumber } from '../say';
import { dieSetRows, type DieSetRow } from './die-set-rows';

/** The die set's part of the summary: parts of each tool, then every number. */
export function dieSetLines(plan: Plan, job: Job): readonly string[] {
  const { tools } = plan.dieSet;
  const rows = dieSetRows(plan, job);
  const groups = [...new Set(rows.map(({ group }) => group))];
  return [
    ...tools.flatMap(({ tool, parts }) => [
      `  ${tool.name}`,
      ...parts.map(({ name, words }) => `    ${name}: ${words}`),
    ]),
    ...groups.flatMap((group) => [
      `  ${group}`,
      ...rows
        .filter((row) => row.group === group)
        .map((row) => `    ${row.label}: ${sayRow(row)} [${row.rule}]`),
    ]),
  ];
}

/** A row's number in both units. */
export function sayRow({ value, kind }: DieSetRow): string {
  switch (kind) {
    case 'length':
      return sayGap(value);
    case 'force':
      return sayForce(value);
    case 'angle':
      return sayAngle(value);
    case 'share':
      return `${shortNumber(100 * value)} %`;
    case 'count':
      return shortNumber(value);
  }
}
