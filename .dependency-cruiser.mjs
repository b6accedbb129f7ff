/**
 * The folder map of src/README.md as rules: imports run downwards only, third parties stand in one
 * place each. `test/unit/tooling/importRules.test.ts` proves that each rule refuses what it should.
 */

/** Folders of the pure measuring core, lowest first, with what each may import besides itself. */
const CORE = {
  core: [],
  shot: ['core'],
  geometry: ['core'],
  clock: ['core'],
  image: ['core'],
  fit: ['core'],
  tracking: ['core', 'image', 'geometry', 'clock', 'fit'],
  uncertainty: ['core', 'fit'],
  series: ['core', 'shot', 'fit', 'uncertainty'],
  exit: ['core', 'fit', 'uncertainty', 'geometry', 'clock'],
  sound: ['core', 'uncertainty'],
  launch: ['core', 'fit', 'uncertainty'],
  compare: ['core', 'fit', 'uncertainty', 'launch'],
  seal: ['core', 'image', 'geometry', 'clock', 'fit', 'uncertainty'],
};
const coreFolders = [...Object.keys(CORE), 'reduction', 'plan'].map((name) => `src/${name}`);
const allBelowReduction = Object.keys(CORE).map((name) => `src/${name}`);

/** `may`: what a folder may import; `types`: what it may import with `import type` only. */
const FOLDERS = [
  ...Object.entries(CORE).map(([name, may]) => ({
    path: `src/${name}`,
    may: may.map((other) => `src/${other}`),
    // The shot and its result are the vocabulary of what measures them.
    types: ['geometry', 'clock', 'exit', 'seal', 'sound', 'uncertainty', 'launch'].includes(name)
      ? ['src/shot']
      : [],
  })),
  { path: 'src/reduction', may: allBelowReduction },
  {
    path: 'src/plan',
    may: ['core', 'shot', 'image', 'tracking', 'uncertainty', 'exit', 'launch', 'reduction'].map(
      (name) => `src/${name}`,
    ),
  },
  { path: 'src/footage', may: ['src/core'] },
  { path: 'src/protocol', may: ['src/core'], types: [...coreFolders, 'src/footage'] },
  { path: 'workers', may: ['src/protocol', 'src/footage', ...coreFolders] },
  {
    path: 'src/app',
    // Clock, scale and launcher are worked out as they are typed: arithmetic too small for a worker.
    may: [
      ...['src/protocol', 'src/core', 'src/shot', 'src/clock', 'src/geometry'],
      'src/launch/fromShot\\.ts$',
    ],
    types: ['src/reduction', 'src/footage', 'src/launch', 'src/compare', 'src/series', 'src/plan'],
  },
  { path: 'src/plots', may: ['src/core', 'src/text'], types: ['src/shot'] },
  { path: 'src/text', may: ['src/core'] },
  { path: 'src/report', may: ['src/core', 'src/text'], types: ['src/shot'] },
  { path: 'src/ui', may: ['src/app', 'src/plots', 'src/report', 'src/text', 'src/core'] },
  { path: 'src/main\\.tsx$', may: ['src/app', 'src/ui', 'src/text'] },
  {
    path: 'src/headless',
    may: ['src/reduction', 'src/series', 'src/footage', 'src/shot', 'src/core'],
  },
  // The renderers that make the truth share no code with what is tested against it.
  { path: 'sample-clips', may: [] },
  { path: 'test/validate/render', may: [] },
];

