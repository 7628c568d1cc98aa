import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

/**
 * Bundles the program into a few files: a packet starts in half a second less than from four hundred modules, and whoever
 * installs the package gets the libraries that this code was tested with. Those that bring machine code or data of their
 * own stay packages. `node .build.js FOLDER FILE` bundles a bench that runs the program's stages in the same way.
 */
const [outdir = 'dist', ...benches] = process.argv.slice(2);
const packages = Object.keys(JSON.parse(readFileSync('package.json', 'utf8')).dependencies);

/** Modules of `require` style in the bundle look for these names; the others are such as no code of ours has. */
const banner = `import { createRequire as $createRequire } from 'node:module';
import { fileURLToPath as $fileURLToPath } from 'node:url';
const require = $createRequire(import.meta.url), __filename = $fileURLToPath(import.meta.url), __dirname = $fileURLToPath(new URL('.', import.meta.url));`;

if (benches.length === 0) rmSync(outdir, { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: [
    ...(benches.length === 0 ? ['src/cli.ts'] : benches),
    'src/import/apart-worker.ts',
    'src/commands/inbox-builder.ts',
  ],
  // All in one folder, so that a file finds what ships beside it from wherever its code was bundled to.
  entryNames: '[name]',
  outdir,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // What a library would only need for a service that is never asked.
  external: [...packages, '@aws-sdk/client-s3', 'pg-native'],
  banner: { js: banner },
  legalComments: 'none',
  // Less to read at each start; names stay, for whoever reads a stack.
  mainFields: ['module', 'main'],
  minifyWhitespace: true,
  minifySyntax: true,
  metafile: true,
  plugins: [
    { name: 'unasked', setup: leaveOutUnasked },
    { name: 'native', setup: inflateNatively },
  ],
  logLevel: 'warning',
});

/**
 * What libraries load for services that are never asked: streams of workbooks and CSV, and the unpacking of fonts for the
 * web. It is a fifth of what the program would read at each start.
 */
function leaveOutUnasked({ onLoad }) {
  const unasked = [
    /exceljs[\\/]lib[\\/]stream[\\/]xlsx[\\/]workbook-(reader|writer)\.js$/,
    /exceljs[\\/]lib[\\/]csv[\\/]csv\.js$/,
    /brotli[\\/]decompress\.js$/,
  ];
  for (const filter of unasked) onLoad({ filter }, () => ({ contents: 'module.exports = undefined;' }));
}

/** The typesetting library unpacks its tables of Unicode at each start, in script: the runtime does it twenty times as fast. */
function inflateNatively({ onLoad }) {
  onLoad({ filter: /tiny-inflate[\\/]index\.js$/ }, () => ({
    contents: "module.exports = packed => new Uint8Array(require('node:zlib').inflateRawSync(packed));",
  }));
}

const licences = [...new Set(Object.keys(metafile.inputs).flatMap(packageOf))].sort().map(licenceOf);
writeFileSync(join(outdir, 'licences.txt'), licences.join(`\n\n${'='.repeat(80)}\n\n`));

/** The folder of the package that a bundled file is from; none for our own. */
function packageOf(file) {
  const [folder] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file) ?? [];
  return folder === undefined ? [] : [folder];
}

function licenceOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const texts = readdirSync(folder).filter(file => /^licen[cs]e/i.test(file));
  return [`${name} ${version}: ${license}`, ...texts.map(file => readFileSync(join(folder, file), 'utf8').trim())].join(
    '\n\n',
  );
}
