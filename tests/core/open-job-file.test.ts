import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobVersion, newJob } from '../../core/job';
import { readJobFile, writeJobFile } from '../../core/job-file';
import { openJobFile, type OpenedJob } from '../../core/open-job-file';
import { createPipeline } from '../../core/pipeline';

const job = newJob('shelf-clip.dxf', '0\nEOF\n');
const text = writeJobFile(job);
type Loose = Record<string, unknown> &
  Record<'wire' | 'stock', Record<string, unknown>> & { passes: unknown[] };
const changed = (change: (value: Loose) => void): string => {
  const value = JSON.parse(text) as Loose;
  change(value);
  return JSON.stringify(value);
};
const opened = (source: string): OpenedJob => {
  const result = openJobFile(source);
  if (!result.ok) throw new Error(result.problem.what);
  return result.value;
};

describe('job files of the past', () => {
  it('the first form of version 1 opens whole, with the values it was saved with', () => {
    const first = readFileSync(
      new URL('../fixtures/jobs/version-1-first-form.diewright.json', import.meta.url),
      'utf8',
    );
    const { job: read, dropped, isNewer } = opened(first);
    expect(dropped).toEqual([]);
    expect(isNewer).toBe(false);
    expect(read).toMatchObject({
      name: 'shelf-clip',
      stock: { material: 'brass', thickness: 0.8 },
      wire: { diameter: 0.2 },
      passes: [
        { sparkGap: 0.025, stockLeft: 0.01 },
        { sparkGap: 0.02, stockLeft: 0 },
      ],
      corners: { punch: { outside: { rule: 'match' } } },
      output: { unit: 'inch', program: 'compensated' },
      settled: { 'some-finding': { reason: 'as agreed with the customer' } },
    });
    const plan = createPipeline().plan(read);
    expect(plan.ok && plan.value.pairs).toHaveLength(1);
    expect(readJobFile(writeJobFile(read))).toEqual({ ok: true, value: read });
  });
});

describe('a newer job file', () => {
  it('opens, is said to be newer, and names what is not taken over', () => {
    const newer = opened(
      changed((value) => {
        value['version'] = jobVersion + 1;
        value['cooling'] = 'oil';
        value.wire['colour'] = 'yellow';
      }),
    );
    expect(newer.isNewer).toBe(true);
    expect(newer.job).toEqual(job);
    expect(newer.dropped.join('; ')).toMatch(/cooling.*colour|colour.*cooling/);
  });
});

describe('a damaged job file', () => {
  it('a wrong value gives way to that of a new job, and a wrong entry is left out; each is said', () => {
    const { job: read, dropped } = opened(
      changed((value) => {
        value.wire['diameter'] = -1;
        value.stock['thickness'] = 'thick';
        value['settled'] = { one: { reason: '' }, two: { reason: 'agreed' } };
        value['uses'] = { 'blank-1': 'blank', 'blank-2': 'nibble' };
      }),
    );
    expect(read).toEqual({ ...job, settled: { two: { reason: 'agreed' } }, uses: { 'blank-1': 'blank' } });
    // The entry without its reason goes as a whole, after the schema has taken its reason out: two sentences.
    expect(dropped).toHaveLength(5);
    expect(dropped.join('\n')).toContain('wire.diameter must be more than 0; 0.25 is used instead');
    expect(dropped.join('\n')).toContain('stock.thickness must be a number; 1 is used instead');
  });

  it('several wrong entries of one list go, and the right ones stay', () => {
    const { job: read } = opened(
      changed((value) => {
        const [pass] = value.passes;
        value.passes.push({ no: 1 }, 'pass', pass);
      }),
    );
    expect(read.passes).toEqual([...job.passes, job.passes[0]]);
  });

  it('breaks off after the drawing: what was there is kept', () => {
    const { job: read, dropped } = opened(
      text.slice(0, text.indexOf('"clearance"')).replace('"thickness": 1', '"thickness": 2'),
    );
    expect(read).toMatchObject({ drawing: job.drawing, stock: { ...job.stock, thickness: 2 } });
    expect(dropped[0]).toContain('breaks off');
  });

  it.each([
    ['breaks off in the drawing', text.slice(0, text.indexOf('EOF'))],
    ['has no drawing', changed((value) => delete value['drawing'])],
    ['is no job', '{"format": "something"}'],
    ['is empty', ''],
    ['is nothing but brackets', '['.repeat(100_000)],
  ])('%s: no job, and a sentence', (_name, source) => {
    const result = openJobFile(source);
    expect(result.ok).toBe(false);
    expect(!result.ok && result.problem.whatToDo).not.toBe('');
  });

  it('never throws, and what it opens is a job that saves and reads again', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(40), fc.string({ maxLength: 6 }), (at, length, instead) => {
        const result = openJobFile(text.slice(0, at) + instead + text.slice(at + length));
        if (result.ok) expect(readJobFile(writeJobFile(result.value.job)).ok).toBe(true);
      }),
      { numRuns: 300, seed: 11 },
    );
  });
});
