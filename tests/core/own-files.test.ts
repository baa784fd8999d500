import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { neutralStyle, rs274Style } from '../../core/neutral-style';
import { sayProblem, type Result } from '../../core/problem';
import { styleFormat, styleVersion } from '../../core/program-style';
import { shippedTechnology } from '../../core/shipped-technology';
import { readStyleFile } from '../../core/style-file';
import { readTechnologyFile, writeTechnologyFile } from '../../core/technology-file';

const said = (result: Result<unknown>): string => (result.ok ? 'ok' : sayProblem(result.problem));

const text = writeTechnologyFile(shippedTechnology);

describe('technology files', () => {
  it('read back as they were written', () => {
    const read = readTechnologyFile(text);
    expect(read).toEqual({ ok: true, value: shippedTechnology });
    expect(read.ok && writeTechnologyFile(read.value)).toBe(text);
  });

  it('may be written by hand, with comments, a trailing comma and a byte order mark', () => {
    const byHand = `\u{feff}// our table\n${text.replace('"rows": [', '/* all of them */ "rows": [').replace(/\}\s*$/, ',}')}`;
    expect(readTechnologyFile(byHand)).toEqual({ ok: true, value: shippedTechnology });
  });

  it('of another kind, newer or no file at all get a sentence', () => {
    expect(said(readTechnologyFile(''))).toBe(
      'The technology table cannot be read: it is not whole, or a sign is missing or too many (line 1). Correct the line, or open another copy.',
    );
    const job = '{ "format": "diewright-job", "version": 1 }';
    expect(said(readTechnologyFile(job))).toContain('This is not a Diewright technology table.');
    expect(said(readTechnologyFile(text.replace('"version": 1', '"version": 2')))).toContain(
      'was saved by a newer Diewright (version 2, this one reads 1)',
    );
    expect(said(readTechnologyFile('['.repeat(100_000)))).toContain('cannot be read');
  });

  it('with a wrong field name the field, what it must be, and the line', () => {
    const fast = text.replace('"rate": 80', '"rate": "fast"');
    const line = fast.split('\n').findIndex((one) => one.includes('"fast"')) + 1;
    expect(said(readTechnologyFile(fast))).toBe(
      `The technology table has a value that cannot be used: rows[1].passes[1].rate must be a number (line ${line}). Correct it there, or open another copy.`,
    );
    expect(said(readTechnologyFile(text.replace('"rate": 80', '"rate": 0')))).toContain(
      'rows[1].passes[1].rate must be more than 0',
    );
    expect(said(readTechnologyFile(text.replace('"rate": 80,', '')))).toContain(
      'rows[1].passes[1].rate is missing',
    );
    expect(said(readTechnologyFile(text.replace('"rate": 80', '"speed": 1, "rate": 80')))).toContain(
      'rows[1].passes[1] has "speed", which is not known here',
    );
    expect(said(readTechnologyFile(text.replace(/"rows": \[[^]*\]/, '"rows": 5')))).toContain(
      'rows must be a list in square brackets',
    );
  });

  it('with rows that contradict each other or cut air are refused', () => {
    const [first] = shippedTechnology.rows;
    if (!first) throw new Error('no row');
    const twice = writeTechnologyFile({ ...shippedTechnology, rows: [...shippedTechnology.rows, first] });
    expect(said(readTechnologyFile(twice))).toContain('two rows for the same wire and height (row 21:');
    const leaves = { ...first, passes: first.passes.slice(0, 1) };
    expect(said(readTechnologyFile(writeTechnologyFile({ ...shippedTechnology, rows: [leaves] })))).toContain(
      'The last pass leaves stock on the member (row 1: 0.3 mm (0.01181 in) wire up to 10 mm (0.3937 in), pass 1)',
    );
  });

  it('damaged anywhere never throw: each is read or gets a sentence', () => {
    const damage = fc.tuple(fc.nat(text.length), fc.nat(40), fc.string({ maxLength: 6 }));
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), (places) => {
        let damaged = text;
        for (const [at, cut, put] of places) damaged = damaged.slice(0, at) + put + damaged.slice(at + cut);
        const read = readTechnologyFile(damaged);
        if (!read.ok) expect(sayProblem(read.problem).length).toBeGreaterThan(40);
      }),
      { numRuns: 300 },
    );
  });
});

describe('program style files', () => {
  const fileOf = (style: object) => JSON.stringify({ format: styleFormat, version: styleVersion, ...style });

  it('read back as they were written', () => {
    for (const style of [neutralStyle, rs274Style]) {
      expect(readStyleFile(fileOf(style))).toEqual({ ok: true, value: style });
    }
  });

  it.each([
    [{ ...neutralStyle, arcs: 'R' }, 'arcs must be "centre" or "radius"'],
    [{ ...neutralStyle, name: '' }, 'name must have at least 1 character'],
    [{ ...neutralStyle, start: ['G17\nG90'] }, 'start[1] must be printable ASCII on one line'],
    [{ ...neutralStyle, start: ['Ü'] }, 'start[1] must be printable ASCII on one line'],
    [{ ...neutralStyle, spaces: 1 }, 'spaces must be true or false'],
    [
      { ...neutralStyle, numbers: { ...neutralStyle.numbers, mmDecimals: 2 } },
      'numbers.mmDecimals must be at least 3',
    ],
    [
      { ...neutralStyle, numbers: { ...neutralStyle.numbers, mmDecimals: 4.5 } },
      'numbers.mmDecimals must be a whole number',
    ],
    [{ ...neutralStyle, start: Array<string>(21).fill('G90') }, 'start must have at most 20 entries'],
    [{ ...neutralStyle, offsets: null }, 'offsets must be a group in braces'],
  ])('with a wrong value say so: %#', (style, sentence) => {
    expect(said(readStyleFile(fileOf(style)))).toContain(sentence);
  });
});
