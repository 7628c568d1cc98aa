import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import Handlebars from 'handlebars';
import { tsImport } from 'tsx/esm/api';

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
    { name: 'symbols', setup: keepAskedSymbols },
    { name: 'native', setup: leaveToTheRuntime },
    { name: 'templates', setup: compileTemplates },
  ],
  logLevel: 'warning',
});

/**
 * What libraries load for services that are never asked: streams of workbooks and CSV, the unpacking of fonts for the
 * web, passwords of sheets, pictures, and faces that a reader brings itself. It is a fifth of what the program would
 * read at each start.
 */
function leaveOutUnasked({ onLoad }) {
  const unasked = [
    [/exceljs[\\/]lib[\\/]stream[\\/]xlsx[\\/]workbook-(reader|writer)\.js$/, 'module.exports = undefined;'],
    [/exceljs[\\/]lib[\\/]csv[\\/]csv\.js$/, 'module.exports = undefined;'],
    [/exceljs[\\/]lib[\\/]utils[\\/]encryptor\.js$/, 'module.exports = undefined;'],
    [/brotli[\\/]decompress\.js$/, 'module.exports = undefined;'],
    [/@pdf-lib[\\/]upng[\\/]UPNG\.js$/, 'export default undefined;'],
    [/@pdf-lib[\\/]standard-fonts[\\/]es[\\/]index\.js$/, 'export const Font = {}, FontNames = {}, Encodings = {};'],
  ];
  for (const [filter, contents] of unasked) onLoad({ filter }, () => ({ contents }));
}

/**
 * The library of symbols finds a symbology by name, and so brings all hundred of them: a megabyte, a third of what the
 * program would read. These are the two that packets and pages are printed with.
 */
function keepAskedSymbols({ onLoad }) {
  const asked = ['code128', 'qrcode'];
  onLoad({ filter: /bwip-js[\\/]dist[\\/]bwipp\.mjs$/ }, ({ path }) => {
    const text = readFileSync(path, 'utf8');
    const cases = / {4}switch \(symbol\.replace\(.*\) \{\n(?: {8}case "\w+":\n {12}return bwipp_\w+;\n)+ {4}\}\n/;
    if (!cases.test(text)) throw new Error('bwip-js looks symbologies up in another way: mend keepAskedSymbols');
    const kept = asked.map(name => `    if (symbol === '${name}') return bwipp_${name};\n`).join('');
    return { contents: text.replace(cases, kept) };
  });
}

/**
 * What the runtime does itself: the typesetting library unpacks its tables of Unicode at each start in script, which the
 * runtime does twenty times as fast, and the spreadsheet library brings the streams of older runtimes.
 */
function leaveToTheRuntime({ onLoad }) {
  const native = [
    [/tiny-inflate[\\/]index\.js$/, "packed => new Uint8Array(require('node:zlib').inflateRawSync(packed))"],
    [/readable-stream[\\/]readable\.js$/, "require('node:stream')"],
  ];
  for (const [filter, value] of native) onLoad({ filter }, () => ({ contents: `module.exports = ${value};` }));
}

/** The templates that ship are compiled here and not at each start: it takes a tenth of the time of a small job. */
function compileTemplates({ onLoad }) {
  onLoad({ filter: /render[\\/]compiled-ahead\.ts$/ }, async () => {
    const { COMPILING, nameOf, syntax } = await tsImport('./src/render/template-syntax.ts', import.meta.url);
    const files = readdirSync('templates').filter(file => file.endsWith('.hbs'));
    const names = new Set(files.map(nameOf));
    const compiled = files.map(file => {
      const text = readFileSync(join('templates', file), 'utf8');
      return `[${JSON.stringify(text)}, ${Handlebars.precompile(syntax(text, names, 0, 'plain'), COMPILING)}]`;
    });
    return { contents: `export const COMPILED_AHEAD = new Map([${compiled.join(',\n')}]);` };
  });
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
