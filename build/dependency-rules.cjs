/**
 * The layers of the program, for dependency-cruiser. One table says what each room of core may import; every rule
 * about core is made from it. Types count as imports: a cycle of types is a cycle.
 */
const mayImport = {
  geometry: [],
  drawing: ['geometry'],
  die: ['geometry'],
  wire: ['geometry', 'die'],
  check: ['geometry', 'die', 'wire'],
  inspect: ['geometry', 'die', 'wire'],
  output: ['geometry', 'drawing', 'die', 'wire', 'check', 'inspect'],
};

const rooms = Object.keys(mayImport);

// Leaves at the top of core that a room may lean on: words that every room needs.
const leaves = [
  'cut-settings',
  'problem',
  'finding',
  'finding-of',
  'units',
  'say',
  'say-time',
  'technology',
  'shipped-technology',
  'program-style',
  'neutral-style',
  'last-decimal',
  'fingerprint',
  'rounded-length',
  'inspection-settings',
  'part-name',
];

// plan.ts holds types only; the rooms that make or read a part of the plan may name them.
const planReaders = ['die', 'wire', 'check', 'inspect', 'output'];
const jobReaders = ['output'];

const coreFiles = (room) => [
  ...(room === 'geometry' ? [] : leaves),
  ...(planReaders.includes(room) ? ['plan'] : []),
  ...(jobReaders.includes(room) ? ['job', 'job-file', 'shop-values'] : []),
];

const allowedTargets = (room) => [
  ...[room, ...mayImport[room]].map((name) => `^core/${name}/`),
  ...coreFiles(room).map((name) => `^core/${name}\\.ts$`),
];

const roomRules = rooms.map((room) => ({
  name: `core-${room}-looks-left-only`,
  severity: 'error',
  from: { path: `^core/${room}/` },
  to: { path: '^core/', pathNot: allowedTargets(room) },
}));

const coreLibraries = [
  'flatbush',
  'flatqueue',
  'zod',
  'jsonc-parser',
  'dxf-parser',
  'clipper-lib',
  '@tarikjabiri/dxf',
  'jspdf',
  'jspdf-autotable',
  '@noble/hashes',
];

/** Matches a package by its folder, also where its types live under @types. */
const packages = (...names) => names.map((name) => `node_modules/(@types/)?${name}/`);

const only = (name, from, to, extra = {}) => ({ name, severity: 'error', from, to: { ...to, ...extra } });

module.exports = {
  forbidden: [
    only('no-cycle', {}, { circular: true }),
    only('everything-resolves', {}, { couldNotResolve: true }),
    ...roomRules,
    only(
      'core-leaves-are-leaves',
      { path: leaves.map((name) => `^core/${name}\\.ts$`) },
      {
        path: '^core/',
        pathNot: ['^core/geometry/portable-math\\.ts$', ...leaves.map((name) => `^core/${name}\\.ts$`)],
      },
    ),
    only(
      'core-job-and-plan-stand-below-the-pipeline',
      { path: '^core/(job|job-file|plan)\\.ts$' },
      { path: ['^core/(pipeline|index)\\.ts$', '^core/(output|check|inspect)/'] },
    ),
    only('core-plan-is-types-only', { path: '^core/plan\\.ts$' }, { dependencyTypesNot: ['type-only'] }),
    only(
      'core-plan-is-imported-as-types',
      { path: rooms.map((room) => `^core/${room}/`) },
      { path: '^core/plan\\.ts$', dependencyTypesNot: ['type-only'] },
    ),
    only('core-has-no-barrel-inside', { path: '^core/' }, { path: '^core/index\\.ts$' }),
    only('core-imports-core-only', { path: '^core/' }, { path: '^(renderer|electron|tests|build|samples)/' }),
    only('core-has-no-node', { path: '^core/' }, { dependencyTypes: ['core'] }),
    only(
      'core-has-few-libraries',
      { path: '^core/' },
      { path: 'node_modules/', pathNot: packages(...coreLibraries) },
    ),
    only(
      'clipper-only-in-check',
      { path: '^core/', pathNot: '^core/check/' },
      { path: packages('clipper-lib') },
    ),
    only(
      'dxf-parser-only-in-drawing',
      { path: '^core/', pathNot: '^core/drawing/' },
      { path: packages('dxf-parser') },
    ),
    only(
      'clipper-and-dxf-parser-not-outside-core',
      { path: '^(renderer|electron)/' },
      { path: packages('clipper-lib', 'dxf-parser') },
    ),
    only(
      'renderer-sees-core-and-the-contract',
      { path: '^renderer/' },
      { path: '^(electron|tests|build|samples)/', pathNot: '^electron/contract/' },
    ),
    only('renderer-has-no-node', { path: '^renderer/' }, { dependencyTypes: ['core'] }),
    only(
      'konva-only-in-canvas',
      { path: '^renderer/', pathNot: '^renderer/canvas/' },
      { path: packages('konva', 'react-konva') },
    ),
    only(
      'comlink-only-in-worker',
      { path: '^renderer/', pathNot: '^renderer/worker/' },
      { path: packages('comlink') },
    ),
    only(
      'pipeline-only-in-worker',
      { path: '^renderer/', pathNot: '^renderer/worker/' },
      { path: '^core/(pipeline|index)\\.ts$', dependencyTypesNot: ['type-only'] },
    ),
    only(
      'contract-is-plain',
      { path: '^electron/contract/' },
      { pathNot: ['^electron/contract/', '^core/problem\\.ts$'] },
    ),
    only('electron-sees-core', { path: '^electron/' }, { path: '^(renderer|tests|build|samples)/' }),
    only(
      'electron-package-only-in-the-shell',
      { path: '^electron/', pathNot: '^electron/(main|preload)/' },
      { path: packages('electron') },
    ),
    only(
      'preload-is-thin',
      { path: '^electron/preload/' },
      { pathNot: ['^electron/contract/', ...packages('electron')] },
    ),
    only(
      'services-stand-alone',
      { path: '^electron/services/' },
      { path: '^electron/', pathNot: '^electron/(services|contract)/' },
    ),
    only(
      'shells-do-not-know-each-other',
      { path: '^electron/(main|local-window|cli)/' },
      { path: '^electron/(main|local-window|cli)/', pathNot: '^electron/$1/' },
    ),
    only(
      'program-does-not-import-its-tests',
      { path: '^(core|renderer|electron|build)/' },
      { path: '^tests/' },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.cjs', '.js', '.json', '.css', '.d.ts'],
    },
    moduleSystems: ['es6', 'cjs'],
  },
};
