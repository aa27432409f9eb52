/**
 * The order in which Furrow's parts may import each other, for dependency-cruiser (`npm run imports`).
 * Rooms are the folders of packages/engine/src. A part may import what its row lists and nothing else.
 */

const { readdirSync, readFileSync } = require('node:fs');
const { join } = require('node:path');

/** Rooms of the engine, the lowest layer first: a room may import every room of a layer below its own. */
const LAYERS = [
  ['issue'],
  ['numeric', 'quantity'],
  ['material', 'document'],
  ['job', 'groove'],
  ['removal', 'limit'],
  ['supply', 'heat', 'hazard', 'cost'],
  ['plan', 'kit'],
  ['commission', 'faults'],
];

/** Rooms of one layer do not know each other, but for these: the job says which groove is wanted, the removal law has limits, and faults explain readings. */
const BESIDE = { groove: ['job'], removal: ['limit'], commission: ['faults'] };

function below(room) {
  return LAYERS.slice(
    0,
    LAYERS.findIndex((layer) => layer.includes(room)),
  ).flat();
}

/** Rooms of what comes after the arc: the files it leaves, the run, the groove, what the shop learns. */
const AFTER_ARC = ['delimited', 'run', 'survey', 'learn'];

const ROOM_IMPORTS = {
  ...Object.fromEntries(LAYERS.flat().map((room) => [room, [...below(room), ...(BESIDE[room] ?? [])]])),
  delimited: ['issue', 'numeric', 'quantity', 'document'],
  run: ['delimited', ...LAYERS.flat()],
  survey: ['delimited', 'run', ...LAYERS.flat()],
  learn: ['run', 'survey', 'removal', ...below('removal')],
  result: [...LAYERS.flat(), ...AFTER_ARC],
  answer: [...LAYERS.flat(), ...AFTER_ARC, 'result'],
};

const PACKAGE_IMPORTS = {
  engine: [],
  contract: ['engine'],
  papers: ['engine', 'contract'],
  store: ['engine', 'contract'],
  server: ['engine', 'contract', 'papers', 'store'],
  cli: ['engine', 'contract', 'papers', 'store', 'server'],
  app: ['engine', 'contract', 'papers'],
};

/** Parts of the app, the folders of packages/app/src, the lowest first: each may import those before it and itself. */
const APP_PARTS = ['api', 'ui', 'sheet', 'work', 'job', 'pages', 'shell'];

/** The app's part that tests alone lean on. */
const APP_TESTING = 'testing';

const APP = '^packages/app/src/';

/** Rooms of the papers, the lowest layer first: from a report to words, drawings and blocks, once, and from those to text, page and PDF. */
const PAPER_LAYERS = [
  ['words'],
  ['drawing'],
  ['style', 'code', 'cad', 'blocks'],
  ['kinds'],
  ['html', 'pdf', 'text'],
];

/** Rooms of the store: from the database by the one way of saving to what is saved. */
const STORE_LAYERS = [
  ['database', 'journal'],
  ['history'],
  ['document', 'migration', 'audit'],
  ['job', 'shop-file', 'rig', 'fault', 'paper', 'run', 'logger', 'original', 'people'],
  ['readings'],
  ['backup'],
];

/** Rooms of the server: who may ask, what was sent, what takes long, and the routes. */
const SERVER_LAYERS = [
  ['guard', 'intake', 'monitor'],
  ['reading'],
  ['work'],
  ['run'],
  ['shop'],
  ['account'],
  ['routes'],
];

/** Questions about a job, the folders of packages/engine/src/answer: each is answered from those before it. */
const ANSWER_LAYERS = [['knowledge'], ['supply'], ['job'], ['heat', 'hazard', 'run', 'survey'], ['cost']];

const ANSWER = '^packages/engine/src/answer/';
const PAPER_ROOMS = '^packages/papers/src/';
const ROOMS = '^packages/engine/src/';
const TEST_FILE = '\\.test\\.tsx?$';
const OUTSIDE_PACKAGES = '^(published|e2e|benchmarks|tools)/';

