/** The architecture as a list: which library may import which. tests/style/boundaries.spec.ts sees each rule fire. */
const MAY_IMPORT = {
  kernel: [],
  judge: ['kernel'],
  proof: ['kernel'],
  quality: ['kernel'],
  tracing: ['kernel', 'quality'],
  contracts: ['kernel', 'judge'],
  rulebook: ['kernel', 'judge'],
  record: ['kernel', 'judge'],
  ledger: ['kernel', 'proof'],
  views: ['kernel', 'judge', 'rulebook', 'record', 'quality', 'tracing', 'ledger'],
  packet: ['kernel', 'judge', 'record', 'proof', 'ledger', 'views'],
  plant: [
    'kernel',
    'judge',
    'proof',
    'quality',
    'tracing',
    'contracts',
    'rulebook',
    'record',
    'ledger',
    'views',
    'packet',
  ],
};

const lib = (...names) => `^libs/(${names.join('|')})/`;
const PURE = ['kernel', 'contracts', 'rulebook', 'judge', 'record', 'proof', 'quality', 'tracing'];
/** Grows by one reviewed name at a time: no I/O, no clock, no framework. */
const PURE_PACKAGES = ['zod', 'yaml', 'csv-parse', 'cephes', 'fflate'];

const libRules = Object.entries(MAY_IMPORT).map(([from, allowed]) => ({
  name: `${from}-imports`,
  comment:
    `libs/${from} may import ${allowed.join(', ') || 'no other lib'}. ` +
    'Pass the rest in as an argument, or move the code to the lib that owns it.',
  severity: 'error',
  from: { path: lib(from) },
  to: { path: '^(libs|apps|seeds)/', pathNot: lib(from, ...allowed) },
}));

const rule = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

module.exports = {
  forbidden: [
    ...libRules,
    rule(
      'pure-libs-stay-pure',
      'A pure lib imports no framework and no I/O. Take what you need as data or as a function.',
      { path: lib(...PURE) },
      {
        dependencyTypes: ['npm', 'npm-dev', 'core', 'npm-no-pkg', 'unknown'],
        pathNot: `^node_modules/(${PURE_PACKAGES.join('|')})/`,
      },
    ),
    rule(
      'typeorm-stays-in-its-folders',
      'Only a typeorm/ folder and composition/ know the database. Everyone else talks to a port.',
      { pathNot: ['/typeorm/', '^apps/(server|cli)/src/composition/', '^tests/'] },
      { path: '^node_modules/(typeorm|sqlite3|pg)/' },
    ),
    rule(
      'nest-stays-in-server',
      'Nest is how apps/server is wired. A lib that needs it is an app in disguise.',
      { path: '^(libs|seeds|apps/(web|cli))/' },
      { path: '^node_modules/@nestjs/' },
    ),
    rule(
      'web-draws-answers',
      'The web app may import contracts, judge, proof and kernel. The rest is asked of the server.',
      { path: '^apps/web/' },
      { path: '^(libs|apps|seeds)/', pathNot: ['^apps/web/', lib('contracts', 'judge', 'proof', 'kernel')] },
    ),
    rule(
      'web-ships-no-schemas',
      'zod weighs 25 kB: the web app takes types from contracts, never schemas.',
      { path: '^apps/web/' },
      { path: '^node_modules/zod/' },
    ),
    rule(
      'apps-speak-to-the-plant',
      'Outside composition/, the server and the command line ask libs/plant. They know no ledger and no view.',
      { path: '^apps/(server|cli)/src/', pathNot: '/composition/' },
      { path: '^libs/', pathNot: lib('plant', 'contracts', 'record', 'rulebook', 'judge', 'kernel') },
    ),
    rule(
      'server-folders-are-strangers',
      'One URL noun never imports another. Shared HTTP code lives in http/.',
      { path: '^apps/server/src/([^/]+)/', pathNot: '/composition/' },
      {
        path: '^apps/server/src/[^/]+/',
        pathNot: ['^apps/server/src/$1/', '^apps/server/src/http/', '^apps/server/src/[^/]+[.]ts$'],
      },
    ),
    rule(
      'stream-kinds-are-strangers',
      'One stream kind never imports another. What it must know arrives as facts; what must follow is a command.',
      { path: '^libs/record/src/([^/]+)/' },
      { path: '^libs/record/src/[^/]+/', pathNot: '^libs/record/src/$1/' },
    ),
    rule(
      'through-the-front-door',
      'Import a lib by its index (@libs/name). What the index does not export is not for you.',
      { path: '^(libs/[^/]+|apps/[^/]+|tests|seeds)/' },
      { path: '^libs/[^/]+/src/', pathNot: ['^$1/', '^libs/[^/]+/src/(typeorm/)?index[.]ts$'] },
    ),
    rule(
      'tests-never-ship',
      'Nothing in libs, apps or seeds imports a test. Move what you need into the lib itself.',
      { path: '^(libs|apps|seeds)/' },
      { path: '^tests/' },
    ),
    rule(
      'tests-are-strangers',
      'A test imports libs, apps and tests/support, never another test file.',
      { path: '^tests/.+[.]spec[.]ts$' },
      { path: '[.]spec[.]ts$' },
    ),
    rule('no-cycles', 'A cycle is one module pretending to be two.', {}, { circular: true }),
    rule(
      'no-orphans',
      'Nothing imports this file. Use it or delete it.',
      {
        orphan: true,
        pathNot: ['[.]config[.]', '[.]d[.]ts$', '^apps/[^/]+/src/main[.]tsx?$', '^apps/web/src/worker/service-worker[.]ts$', '[.]css$', '/start/'],
      },
      {},
    ),
    rule('resolvable', 'This import leads nowhere.', {}, { couldNotResolve: true }),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true, // Without it `import type` is invisible, and every rule above leaks.
    doNotFollow: { path: 'node_modules' },
    // Anchored on purpose: a bare 'dist/' would also hide every package that ships from its dist/.
    exclude: { path: ['^dist/', '^apps/[^/]+/dist/', '^tests/style/forbidden/', '[.]css$', '[.]woff2$'] },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
