import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const project = new URL('..', import.meta.url).pathname;
let house: string;

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'stilebook-house-'));
  symlinkSync(join(project, 'node_modules'), join(house, 'node_modules'));
  put('package.json', '{"type":"module","dependencies":{"exceljs":"*","pdf-lib":"*"}}');
  put('tsconfig.json', '{"compilerOptions":{"module":"nodenext","allowImportingTsExtensions":true,"noEmit":true}}');
});
afterAll(() => rmSync(house, { recursive: true, force: true }));

/**
 * The check of directions is only worth something if it sees: each of these imports is put into a small house, and the
 * check must name the rule that it breaks. The first row must be let through, or the check would refuse everything.
 */
describe('the check of directions', () => {
  it.each([
    ['src/layout/x.ts', "import type { Job } from '../import/job.ts';", undefined],
    ['src/units/x.ts', "import { y } from '../trade/y.ts';", 'units-know-nothing'],
    ['src/trade/x.ts', "import { y } from '../layout/y.ts';", 'foundations-know-no-stage'],
    ['src/import/x.ts', "import type { y } from '../calculate/door-set.ts';", 'import-house'],
    ['src/calculate/x.ts', "import { y } from '../import/read.ts';", 'calculate-house'],
    ['src/calculate/x.ts', "import { y } from '../import/job.ts';", 'calculate-reads-types'],
    ['src/layout/x.ts', "import type { y } from '../render/packet.ts';", 'layout-house'],
    ['src/render/x.ts', "import { y } from '../layout/operations.ts';", 'render-house'],
    ['src/station/x.ts', "import { y } from '../render/index.ts';", 'station-knows-the-manifest'],
    ['src/calculate/x.ts', "import { y } from 'node:fs';", 'stages-do-not-touch-the-machine'],
    ['src/calculate/x.ts', "import y from 'exceljs';", 'one-door-to-exceljs'],
    ['src/render/x.ts', "import { y } from 'pdf-lib';", 'one-door-to-pdf-lib'],
  ])('%s: %s breaks %s', (file, statement, rule) => {
    const target = /'(\.[^']+)'/.exec(statement)?.[1];
    const imported = target === undefined ? undefined : join(dirname(file), target);
    if (imported !== undefined) put(imported, 'export type Job = 1; export type y = 1; export const y = 1;');
    put(file, `${statement}\nexport type Use = typeof y | Job;\n`);
    const { status, told } = cruise();
    rmSync(join(house, 'src'), { recursive: true });
    expect(told).toMatch(/[1-9]\d* modules/);
    if (rule === undefined) expect(status, told).toBe(0);
    else {
      expect(status, told).not.toBe(0);
      expect(told).toContain(rule);
    }
  });
});

function put(file: string, text: string): void {
  mkdirSync(dirname(join(house, file)), { recursive: true });
  writeFileSync(join(house, file), text);
}

function cruise(): { readonly status: number; readonly told: string } {
  const command = join(project, 'node_modules/.bin/depcruise');
  try {
    const told = execFileSync(command, ['--config', join(project, '.dependency-cruiser.cjs'), 'src'], {
      cwd: house,
      encoding: 'utf8',
    });
    return { status: 0, told };
  } catch (refused) {
    const { status, stdout, stderr } = refused as { status: number; stdout: string; stderr: string };
    return { status, told: stdout + stderr };
  }
}
