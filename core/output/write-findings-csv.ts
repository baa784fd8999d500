import type { Finding, FindingNumber } from '../finding';
import type { Job } from '../job';
import type { Plan } from '../plan';
import { csvText, plainCell } from './csv-text';
import { degrees, mmPerInch, type DisplayUnit } from '../units';

/**
 * The review list as CSV (RFC 4180: CRLF, quotes doubled), worst first, one row a finding. The place is in the job's
 * unit; every number stands in mm and in inch. Text that a spreadsheet would run as a formula gets an apostrophe.
 */
export function writeFindingsCsv(plan: Plan, job: Job): string {
  const unit = job.output.unit;
  const header = [
    'key',
    'weight',
    'code',
    'member',
    `x (${unit})`,
    `y (${unit})`,
    'title',
    'numbers (mm)',
    'numbers (inch)',
    'message',
    'cures',
    'settled because',
  ];
  const rows = plan.findings.map((finding) => findingRow(finding, job));
  return csvText([header, ...rows]);
}

function findingRow(finding: Finding, job: Job): string[] {
  const { unit } = job.output;
  // Only a finding that asks for a decision can be settled; a reason left over under another weight says nothing.
  const settled = finding.weight === 'decide' ? job.settled[finding.key]?.reason : undefined;
  return [
    plainCell(finding.key),
    finding.weight,
    finding.code,
    plainCell(finding.memberId ?? ''),
    finding.place ? coordinate(finding.place.x, unit) : '',
    finding.place ? coordinate(finding.place.y, unit) : '',
    plainCell(finding.title),
    plainCell(numbers(finding.numbers, 'mm')),
    plainCell(numbers(finding.numbers, 'inch')),
    plainCell(finding.message),
    plainCell(finding.cures.map((cure) => cure.say).join(' ')),
    plainCell(settled ?? ''),
  ];
}

function coordinate(mm: number, unit: DisplayUnit): string {
  return unit === 'inch' ? (mm / mmPerInch).toFixed(5) : mm.toFixed(4);
}

function numbers(all: readonly FindingNumber[], unit: DisplayUnit): string {
  return all.map(({ label, value, kind }) => `${label} = ${numberText(value, kind, unit)}`).join('; ');
}

function numberText(value: number, kind: FindingNumber['kind'], unit: DisplayUnit): string {
  const inch = unit === 'inch';
  switch (kind) {
    case 'length':
      return inch ? `${(value / mmPerInch).toFixed(6)} in` : `${value.toFixed(5)} mm`;
    case 'area':
      return inch ? `${(value / mmPerInch ** 2).toFixed(8)} in²` : `${value.toFixed(6)} mm²`;
    case 'angle':
      return `${degrees(value).toFixed(3)}°`;
    case 'count':
      return String(value);
  }
}
