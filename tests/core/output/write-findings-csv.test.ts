import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../../core/finding';
import { writeFindingsCsv } from '../../../core/output/write-findings-csv';
import { exampleParts, planOf } from '../../support/plan-of';
import { readCsv } from '../../support/read-csv';

const corner: Finding = {
  key: 'inside-corner/blank-1-die/1',
  code: 'inside-corner',
  weight: 'decide',
  title: 'Sharp inside corner, 90°',
  message: 'The wire leaves 0.0621 mm, "a fillet".',
  place: { x: 25.4, y: -12.7, reach: 1 },
  contourId: 'c1',
  memberId: 'blank-1-die',
  numbers: [
    { label: 'remainder', value: 0.0621320344, kind: 'length' },
    { label: 'corner', value: Math.PI / 2, kind: 'angle' },
    { label: 'area', value: 0.004829, kind: 'area' },
    { label: 'places', value: 4, kind: 'count' },
  ],
  cures: [{ kind: 'fillet', radius: 0.15, say: 'Round the corner.' }],
};

function csv(
  findings: readonly Finding[],
  change: { unit?: 'mm' | 'inch'; settled?: Record<string, { reason: string }> } = {},
) {
  const parts = exampleParts(change.unit ? { unit: change.unit } : {});
  const job = { ...parts.job, settled: change.settled ?? {} };
  return writeFindingsCsv(planOf({ ...parts, findings }), job);
}

function cells(text: string, row = 1): Record<string, string> {
  const [header = [], ...rows] = readCsv(text);
  return Object.fromEntries(header.map((name, index) => [name, rows[row - 1]?.[index] ?? '']));
}

describe('writeFindingsCsv', () => {
  it('writes place, numbers in mm and inch, message and cures', () => {
    expect(cells(csv([corner]))).toEqual({
      key: 'inside-corner/blank-1-die/1',
      weight: 'decide',
      code: 'inside-corner',
      member: 'blank-1-die',
      'x (mm)': '25.4000',
      'y (mm)': '-12.7000',
      title: 'Sharp inside corner, 90°',
      'numbers (mm)': 'remainder = 0.06213 mm; corner = 90.000°; area = 0.004829 mm²; places = 4',
      'numbers (inch)': 'remainder = 0.002446 in; corner = 90.000°; area = 0.00000748 in²; places = 4',
      message: 'The wire leaves 0.0621 mm, "a fillet".',
      cures: 'Round the corner.',
      'settled because': '',
    });
  });

  it('gives the place in the unit of the job', () => {
    const row = cells(csv([corner], { unit: 'inch' }));
    expect([row['x (inch)'], row['y (inch)']]).toEqual(['1.00000', '-0.50000']);
  });

  it('gives the reason of a settled finding, but none for one that cannot be settled', () => {
    const settled = { [corner.key]: { reason: 'Customer agrees.' } };
    expect(cells(csv([corner], { settled }))['settled because']).toBe('Customer agrees.');
    const stop: Finding = { ...corner, weight: 'stop' };
    expect(cells(csv([stop], { settled }))['settled because']).toBe('');
  });

  it('leaves the place empty where there is none, and is only a header without findings', () => {
    const row = cells(csv([{ ...corner, place: null, memberId: null }]));
    expect([row['x (mm)'], row['member']]).toEqual(['', '']);
    expect(readCsv(csv([]))).toHaveLength(1);
  });

  it.each(['=1+1', '+1', '-1+cmd', '@SUM(A1)', ' =1', '\t=1', '|x'])(
    'does not let a spreadsheet run %j',
    (reason) => {
      const settled = { [corner.key]: { reason } };
      expect(cells(csv([corner], { settled }))['settled because']).toBe(`'${reason}`);
    },
  );

  it('brings every text through a reader of RFC 4180 unchanged', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string({ unit: 'binary' }), (title, message) => {
        const row = cells(csv([{ ...corner, title, message }]));
        expect([title, `'${title}`]).toContain(row['title']);
        expect([message, `'${message}`]).toContain(row['message']);
      }),
    );
  });
});
