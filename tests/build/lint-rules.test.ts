import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import { beforeAll, expect, test } from 'vitest';

const top = fileURLToPath(new URL('../..', import.meta.url));
let eslint: ESLint;

beforeAll(() => {
  eslint = new ESLint({
    cwd: top,
    overrideConfigFile: `${top}build/eslint.config.js`,
    // The files of these tests are on no disk: rules that need the compiler's knowledge get it from a default project.
    overrideConfig: {
      files: ['**/*.ts'],
      languageOptions: {
        parserOptions: {
          tsconfigRootDir: top,
          projectService: {
            allowDefaultProject: ['core/lint-test.ts', 'electron/lint-test.ts'],
            defaultProject: 'build/tsconfig.base.json',
          },
        },
      },
    },
  });
});

async function rulesBroken(path: string, code: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(code, { filePath: `${top}${path}` });
  return (result?.messages ?? []).map(({ ruleId, message }) => ruleId ?? message);
}

test.each([
  ['core/lint-test.ts', 'export const gap = 0.0005;', 'no-restricted-syntax'],
  ['core/lint-test.ts', 'export const gap = 5e-4;', 'no-restricted-syntax'],
  ['core/lint-test.ts', 'export const gap = -1e-9;', 'no-restricted-syntax'],
  ['core/lint-test.ts', 'export const now = Date.now();', 'no-restricted-globals'],
  ['core/lint-test.ts', 'export const some = Math.random();', 'no-restricted-properties'],
  ['core/lint-test.ts', 'export const up = Math.sin(1);', 'no-restricted-properties'],
  ['core/lint-test.ts', "console.log('x');", 'no-restricted-globals'],
  ['electron/lint-test.ts', 'export default 1;', 'no-restricted-syntax'],
  ['electron/lint-test.ts', 'export const x: any = 1;', '@typescript-eslint/no-explicit-any'],
  ['electron/lint-test.ts', 'export const x = [1][0]!;', '@typescript-eslint/no-non-null-assertion'],
  ['electron/lint-test.ts', 'Promise.resolve(1);', '@typescript-eslint/no-floating-promises'],
  [
    'electron/lint-test.ts',
    "export function f(x: 'a' | 'b') { switch (x) { case 'a': return 1; } return 2; }",
    '@typescript-eslint/switch-exhaustiveness-check',
  ],
  ['electron/lint-test.ts', `${'//\n'.repeat(301)}export const x = 1;`, 'max-lines'],
])('%s: %j breaks %s', async (path, code, rule) => {
  expect(await rulesBroken(path, `${code}\n`)).toContain(rule);
});

test.each([
  ['core/lint-test.ts', 'export const zero = 0;\nexport const least = 0.001;\nexport const word = "0.0005";'],
  ['electron/lint-test.ts', 'export const small = 0.0005;\nexport const now = Date.now();'],
])('%s may hold %j', async (path, code) => {
  expect(await rulesBroken(path, `${code}\n`)).toEqual([]);
});

test('tolerance.ts may hold tolerances', async () => {
  expect(await eslint.lintFiles([`${top}core/geometry/tolerance.ts`])).toMatchObject([{ errorCount: 0 }]);
});
