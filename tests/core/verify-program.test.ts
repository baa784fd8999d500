import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readProgram } from '../../core/check/read-program';
import { fingerprint } from '../../core/fingerprint';
import type { Job } from '../../core/job';
import { openSeal, sealProgram } from '../../core/output/program-seal';
import { createPipeline } from '../../core/pipeline';
import { programDialectOf } from '../../core/program-dialect-of';
import { shippedStyles } from '../../core/shipped-styles';
import { jobOn } from '../support/dxf-of';
import { roundedRectangle, square } from '../support/shapes';

const pipeline = createPipeline();

function filesOf(job: Job) {
  const files = pipeline.files(job);
  if (!files.ok) throw new Error(files.problem.what);
  return files.value.map(({ name, text }) => ({ name, text: String(text) }));
}

/** A job that is released as it is, or with its findings settled. */
function releasedJob(changes: Partial<Job> = {}, contour = roundedRectangle(20, 10, 1)): Job {
  const job = jobOn([contour], changes);
  const planned = pipeline.plan(job);
  if (!planned.ok) throw new Error(planned.problem.what);
  const open = planned.value.findings.filter(({ weight }) => weight === 'decide');
  return { ...job, settled: Object.fromEntries(open.map(({ key }) => [key, { reason: 'agreed' }])) };
}

const programsOf = (job: Job) => filesOf(job).filter(({ name }) => name.endsWith('.nc'));

function verdictOn(job: Job, text: string) {
  const verdict = pipeline.verify(job, text);
  if (!verdict.ok) throw new Error(verdict.problem.what);
  return verdict.value;
}

describe('a released program', () => {
  const job = releasedJob();
  const programs = programsOf(job);

  it('belongs to its job, whatever its style', () => {
    for (const style of Object.values(shippedStyles)) {
      for (const unit of ['mm', 'inch'] as const) {
        const styled = releasedJob({ output: { unit, program: 'wire centre', style } });
        const written = programsOf(styled);
        expect(written).toHaveLength(2);
        for (const { name, text } of written) {
          expect(name).not.toContain('DRAFT');
          const verdict = verdictOn(styled, text);
          expect(verdict).toMatchObject({ belongs: true, say: 'It belongs to this job.' });
          expect(name).toContain(verdict.blockId ?? 'no block');
        }
      }
    }
  });

  it('says the same moves with its seal and without', () => {
    for (const style of Object.values(shippedStyles)) {
      for (const { text } of programsOf(
        releasedJob({ output: { unit: 'mm', program: 'compensated', style } }),
      )) {
        const dialect = programDialectOf(style);
        const bare = openSeal(text)?.program;
        expect(bare).toBeDefined();
        expect(text).not.toBe(bare);
        const [sealed, unsealed] = [readProgram(text, dialect), readProgram(bare ?? '', dialect)];
        if (!sealed.ok || !unsealed.ok) throw new Error('not read');
        // All but the number of lines, which grows by the seal's own.
        expect({ ...sealed.value, lines: 0 }).toEqual({ ...unsealed.value, lines: 0 });
      }
    }
  });

  it('is known after a transfer that changes the ends of its lines', () => {
    for (const { text } of programs) {
      expect(verdictOn(job, text.replaceAll('\n', '\r\n')).belongs).toBe(true);
    }
  });

  it('does not belong once any of its words is changed', () => {
    const [{ text } = { text: '' }] = programs;
    fc.assert(
      fc.property(
        fc.nat(text.toLowerCase().indexOf('diewright seal') - 2),
        fc.constantFrom('0', '9', 'X', ' ', '-', ''),
        (at, sign) => {
          const changed = text.slice(0, at) + sign + text.slice(at + 1);
          fc.pre(changed !== text && changed.toLowerCase() !== text.toLowerCase());
          expect(verdictOn(job, changed).belongs).toBe(false);
        },
      ),
      { numRuns: 300 },
    );
    const { job: print } = sealIn(text);
    expect(
      verdictOn(job, text.replace(print.toUpperCase(), fingerprint('another').toUpperCase())).belongs,
    ).toBe(false);
    expect(verdictOn(job, text.replace('X', 'X-')).say).toContain('changed after it was released');
    expect(verdictOn(job, text.split('\n').slice(0, -3).join('\n')).say).toContain('no seal');
  });

  it('does not belong to a job that would cut otherwise, and the seal says what has changed', () => {
    const [{ text } = { text: '' }] = programs;
    const otherWire = { ...job, wire: { diameter: 0.2 } };
    expect(verdictOn(otherWire, text)).toMatchObject({ belongs: false });
    expect(verdictOn({ ...job, clearance: { rule: 'typed', perSide: 0.05 } }, text).say).toContain(
      'The job was changed after this program was released',
    );
    const other = jobOn([roundedRectangle(21, 10, 1)], { settled: job.settled });
    expect(verdictOn(other, text).say).toContain('another drawing');
    const before = sealProgram(
      `(Another writer)\n${openSeal(text)?.program}`,
      sealIn(text),
      job.output.style,
    );
    expect(verdictOn(job, before).say).toContain('Another version of Diewright');
  });

  it('still belongs where the job was changed in nothing that it says', () => {
    const [{ text } = { text: '' }] = programs;
    const dated = { ...job, sheet: { ...job.sheet, revision: 'B' } };
    expect(verdictOn(dated, text)).toMatchObject({ belongs: true });
    expect(verdictOn(dated, text).say).toContain('in nothing that this program says');
  });

  it('is not to be run while the job has findings open', () => {
    const open = jobOn([square(20)], { clearance: { rule: 'typed', perSide: 0.2 } });
    const settled = releasedJob({ clearance: { rule: 'typed', perSide: 0.2 } }, square(20));
    expect(Object.keys(settled.settled).length).toBeGreaterThan(0);
    const [{ text } = { text: '' }] = programsOf(settled);
    expect(verdictOn(settled, text).belongs).toBe(true);
    expect(verdictOn(open, text).say).toContain('findings open');
    const [draft] = programsOf(open);
    expect(draft?.name).toContain('DRAFT');
    expect(openSeal(draft?.text ?? '')).toBeNull();
    expect(verdictOn(open, draft?.text ?? '').say).toContain('draft');
  });
});

const sealIn = (text: string) => {
  const seal = openSeal(text);
  if (!seal) throw new Error('no seal');
  return { job: seal.job, drawing: seal.drawing };
};

it('short comments and capitals carry the seal too', () => {
  const style = {
    comments: { signs: 'semicolon', longest: 20, upperCase: true },
    after: ['%'],
    lineEnd: 'CRLF',
  } as const;
  const seal = { job: fingerprint('job'), drawing: fingerprint('drawing') };
  const text = '%\r\nG1 X1\r\nM02\r\n%\r\n';
  const sealed = sealProgram(text, seal, { ...style, after: [...style.after] });
  expect(sealed.endsWith('\r\n%\r\n')).toBe(true);
  expect(openSeal(sealed)).toMatchObject({ ...seal, isWhole: true, program: text.replaceAll('\r\n', '\n') });
});

it('a fingerprint is the beginning of the SHA-256 that Node computes (OpenSSL)', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), fc.string({ unit: 'binary' }), (bytes, text) => {
      expect(fingerprint(bytes)).toBe(createHash('sha256').update(bytes).digest('hex').slice(0, 32));
      expect(fingerprint(text)).toBe(createHash('sha256').update(text, 'utf8').digest('hex').slice(0, 32));
    }),
  );
});
