import { describe, expect, it } from 'vitest';
import { newJob } from '../../../core/job';
import { changeJob } from '../../../electron/cli/change-job';
import { readArguments } from '../../../electron/cli/read-arguments';

const job = newJob('bracket.dxf', '');

function changed(...argv: string[]) {
  const read = readArguments(['bracket.dxf', '--out', 'made', ...argv]);
  if (!read.ok) throw new Error(read.problem.what);
  return changeJob(job, read.value.changes);
}

describe('what the sheets state, on the command line', () => {
  it('revision, date and page as they are typed', () => {
    const result = changed('--revision', 'C', '--date', '3 Dec 2026', '--page', 'Letter');
    expect(result.ok && result.value.sheet).toEqual({
      revision: 'C',
      date: '3 Dec 2026',
      page: 'letter',
      charts: [],
    });
  });

  it('overlay charts of the part, one for each magnification', () => {
    const result = changed('--charts', '10,31.25');
    expect(result.ok && result.value.sheet.charts).toEqual([
      { target: 'part', magnification: 10 },
      { target: 'part', magnification: 31.25 },
    ]);
  });

  it.each([
    ['--page', 'A5', '"A5" is no page size'],
    ['--charts', '10,12', '"12" is no magnification of an overlay chart'],
    ['--charts', '', '"" is no magnification of an overlay chart'],
  ])('%s %s is refused', (option, text, what) => {
    const result = changed(`${option}=${text}`);
    expect(result.ok ? null : result.problem).toMatchObject({ code: 'option-value', what, where: option });
  });
});
