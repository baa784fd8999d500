import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { exampleStyle } from '../../core/example-style';
import { neutralStyle } from '../../core/neutral-style';
import { programStyleSchema, type ProgramStyle } from '../../core/program-style';
import { shippedTechnology } from '../../core/shipped-technology';
import { styleComments } from '../../core/style-comments';
import { readStyleFile } from '../../core/style-file';
import { readTechnologyFile } from '../../core/technology-file';
import { writeStyleFile } from '../../core/write-style-file';
import { anyStyle } from '../support/any-style';

const pathsOf = (value: object, path = ''): string[] =>
  Object.entries(value).flatMap(([key, inner]: [string, unknown]) => {
    const name = path === '' ? key : `${path}.${key}`;
    const isGroup = typeof inner === 'object' && inner !== null && !Array.isArray(inner);
    return [name, ...(isGroup ? pathsOf(inner, name) : [])];
  });

const sample = (name: string) => readFileSync(new URL(`../../samples/${name}`, import.meta.url), 'utf8');

describe('style files', () => {
  it('read back as they were written, whatever the style', () => {
    fc.assert(
      fc.property(anyStyle, (style) => {
        expect(readStyleFile(writeStyleFile(style))).toEqual({ ok: true, value: style });
      }),
    );
  });

  it('have a comment for every value, and no comment is left over', () => {
    expect(Object.keys(styleComments).sort()).toEqual(['format', 'version', ...pathsOf(neutralStyle)].sort());
    const lines = writeStyleFile(exampleStyle).split('\n');
    lines.forEach((line, k) => {
      if (/^\s*"/.test(line)) expect(lines[k - 1]).toMatch(/^\s*\/\//);
      expect(line.length).toBeLessThanOrEqual(125);
    });
  });

  it('say of every value what the schema allows: its limits and its words', () => {
    const said = (path: string) => (styleComments[path] ?? []).join(' ');
    for (const words of ['always', 'where needed', 'implied'])
      expect(said('numbers.point')).toContain(`"${words}"`);
    for (const [path, low, high] of [
      ['numbers.mmDecimals', 3, 6],
      ['numbers.inchDecimals', 4, 7],
      ['lineNumbers.first', 0, 999],
      ['lineNumbers.step', 1, 100],
      ['lineNumbers.digits', 3, 8],
      ['comments.longest', 20, 200],
      ['feed.mmDecimals', 0, 4],
      ['feed.inchDecimals', 1, 6],
    ] as const) {
      expect(said(path)).toContain(`${low} to ${high}`);
      const allowed = (value: number) => programStyleSchema.safeParse(withValue(path, value)).success;
      expect([allowed(low - 1), allowed(low), allowed(high), allowed(high + 1)]).toEqual([
        false,
        true,
        true,
        false,
      ]);
    }
  });
});

function withValue(path: string, value: number): ProgramStyle {
  const [group, key] = path.split('.') as ['numbers', string];
  return { ...neutralStyle, [group]: { ...neutralStyle[group], [key]: value } };
}

describe('the samples', () => {
  it('hold the example style and the shipped technology table as they are', () => {
    expect(sample('workshop-example.diewright-style.json')).toBe(writeStyleFile(exampleStyle));
    expect(readTechnologyFile(sample('starting-values.diewright-technology.json'))).toEqual({
      ok: true,
      value: shippedTechnology,
    });
  });
});
