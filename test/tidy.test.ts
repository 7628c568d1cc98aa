import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFiles } from './support/project-files.ts';

const project = new URL('..', import.meta.url).pathname;

const files = projectFiles(project);

const TOP =
  /^(package\.json|package-lock\.json|tsconfig\.json|README\.md|DEVELOPERS\.md|src|templates|fixtures|test|\..*)$/;

/** The longest that a source file may be: past this it tells more than one story. */
const LINES_MAX = 350;

const STAGES = /^src\/(units|diagnostics|trade|codes|calculate|layout|render)\//;

/** What would make a packet depend on more than its workbook, with what to use instead. */
const BANNED: readonly (readonly [pattern: RegExp, where: RegExp, instead: string])[] = [
  [/\bDate\.now\b|\bnew Date\(\)/, STAGES, 'a date from the workbook, or host.now at the edge'],
  [/\bMath\.random\b/, STAGES, 'a seed that is passed in'],
  [
    /\bMath\.(hypot|pow|sin|cos|tan|exp|cbrt)\b/,
    STAGES,
    'multiply; Math.sqrt of a sum: the last digit of these is the engine’s choice',
  ],
  [/\blocaleCompare\b|\btoLocale\w+\b|\bIntl\./, STAGES, '< on codes; the printers in units/'],
  [/\b(TODO|FIXME|XXX)\b/, /^(src|test|templates)\//, 'do it now, or leave it out'],
  [/\b(it|test|describe)\.(skip|only|todo)\b/, /^test\//, 'a test that runs'],
  [/@ts-ignore|@ts-nocheck|eslint-disable|biome-ignore/, /^src\//, 'a type that fits'],
];

describe('the house keeps itself in order', () => {
  it('has nothing at the top but what belongs there', () => {
    expect([...new Set(files.map(file => file.split('/')[0] ?? ''))].filter(name => !TOP.test(name))).toEqual([]);
  });

  it('has no file that tells more than one story', () => {
    const long = files
      .filter(file => /^(src|templates)\/.*\.(ts|js|hbs)$/.test(file))
      .map(file => [file, linesOf(file).length] as const)
      .filter(([, lines]) => lines > LINES_MAX);
    expect(long).toEqual([]);
  });

  it.each(BANNED)('nowhere says %s', (pattern, where, instead) => {
    const found = files
      .filter(file => where.test(file) && file !== 'test/tidy.test.ts' && /\.(ts|js|hbs|json)$/.test(file))
      .flatMap(file =>
        linesOf(file).flatMap((line, at) => (pattern.test(line) ? [`${file}:${at + 1}: ${line.trim()}`] : [])),
      );
    expect(found, `use instead: ${instead}`).toEqual([]);
  });
});

const linesOf = (file: string): readonly string[] => readFileSync(join(project, file), 'utf8').trimEnd().split('\n');
