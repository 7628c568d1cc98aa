import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Names } from '../src/import/columns.ts';
import type { SettingValue } from '../src/import/job.ts';
import { CABINETS } from '../src/import/sheets/cabinets-columns.ts';
import { FINISH } from '../src/import/sheets/finish-columns.ts';
import { HARDWARE } from '../src/import/sheets/hardware-columns.ts';
import { JOB_FACTS } from '../src/import/sheets/job.ts';
import { MINUTES_SETTINGS, SETTINGS } from '../src/import/sheets/shop.ts';
import { STOCK } from '../src/import/sheets/stock-columns.ts';
import { STYLES } from '../src/import/sheets/styles-columns.ts';
import type { Shop } from '../src/trade/shop.ts';
import { shopDefaults } from '../src/trade/shop-defaults.ts';
import { type LengthFormat, printLength } from '../src/units/print-length.ts';
import { figure, type Measurement } from './bench/measurement.ts';
import { readResults } from './bench/results.ts';

const file = new URL('../README.md', import.meta.url);

/** Tables of the README that are written from the program's own, and from what was measured: `UPDATE=1 npm test` writes them anew. */
const TABLES: readonly (readonly [name: string, table: () => string])[] = [
  ['columns', columns],
  ['settings', settings],
  ['measured', measured],
];

describe('the README', () => {
  it.each(TABLES)('has the table of %s as the program has it', (name, table) => {
    const written = readFileSync(file, 'utf8');
    const [before, rest] = split(written, `<!-- ${name} -->\n`);
    const [, after] = split(rest, `<!-- end of ${name} -->`);
    const renewed = `${before}<!-- ${name} -->\n${table()}\n<!-- end of ${name} -->${after}`;
    if (process.env['UPDATE'] === '1') writeFileSync(file, renewed);
    else expect(written).toBe(renewed);
  });

  it('begins with the job in one paragraph, then the two commands', () => {
    const written = readFileSync(file, 'utf8');
    expect(written).toMatch(/^# stilebook\n\nYou have built the cabinets/);
    const commands = ['npm ci && npx stilebook packet fixtures/demo/kitchen.xlsx', 'npm ci && npm test'];
    for (const command of commands) expect(written.slice(0, 2500)).toContain(`\n${command}\n`);
  });
});

function split(text: string, mark: string): readonly [before: string, after: string] {
  const at = text.indexOf(mark);
  if (at < 0) throw new Error(`the README has no ${mark.trim()}`);
  return [text.slice(0, at), text.slice(at + mark.length)];
}

const SHEETS: readonly (readonly [sheet: string, row: string, columns: { readonly [field: string]: Names }])[] = [
  ['Cabinets', 'one opening with its door or pair', CABINETS],
  ['Job', 'one fact: name, value', JOB_FACTS],
  ['Styles', 'a door style', STYLES],
  ['Stock', 'a size of board or sheet, on hand or to buy', STOCK],
  ['Finish', 'a step of the finish, in order', FINISH],
  ['Hardware', 'an item', HARDWARE],
];

/** Names that the sheet says nothing without are bold. */
function columns(): string {
  const rows = SHEETS.map(([sheet, row, fields]) => {
    const names = Object.values(fields).map(({ name, needed }) => (needed ? `**${name}**` : name));
    return `| ${sheet} | ${row} | ${names.join(' · ')} |`;
  });
  const shop = '| Shop | one setting: name, value | see *Settings of the Shop sheet* |';
  return ['| sheet | one row is | columns (bold: needed) |', '| --- | --- | --- |', ...rows, shop].join('\n');
}

function settings(): string {
  const inch = shopDefaults('inch', 'letter');
  const mm = shopDefaults('mm', 'A4');
  const rows = [...SETTINGS, ...MINUTES_SETTINGS].map(({ name, explains, form, value }) => {
    const shown = [shownIn(inch, value(inch)), shownIn(mm, value(mm))];
    const [first, second] = shown;
    return `| ${name} | ${explains} | ${form} | ${first === second ? first : `${first} · ${second}`} |`;
  });
  return [
    '| setting | what it does | written as | default (inch · mm workbooks) |',
    '| --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

/** What has a target, whether it is met or not. */
function measured(): string {
  const rows = Object.entries(readResults()).flatMap(([subject, { measurements }]) =>
    measurements.flatMap(line => (line.target === undefined ? [] : [measuredRow(subject, line)])),
  );
  return ['| bench | what | measured | beside | target | met |', '| --- | --- | --- | --- | --- | --- |', ...rows].join(
    '\n',
  );
}

function measuredRow(subject: string, { what, unit, ours, peer, floor, target, met }: Measurement): string {
  const beside = [peer, floor].flatMap(other => (other === undefined ? [] : [`${other.name}: ${figure(other.value)}`]));
  return `| ${subject} | ${what} | ${`${figure(ours)} ${unit}`.trim()} | ${beside.join('; ')} | ${target} | ${met === true ? 'yes' : '**no**'} |`;
}

function shownIn(shop: Shop, value: SettingValue | undefined): string {
  const format: LengthFormat = { ...shop.printing.lengths, increment: shop.printing.lengths.increment };
  if (value === undefined) return '–';
  return value.kind === 'length' ? printLength(value.length, format) : value.text;
}
