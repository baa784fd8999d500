import { expect, test } from 'vitest';
import { clearLine, type Words } from '../../../renderer/canvas/layers/clear-line';

// What is expected is common practice: no words over others.
const words = (left: number, middle: number): Words => ({ left, right: left + 80, middle });

test('names of tools whose centres of pressure lie together stand under one another', () => {
  const first = clearLine(words(100, 50), []);
  const second = clearLine(words(110, 52), [first]);
  const third = clearLine(words(95, 49), [first, second]);
  expect(first).toEqual(words(100, 50));
  const heights = [first, second, third].map(({ middle }) => middle).sort((a, b) => a - b);
  expect((heights[1] ?? 0) - (heights[0] ?? 0)).toBeGreaterThanOrEqual(16);
  expect((heights[2] ?? 0) - (heights[1] ?? 0)).toBeGreaterThanOrEqual(16);
});

test('words beside or well below others stay where they are', () => {
  expect(clearLine(words(180, 50), [words(100, 50)])).toEqual(words(180, 50));
  expect(clearLine(words(100, 66), [words(100, 50)])).toEqual(words(100, 66));
});
