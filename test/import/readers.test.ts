import ExcelJS from 'exceljs';
import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import { readCsv } from '../../src/import/read-csv.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { findings } from '../support/drawn-workbook.ts';
import { readerContract, type Texts } from './readers.contract.ts';

async function toXlsx(rows: Texts): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.addWorksheet('Cabinets').addRows(rows.map(row => [...row]));
  return new Uint8Array(await book.xlsx.writeBuffer());
}

const toCsv = (separator: string) => async (rows: Texts) =>
  Buffer.from(rows.map(row => row.map(cell => `"${cell.replace(/"/g, '""')}"`).join(separator)).join('\r\n'));

describe('every reader keeps the contract', () => {
  readerContract('xlsx', toXlsx, readXlsx);
  for (const separator of [',', ';', '\t']) {
    readerContract(`csv by ${JSON.stringify(separator)}`, toCsv(separator), async (bytes, file) =>
      readCsv(bytes, file),
    );
  }
});

describe('a list of openings as text', () => {
  const openings = (text: string) => {
    const { value, diagnostics } = readCsv(Buffer.from(text), 'B 7.csv');
    const job = importJob(value ?? { file: '', sheets: [] });
    return { job: job.value, found: findings([...diagnostics, ...(value === undefined ? [] : job.diagnostics)]) };
  };

  it.each([
    ['inch marks need no care', 'Cabinet,W,H,Hinge\nB1,14 3/8",30",left\n'],
    ['inch marks in quotes are doubled', 'Cabinet,W,H,Hinge\n"B1","14 3/8""","30",left'],
    ['a byte-order mark', '\ufeffCabinet,W,H,Hinge\r\nB1,14 3/8,30,left\r\n'],
    ['semicolons', 'Cabinet;W;H;Hinge\nB1;14 3/8;30;left'],
    ['tabs', 'Cabinet\tW\tH\tHinge\nB1\t14 3/8\t30\tleft'],
    ['lines of an old machine', 'Cabinet,W,H,Hinge\rB1,14 3/8,30,left'],
    ['blank lines above and below', '\n\nCabinet,W,H,Hinge\nB1,14 3/8,30,left\n\n\n'],
  ])('%s', (_, text) => {
    const { job, found } = openings(text);
    expect(found).toEqual([]);
    expect(job.openings.map(({ cabinet, width, height }) => [cabinet, width, height])).toEqual([
      ['B1', 365_125_000, 762_000_000],
    ]);
    expect(job.number).toBe('B 7');
  });

  it.each([
    ['nothing', '', ['file error file-empty']],
    [
      'a quotation mark that is not closed',
      'Cabinet,W,H,Hinge\n"B1,14 3/8,30,left\nB2,1,1,left',
      ['file error quote-not-closed'],
    ],
    ['a cell that does not read', 'Cabinet,W,H,Hinge\nB1,x,30,left', ['Cabinets!B2 error length-unreadable']],
    ['a zero byte', 'Cabinet,W\0', ['file error text-not-unicode']],
  ])('%s is told', (_, text, expected) => {
    expect(openings(text).found).toEqual(expected);
  });

  it('is UTF-8, and no other code page', () => {
    const { diagnostics } = readCsv(Buffer.from([0x43, 0xe9, 0x2c]), 'a.csv');
    expect(findings(diagnostics)).toEqual(['file error text-not-unicode']);
  });

  it.each([
    ['rows', `a,b\n${'x,y\n'.repeat(12_000)}`],
    ['columns', ','.repeat(400)],
  ])('has its limits: %s', (of, text) => {
    const { diagnostics } = readCsv(Buffer.from(text), 'a.csv');
    expect(diagnostics.map(each => each.facts)).toEqual([expect.objectContaining({ of })]);
  });
});
