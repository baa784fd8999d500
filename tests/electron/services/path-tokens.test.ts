import { expect, test } from 'vitest';
import { createPathTokens } from '../../../electron/services/path-tokens';

test('a token stands for its path and only for it', () => {
  const tokens = createPathTokens();
  const token = tokens.tokenFor('/jobs/a.json');
  expect(token).toMatch(/^[0-9a-f]{32}$/);
  expect(tokens.tokenFor('/jobs/a.json')).toBe(token);
  expect(tokens.tokenFor('/jobs/b.json')).not.toBe(token);
  expect(tokens.pathOf(token)).toBe('/jobs/a.json');
  expect(tokens.pathOf('/jobs/a.json')).toBeNull();
  expect(createPathTokens().pathOf(token)).toBeNull();
});
