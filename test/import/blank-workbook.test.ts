import { readFile } from 'node:fs/promises';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { newWorkbook } from '../../src/import/blank-workbook.ts';
import { importJob } from '../../src/import/index.ts';
import type { Job } from '../../src/import/job.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { SETTINGS } from '../../src/import/sheets/shop.ts';
import { writtenLength } from '../../src/import/written-length.ts';
import { nm } from '../../src/units/length.ts';
import { readLength, type Units } from '../../src/units/read-length.ts';
import { findings } from '../support/drawn-workbook.ts';
import { fill } from '../support/fill-workbook.ts';
import { law } from '../support/runs.ts';

const importing = async (bytes: Uint8Array) => {
  const { value, diagnostics } = await readXlsx(bytes, 'new.xlsx');
  const job = importJob(value ?? { file: '', sheets: [] });
  return { job: job.value, found: findings([...diagnostics, ...job.diagnostics]) };
};

const withoutPlaces = (job: Job): unknown =>
  JSON.parse(JSON.stringify(job, (key, value) => (key === 'from' ? undefined : value)));

describe.each<Units>(['inch', 'mm'])('the blank workbook in %s', units => {
  let bytes: Uint8Array;
  let book: ExcelJS.Workbook;
  beforeAll(async () => {
    bytes = await newWorkbook(units);
    book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  });

  it('has nothing to mend but that it has no openings yet', async () => {
    expect((await importing(bytes)).found).toEqual([
      'Cabinets error no-openings',
      'Cabinets!A3 note example-not-counted',
    ]);
  });

  it('says of itself what the program takes where it says nothing', async () => {
    const { job } = await importing(bytes);
    expect(job.units).toBe(units);
    const told = new Map<string, string>();
    book.getWorksheet('Shop')?.eachRow(row => told.set(row.getCell(1).text, row.getCell(3).text));
    const used = job.defaults.filter(({ sheet }) => sheet === 'Shop');
    expect(used.length).toBeGreaterThan(80);
    for (const { name, value } of used) {
      const text = value.kind === 'length' ? writtenLength(value.length, units) : value.text;
      expect([name, told.get(name)]).toEqual([name, text]);
    }
  });

  it('teaches itself: notes, lists, text that no program makes a date of, headings that stay in sight', () => {
    const cabinets = book.getWorksheet('Cabinets');
    const headings = cabinets?.getRow(2);
    headings?.eachCell(cell => expect([cell.text, cell.note !== undefined]).toEqual([cell.text, true]));
    for (let column = 1; column <= (headings?.cellCount ?? 0); column++) {
      expect(cabinets?.getColumn(column).numFmt).toBe('@');
    }
    expect(cabinets?.views[0]).toMatchObject({ state: 'frozen', ySplit: 2 });
    expect(cabinets?.pageSetup).toMatchObject({
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      orientation: 'landscape',
    });
    const columns = Array.from({ length: headings?.cellCount ?? 0 }, (_, index) => index + 1);
    const lists = columns.filter(column => cabinets?.getCell(10, column).dataValidation !== undefined);
    expect(lists.map(column => headings?.getCell(column).text)).toEqual([
      'Kind',
      'Mounting',
      'Leaves',
      'Hinge side',
      'Style',
      'Pull',
    ]);
  });

  it('filled in, it is the job that was filled in', async () => {
    const { job, found } = await importing(await fill(bytes, units));
    expect(found).toEqual(['Cabinets!A3 note example-not-counted']);
    expect(job.openings.map(({ cabinet, style, hanging }) => [cabinet, style, hanging.kind])).toEqual([
      ['B1', 'Shaker', 'single'],
      ['B2', 'Shaker', 'pair'],
    ]);
    expect(job.stock.map(({ name, kind }) => [name, kind])).toEqual([
      ['Cherry', 'board'],
      ['Plywood', 'sheet'],
    ]);
    expect(job.number).toBe('N-1');
    expect(job.shop.saw.kerf).toBe(readLength(units === 'inch' ? '3/32' : '3', units));
  });

  // Made by test/faults/libreoffice.ts: the filled workbook, opened and saved by another program.
  it('opened and saved by LibreOffice, it is the same job', async () => {
    const saved = await readFile(new URL(`../../fixtures/writers/libreoffice-new-${units}.xlsx`, import.meta.url));
    const [mine, theirs] = [await importing(await fill(bytes, units)), await importing(saved)];
    expect(withoutPlaces(theirs.job)).toEqual(withoutPlaces(mine.job));
    expect(theirs.found).toEqual(mine.found);
  });
});

describe('a length in a workbook', () => {
  it.each<[string, Units, string]>([
    ['14 3/8', 'inch', '14 3/8'],
    ['0', 'inch', '0'],
    ['35 mm', 'inch', '35 mm'],
    ['12.5 mm', 'inch', '12.5 mm'],
    ['0.004', 'inch', '0.004'],
    ['1/32', 'mm', '0.79375'],
    ['1000 mm', 'mm', '1000'],
  ])('%s in a workbook of %s is %s', (length, units, text) => {
    expect(writtenLength(readLength(length, 'inch') ?? nm(-1), units)).toBe(text);
  });

  it('comes back as itself', () => {
    const thousandths = fc.integer({ min: 0, max: 100_000 }).map(count => nm(count * 25_400));
    const micrometres = fc.integer({ min: 0, max: 3_000_000 }).map(count => nm(count * 1000));
    const fractions = fc.integer({ min: 0, max: 64 * 120 }).map(count => nm(count * 396_875));
    law([fc.oneof(thousandths, micrometres, fractions), fc.constantFrom<Units>('inch', 'mm')], (length, units) => {
      expect(readLength(writtenLength(length, units), units)).toBe(length);
    });
  });

  it('is what every setting shows of its default', () => {
    expect(SETTINGS.length).toBeGreaterThan(100);
    expect(new Set(SETTINGS.flatMap(({ name, also }) => [name, ...also]).map(each => each.toLowerCase())).size).toBe(
      SETTINGS.flatMap(({ name, also }) => [name, ...also]).length,
    );
  });
});