/** The files by which a package is entered: the sources that its `exports` name. */
function doors() {
  const folder = join(__dirname, '../packages');
  return readdirSync(folder).flatMap((name) => {
    const { exports: paths = {} } = JSON.parse(readFileSync(join(folder, name, 'package.json'), 'utf8'));
    return Object.values(paths)
      .map((path) => path['furrow-source'])
      .filter(Boolean)
      .map((source) => `^packages/${name}/${source.slice(2).replaceAll('.', '\\.')}$`);
  });
}

function oneOf(names) {
  return `(${names.join('|')})/`;
}

const roomRules = Object.entries(ROOM_IMPORTS).map(([room, allowed]) => ({
  name: `room-order-${room}`,
  comment: `Rooms import downwards: ${room} may import ${allowed.join(', ') || 'no other room'}.`,
  severity: 'error',
  from: { path: `${ROOMS}${room}/` },
  to: { path: ROOMS, pathNot: `${ROOMS}${oneOf([room, ...allowed])}` },
}));

const packageRules = Object.entries(PACKAGE_IMPORTS).map(([name, allowed]) => ({
  name: `package-order-${name}`,
  comment: `Packages import downwards: ${name} may import ${allowed.join(', ') || 'no other package'}.`,
  severity: 'error',
  from: { path: `^packages/${name}/` },
  to: { path: '^packages/', pathNot: `^packages/${oneOf([name, ...allowed])}` },
}));

const appRules = APP_PARTS.map((part, at) => ({
  name: `app-order-${part}`,
  comment: `Parts of the app import downwards: ${part} may import ${APP_PARTS.slice(0, at).join(', ') || 'no other part'}.`,
  severity: 'error',
  from: { path: `${APP}${part}/`, pathNot: TEST_FILE },
  to: { path: `${APP}[^/]+/`, pathNot: `${APP}${oneOf(APP_PARTS.slice(0, at + 1))}` },
}));

/** The rules for rooms of a package, or of a room with rooms of its own, that stand in layers. */
function layerRules(name, layers, rooms = `^packages/${name}/src/`) {
  return layers.flatMap((layer, index) =>
    layer.map((room) => {
      const allowed = layers.slice(0, index).flat();
      return {
        name: `${name}-order-${room}`,
        comment: `Rooms of ${name} import downwards: ${room} may import ${allowed.join(', ') || 'no other room'}.`,
        severity: 'error',
        from: { path: `${rooms}${room}/`, pathNot: TEST_FILE },
        to: { path: rooms, pathNot: `${rooms}${oneOf([room, ...allowed])}` },
      };
    }),
  );
}

/** The rule that every room of a package has its place in the layers. */
function unknownRoomRule(name, layers, rooms = `^packages/${name}/src/`) {
  return {
    name: `${name}-room-unknown`,
    comment: `A room of ${name} has a place in the order: add it to tools/import-rule.cjs.`,
    severity: 'error',
    from: {},
    to: { path: `${rooms}[^/]+/`, pathNot: `${rooms}${oneOf([...layers.flat(), 'testing'])}` },
  };
}

