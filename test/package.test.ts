import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PACKET_FILES } from './support/packet-folder.ts';

const project = new URL('..', import.meta.url).pathname;
const folder = mkdtempSync(join(tmpdir(), 'package-'));
const installed = join(folder, 'node_modules', 'stilebook');

/** The package as it is published, put where another project would have it, with what it says it depends on and no more. */
beforeAll(() => {
  execFileSync(process.execPath, ['.build.js'], { cwd: project });
  const packed = execFileSync('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], {
    cwd: project,
    encoding: 'utf8',
  });
  const [{ filename }] = JSON.parse(packed) as [{ readonly filename: string }];
  mkdirSync(installed, { recursive: true });
  execFileSync('tar', ['-xzf', join(folder, filename), '--strip-components=1', '-C', installed]);
  const { dependencies } = JSON.parse(readFileSync(join(installed, 'package.json'), 'utf8'));
  for (const name of Object.keys(dependencies)) {
    const place = join(folder, 'node_modules', name);
    mkdirSync(dirname(place), { recursive: true });
    symlinkSync(join(project, 'node_modules', name), place);
  }
});

afterAll(() => rmSync(folder, { recursive: true }));

describe('the package', () => {
  it('holds the program, its templates and its demo, and nothing else', () => {
    expect(readdirSync(installed).sort()).toEqual(['README.md', 'dist', 'fixtures', 'package.json', 'templates']);
    expect(readdirSync(join(installed, 'fixtures'))).toEqual(['demo']);
  });

  it('says under which licence it carries each library', () => {
    const licences = readFileSync(join(installed, 'dist', 'licences.txt'), 'utf8');
    for (const name of ['exceljs', 'pdf-lib', 'handlebars', 'bwip-js', 'zod', 'hono', 'kysely'])
      expect(licences).toMatch(new RegExp(`^${name} [\\d.]+: MIT$`, 'm'));
  });

  it('builds the demo where it is installed', () => {
    const out = join(folder, 'packet');
    const demo = join(installed, 'fixtures', 'demo', 'small.xlsx');
    const { status } = spawnSync(process.execPath, [join(installed, 'dist', 'cli.js'), 'packet', demo, '--out', out], {
      cwd: folder,
      stdio: 'ignore',
    });
    expect(status).toBe(0);
    expect(readdirSync(out).sort()).toEqual(PACKET_FILES);
  });
});
