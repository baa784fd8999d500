import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { tolerance } from '../../core/geometry/tolerance';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const notes = read('DEVELOPERS.md');

it('the tolerance table has every tolerance with its size, and no other', () => {
  const rows = [...notes.matchAll(/^\| `(\w+)` +\| ([\de.-]+) +\|/gm)].map(([, name, size]) => [
    name,
    Number(size),
  ]);
  expect(Object.fromEntries(rows)).toEqual(tolerance);
});

it('every dependency has its reason, and no reason is left over', () => {
  const table = notes.slice(notes.indexOf('## Dependencies'));
  const named = [...table.matchAll(/^\| ([a-z@][^|]*?) +\|/gm)]
    .flatMap(([, names]) => (names ?? '').split(', '))
    .filter((name) => name !== 'package');
  const { devDependencies, dependencies = {} } = JSON.parse(read('package.json')) as {
    devDependencies: Record<string, string>;
    dependencies?: Record<string, string>;
  };
  const used = [...Object.keys(devDependencies), ...Object.keys(dependencies)].filter(
    (name) => !name.startsWith('@types/'),
  );
  expect(named.sort()).toEqual(used.sort());
});

it('the lock file names no download address', () => {
  expect(read('package-lock.json')).not.toMatch(/"resolved": "http/);
});
