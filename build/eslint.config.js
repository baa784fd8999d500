import tseslint from 'typescript-eslint';

const noDefaultExport = {
  selector: 'ExportDefaultDeclaration',
  message: 'Named exports only: a name that is the same everywhere can be searched for.',
};

const noSmallLiteral = {
  selector: 'Literal[raw=/^[0-9.]/][value>0][value<0.001]',
  message: 'A tolerance: name it, with the reason for its size, in core/geometry/tolerance.ts.',
};

/** The last digits of these are the engine's own; powers and roots that IEEE 754 rounds exactly are not among them. */
const enginesOwn = [
  ...['sin', 'cos', 'tan', 'asin', 'acos', 'atan', 'atan2', 'sinh', 'cosh', 'tanh', 'cbrt', 'exp', 'expm1'],
  ...['log', 'log2', 'log10', 'log1p', 'pow'],
].map((property) => ({
  object: 'Math',
  property,
  message: 'Same input, same bytes on every host: take it from geometry/portable-math.',
}));
const noRandom = {
  object: 'Math',
  property: 'random',
  message: 'Same input, same bytes: core knows no randomness.',
};

// Mistakes that the compiler does not see.
const plainMistakes = Object.fromEntries(
  [
    'eqeqeq',
    'no-async-promise-executor',
    'no-cond-assign',
    'no-constant-condition',
    'no-debugger',
    'no-dupe-else-if',
    'no-duplicate-case',
    'no-empty',
    'no-loss-of-precision',
    'no-self-assign',
    'no-self-compare',
    'no-sparse-arrays',
    'no-unsafe-finally',
    'no-unsafe-optional-chaining',
    'no-useless-catch',
    'no-var',
    'prefer-const',
    'use-isnan',
    'valid-typeof',
  ].map((rule) => [rule, 'error']),
);

// The order matters: later entries narrow or widen earlier ones.
export default tseslint.config(
  { ignores: ['dist/**', 'out/**', 'node_modules/**', 'tests/fixtures/**'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  {
    files: ['**/*.{ts,tsx}'],
    extends: tseslint.configs.recommendedTypeChecked,
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      ...plainMistakes,
      'max-lines': ['error', { max: 300 }],
      'no-restricted-syntax': ['error', noDefaultExport],
      // The compiler's noUnusedLocals and noUnusedParameters say the same.
      '@typescript-eslint/no-unused-vars': 'off',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'error',
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true, requireDefaultForNonUnion: true },
      ],
      '@typescript-eslint/consistent-type-imports': [
        'error',
        { fixStyle: 'inline-type-imports', disallowTypeAnnotations: false },
      ],
      '@typescript-eslint/require-await': 'off',
      // React's event properties may be given an async function: what it throws reaches window.onunhandledrejection.
      '@typescript-eslint/no-misused-promises': ['error', { checksVoidReturn: { attributes: false } }],
    },
  },
  {
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        { name: 'Date', message: 'Same input, same bytes: a date is an argument.' },
        { name: 'console', message: 'Core says things by what it returns.' },
      ],
      'no-restricted-properties': ['error', noRandom, ...enginesOwn],
      'no-restricted-syntax': ['error', noDefaultExport, noSmallLiteral],
    },
  },
  {
    // tolerance.ts is where tolerances live; units.ts holds the sizes of units and portable-math.ts the coefficients of
    // series, which are definitions and no tolerances.
    files: ['core/geometry/tolerance.ts', 'core/geometry/portable-math.ts', 'core/units.ts'],
    rules: { 'no-restricted-syntax': ['error', noDefaultExport] },
  },
  {
    // Matchers and parsed JSON are typed `any` by their libraries; a wrong assumption about them fails the test itself.
    files: ['tests/**/*.{ts,tsx}'],
    rules: {
      '@typescript-eslint/no-unsafe-assignment': 'off',
      '@typescript-eslint/no-unsafe-member-access': 'off',
      '@typescript-eslint/no-unsafe-argument': 'off',
      '@typescript-eslint/no-unsafe-call': 'off',
      '@typescript-eslint/no-unsafe-return': 'off',
      '@typescript-eslint/unbound-method': 'off',
    },
  },
  {
    // The tools ask for a default export.
    files: ['build/*.config.{ts,js}'],
    rules: { 'no-restricted-syntax': 'off' },
  },
  {
    files: ['**/*.{js,mjs,cjs}'],
    rules: { ...plainMistakes, 'max-lines': ['error', { max: 300 }] },
  },
);
