import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const project = new URL('..', import.meta.url).pathname;

/** An import in a file of a folder, or in one that is named, and the rule that it breaks; none where it may stand. */
const IMPORTS: readonly (readonly [place: string, statement: string, rule: string | undefined])[] = [
  ['src/layout', "import type { Job } from '../import/job.ts';", undefined],
  ['src/units', "import { y } from '../trade/y.ts';", 'units-know-nothing'],
  ['src/trade', "import { y } from '../layout/y.ts';", 'foundations-know-no-stage'],
  ['src/import', "import type { y } from '../calculate/door-set.ts';", 'import-house'],
  ['src/calculate', "import { y } from '../import/read.ts';", 'calculate-house'],
  ['src/calculate', "import { y } from '../import/job.ts';", 'calculate-reads-types'],
  ['src/layout', "import type { y } from '../render/packet.ts';", 'layout-house'],
  ['src/render', "import { y } from '../layout/operations.ts';", 'render-house'],
  ['src/station', "import { y } from '../render/index.ts';", 'station-knows-the-manifest'],
  ['src/calculate', "import { y } from 'node:fs';", 'stages-do-not-touch-the-machine'],
  ['src/codes', "import { y } from 'node:crypto';", 'stages-do-not-touch-the-machine'],
  ['src/codes/barcode.ts', "import { y } from 'node:fs';", 'barcodes-only-digest'],
  ['src/calculate', "import y from 'exceljs';", 'one-door-to-exceljs'],
  ['src/render', "import { y } from 'pdf-lib';", 'one-door-to-pdf-lib'],
];

function fileOf(at: number): string {
  const place = IMPORTS[at]?.[0] ?? '';
  return place.endsWith('.ts') ? place : `${place}/importing-${at}.ts`;
}

let house: string;
let broken: readonly { readonly from: string; readonly rule: { readonly name: string } }[];

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'stilebook-house-'));
  symlinkSync(join(project, 'node_modules'), join(house, 'node_modules'));
  put('package.json', '{"type":"module","dependencies":{"exceljs":"*","pdf-lib":"*"}}');
  put('tsconfig.json', '{"compilerOptions":{"module":"nodenext","allowImportingTsExtensions":true,"noEmit":true}}');
  for (const [at, [folder, statement]] of IMPORTS.entries()) {
    const target = /'(\.[^']+)'/.exec(statement)?.[1];
    if (target !== undefined) put(join(folder, target), 'export type Job = 1; export type y = 1; export const y = 1;');
    put(fileOf(at), `${statement}\nexport type Use = typeof y | Job;\n`);
  }
  broken = cruise();
});
afterAll(() => rmSync(house, { recursive: true, force: true }));

/**
 * The check of directions is only worth something if it sees: each of these imports is put into a small house, and the
 * check must name the rule that it breaks. The first row must be let through, or the check would refuse everything.
 */
describe('the check of directions', () => {
  it.each(IMPORTS.map((row, at) => [...row, at] as const))('%s: %s breaks %s', (_folder, _statement, rule, at) => {
    const rules = broken.filter(({ from }) => from === fileOf(at)).map(each => each.rule.name);
    if (rule === undefined) expect(rules).toEqual([]);
    else expect(rules).toContain(rule);
  });
});

function put(file: string, text: string): void {
  mkdirSync(dirname(join(house, file)), { recursive: true });
  writeFileSync(join(house, file), text);
}

/** What breaks a rule in the house; as data, the check ends well whatever it finds. */
function cruise(): typeof broken {
  const words = ['--config', join(project, '.dependency-cruiser.cjs'), '--output-type', 'json', 'src'];
  const told = execFileSync(join(project, 'node_modules/.bin/depcruise'), words, {
    cwd: house,
    encoding: 'utf8',
    maxBuffer: 1 << 24,
  });
  return JSON.parse(told).summary.violations;
}
