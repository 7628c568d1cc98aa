/** Which folder may know which: the direction of DEVELOPERS.md as a check. */
const stage = (name, before) => [
  {
    name: `${name}-house`,
    severity: 'error',
    from: { path: `^src/${name}/` },
    to: {
      path: '^src/',
      pathNot: [`^src/${name}/`, '^src/(units|diagnostics|trade|codes)/', ...before.map(file => `^src/${file}$`)],
    },
  },
  {
    name: `${name}-reads-types`,
    comment: 'A stage reads the types that the stages before it hand over, never their code.',
    severity: 'error',
    from: { path: `^src/${name}/` },
    to: { path: before.length === 0 ? '^$' : `^src/(${before.join('|')})$`, dependencyTypesNot: ['type-only'] },
  },
];

const JOB = 'import/job\\.ts';
const DOOR_SET = 'calculate/door-set\\.ts';
const SHOP_PLAN = 'layout/shop-plan\\.ts';

module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } } },
    ...stage('import', []),
    ...stage('calculate', [JOB]),
    ...stage('layout', [JOB, DOOR_SET]),
    ...stage('render', [JOB, DOOR_SET, SHOP_PLAN]),
    {
      name: 'units-know-nothing',
      severity: 'error',
      from: { path: '^src/units/' },
      to: { path: '^src/', pathNot: '^src/units/' },
    },
    {
      name: 'foundations-know-no-stage',
      severity: 'error',
      from: { path: '^src/(diagnostics|trade|codes)/' },
      to: { path: '^src/', pathNot: '^src/(units|diagnostics|trade|codes)/' },
    },
    {
      name: 'station-knows-the-manifest',
      comment: 'And the forecast, which is made of the manifest’s days alone, and its own pages among what ships.',
      severity: 'error',
      from: { path: '^src/station/' },
      to: { path: '^src/', pathNot: ['^src/(station|units|diagnostics|trade|codes)/', '^src/render/packet\\.ts$', '^src/(host|packaged)\\.ts$', '^src/layout/days/forecast\\.ts$'] },
    },
    {
      name: 'inbox-knows-the-manifest',
      severity: 'error',
      from: { path: '^src/inbox/' },
      to: { path: '^src/', pathNot: ['^src/(inbox|units|diagnostics|trade|codes)/', '^src/render/packet\\.ts$', '^src/(host|machine)\\.ts$'] },
    },
    {
      name: 'stages-do-not-touch-the-machine',
      comment: 'Clock, disk, network and chance come in as arguments, so that the same workbook gives the same packet.',
      severity: 'error',
      from: { path: '^src/(units|diagnostics|trade|codes|calculate|layout)/', pathNot: '^src/codes/barcode\\.ts$' },
      to: { dependencyTypes: ['core'], pathNot: '^(node:)?assert' },
    },
    {
      name: 'barcodes-only-digest',
      comment: 'A digest asks nothing of the machine, and in script it was a fifth of the calculation.',
      severity: 'error',
      from: { path: '^src/codes/barcode\\.ts$' },
      to: { dependencyTypes: ['core'], pathNot: '^(node:)?crypto$' },
    },
    ...[
      ['exceljs', '^src/import/(read-xlsx[a-z-]*|mark-up|blank-workbook|table-workbook)\\.ts$'],
      ['pdf-lib', '^src/render/bind'],
      ['fontkit', '^src/render/fonts\\.ts$'],
      ['saxes', '^src/(import/xlsx/xml|render/markup)\\.ts$'],
      ['bwip-js', '^src/(render/symbols|station/web/symbol)\\.ts$'],
      ['handlebars', '^src/(render/fill|render/template-syntax|station/web/pages)\\.ts$'],
      ['highs', '^src/layout/solver\\.ts$'],
      ['(kysely|libsql|pg)', '^src/station/ledger/'],
      ['(hono|@hono/node-server)', '^src/station/'],
      ['commander', '^src/cli\\.ts$'],
    ].map(([library, door]) => ({
      name: `one-door-to-${library.replace(/[^a-z-]/g, '')}`,
      severity: 'error',
      from: { path: '^src/', pathNot: door },
      to: { path: `node_modules/${library}/` },
    })),
  ],
  options: {
    tsPreCompilationDeps: 'specify',
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
  },
};