module.exports = {
  forbidden: [
    ...roomRules,
    ...packageRules,
    ...appRules,
    {
      name: 'app-part-unknown',
      comment: 'A part of the app has a place in the order: add it to tools/import-rule.cjs.',
      severity: 'error',
      from: {},
      to: { path: `${APP}[^/]+/`, pathNot: `${APP}${oneOf([...APP_PARTS, APP_TESTING])}` },
    },
    {
      name: 'page-alone',
      comment: 'Pages do not know each other: what two of them need belongs to a part below.',
      severity: 'error',
      from: { path: `${APP}pages/([^/]+)/` },
      to: { path: `${APP}pages/`, pathNot: `${APP}pages/$1/` },
    },
    {
      name: 'page-door',
      comment: 'A page is entered through its page.tsx only.',
      severity: 'error',
      from: { path: `${APP}(?!pages/)`, pathNot: TEST_FILE },
      to: { path: `${APP}pages/`, pathNot: `${APP}pages/[^/]+/page\\.tsx$` },
    },
    ...layerRules('answer', ANSWER_LAYERS, ANSWER),
    unknownRoomRule('answer', ANSWER_LAYERS, ANSWER),
    ...layerRules('papers', PAPER_LAYERS),
    ...layerRules('store', STORE_LAYERS),
    unknownRoomRule('store', STORE_LAYERS),
    ...layerRules('server', SERVER_LAYERS),
    unknownRoomRule('server', SERVER_LAYERS),
    {
      name: 'papers-room-unknown',
      comment: 'A room of the papers has a place in the order: add it to tools/import-rule.cjs.',
      severity: 'error',
      from: {},
      to: {
        path: `${PAPER_ROOMS}[^/]+/`,
        pathNot: `${PAPER_ROOMS}${oneOf(PAPER_LAYERS.flat())}`,
      },
    },
    {
      name: 'papers-door',
      comment: 'A room of the papers is entered through its index.ts only.',
      severity: 'error',
      from: { path: '^packages/papers/src/([^/]+)/', pathNot: TEST_FILE },
      to: { path: `${PAPER_ROOMS}[^/]+/`, pathNot: [`${PAPER_ROOMS}$1/`, `${PAPER_ROOMS}[^/]+/index\\.ts$`] },
    },
    {
      name: 'room-unknown',
      comment: 'A room has a place in the order: add it to tools/import-rule.cjs.',
      severity: 'error',
      from: {},
      to: { path: `${ROOMS}[^/]+/`, pathNot: `${ROOMS}${oneOf(Object.keys(ROOM_IMPORTS))}` },
    },
    {
      name: 'room-door',
      comment: 'A room is entered through its index.ts only.',
      severity: 'error',
      from: { path: '^packages/engine/src/([^/]+)/' },
      to: { path: `${ROOMS}[^/]+/`, pathNot: [`${ROOMS}$1/`, `${ROOMS}[^/]+/index\\.ts$`] },
    },
    {
      name: 'room-door-from-package-index',
      comment: 'The engine gives away what its rooms export, through their index.ts.',
      severity: 'error',
      from: { path: `${ROOMS}[^/]+$` },
      to: { path: `${ROOMS}[^/]+/`, pathNot: `${ROOMS}[^/]+/index\\.ts$` },
    },
    {
      name: 'package-door',
      comment: 'A package is entered by its name, through what its exports name.',
      severity: 'error',
      from: { path: '^packages/([^/]+)/' },
      to: { path: '^packages/', pathNot: ['^packages/$1/', ...doors()] },
    },
    {
      name: 'package-door-from-outside',
      comment: 'Published checks, browser tests, benchmarks and tools use what a package makes public.',
      severity: 'error',
      from: { path: OUTSIDE_PACKAGES },
      to: { path: '^packages/', pathNot: doors() },
    },
    {
      name: 'no-outward',
      comment: 'Packages do not lean on what stands around them; how one is built may.',
      severity: 'error',
      from: { path: '^packages/', pathNot: '^packages/\\w+/vite\\.config\\.ts$' },
      to: { path: OUTSIDE_PACKAGES },
    },
    {
      name: 'pure-engine',
      comment: 'The engine runs in Node, browser and worker: it reads no file, clock or network.',
      severity: 'error',
      from: { path: '^packages/engine/', pathNot: TEST_FILE },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'app-in-browser',
      comment: 'The app runs in a browser, where Node’s modules do not exist.',
      severity: 'error',
      from: { path: '^packages/app/src/', pathNot: TEST_FILE },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-cycle',
      comment: 'Two files that need each other are one file, or hide a third.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'resolvable',
      comment: 'An import that leads nowhere escapes every rule above.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)dist/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['furrow-source', 'types', 'import', 'node', 'default'],
      extensions: ['.ts', '.tsx', '.mjs', '.cjs', '.js', '.d.mts', '.json'],
    },
  },
};