/** Where each third party may be met; anything not listed is refused in the program. */
const PACKAGES = {
  'mediabunny|@ffmpeg/core': ['src/footage/'],
  '@techstark/opencv-js': ['src/image/opencv/library\\.ts$'],
  comlink: [
    'workers/',
    'src/app/(workforce|filmStore|measuring)\\.ts$',
    'src/protocol/errors\\.ts$',
  ],
  'd3|d3-[a-z]+': ['src/plots/', 'src/ui/film/', 'src/app/notebookCsv\\.ts$'],
  'ml-matrix': ['src/core/linalg\\.ts$'],
  '@stdlib/[^/]+': ['src/core/(statistics|random)\\.ts$'],
  valibot: ['src/shot/'],
  'hash-wasm': ['src/footage/hash\\.ts$'],
  '@zip.js/zip.js': ['src/footage/zip\\.ts$'],
  'preact|@preact/signals': ['src/app/', 'src/ui/', 'src/plots/', 'src/text/', 'src/main\\.tsx$'],
  'intl-messageformat': ['src/text/text\\.ts$'],
};

const within = (path) => (path.endsWith('$') ? `^${path}` : `^${path}/`);
const OURS = '^(src|workers|sample-clips|scripts|test)/';
const PROGRAM = '^(src|workers)/';
const packagePath = (names) => `(^|node_modules/)(@types/)?(${names})(/|$)`;
const NODE_ONLY = ['^src/headless/', '^src/footage/node/'];

const folderRules = FOLDERS.flatMap(({ path, may, types = [] }) => [
  {
    name: `folder ${path.replace('\\.tsx$', '.tsx')}`,
    comment: 'Imports run downwards only, as src/README.md says.',
    severity: 'error',
    from: { path: within(path) },
    to: { path: OURS, pathNot: [path, ...may, ...types].map(within) },
  },
  ...(types.length === 0
    ? []
    : [
        {
          name: `types only ${path}`,
          comment: 'These may be imported with `import type` only.',
          severity: 'error',
          from: { path: within(path) },
          to: {
            path: types.map(within),
            pathNot: may.map(within),
            dependencyTypesNot: ['type-only'],
          },
        },
      ]),
]);

const packageRules = Object.entries(PACKAGES).map(([names, places]) => ({
  name: `package ${names}`,
  comment: 'Each third party is met in one place.',
  severity: 'error',
  from: { path: PROGRAM, pathNot: places.map((place) => `^${place}`) },
  to: { path: packagePath(names) },
}));

export default {
  forbidden: [
    ...folderRules,
    ...packageRules,
    {
      name: 'unlisted package',
      comment: 'A new third party needs its one place in .dependency-cruiser.mjs.',
      severity: 'error',
      from: { path: PROGRAM },
      to: {
        dependencyTypes: [
          'npm',
          'npm-dev',
          'npm-optional',
          'npm-peer',
          'npm-no-pkg',
          'npm-unknown',
        ],
        pathNot: packagePath(Object.keys(PACKAGES).join('|')),
      },
    },
    {
      name: 'unlisted folder',
      comment: 'A new folder needs its line in src/README.md and in .dependency-cruiser.mjs.',
      severity: 'error',
      from: { path: '^src/', pathNot: FOLDERS.map(({ path }) => within(path)) },
      to: {},
    },
    {
      name: 'node only at the edge',
      comment: 'The core and the page know no platform.',
      severity: 'error',
      from: { path: PROGRAM, pathNot: NODE_ONLY },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'node footage only from node',
      comment: 'What reads files with Node must not reach the browser.',
      severity: 'error',
      from: { path: PROGRAM, pathNot: NODE_ONLY },
      to: { path: '^src/footage/node/' },
    },
    {
      name: 'cycle',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'orphan',
      comment: 'Nothing imports it and it imports nothing.',
      severity: 'error',
      from: {
        orphan: true,
        pathNot: ['\\.d\\.m?ts$', '^workers/', '^scripts/', '^src/main\\.tsx$'],
      },
      to: {},
    },
    {
      name: 'unresolvable',
      severity: 'error',
      from: {},
      // The bundler's own suffix; the package it stands on is judged by its rule.
      to: { couldNotResolve: true, pathNot: '\\?(url|inline)$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: 'specify',
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['types', 'import', 'module', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.mts', '.mjs', '.js', '.d.ts', '.json', '.css'],
    },
  },
};
