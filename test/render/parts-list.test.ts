import { Readable } from 'node:stream';
import excel from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { tableWorkbook } from '../../src/import/table-workbook.ts';
import type { RenderInput } from '../../src/render/draft.ts';
import { csvOf, partsTable } from '../../src/render/parts-list.ts';
import { aJob, anOpening } from '../support/a-job.ts';
import { drafted, laidOut } from '../support/packet.ts';

let input: RenderInput;
beforeAll(async () => {
  input = await laidOut(aJob({ openings: [anOpening({ cabinet: '=HYPERLINK("x")', room: '+1, "two"\nthree' })] }));
});

const book = async (bytes: Uint8Array) => {
  const read = new excel.Workbook();
  await read.xlsx.load(Buffer.from(bytes) as unknown as Parameters<typeof read.xlsx.load>[0]);
  return read;
};

describe('the parts list', () => {
  it('has a row for each part, in a workbook that another program would read', async () => {
    const sheet = (await book(await tableWorkbook(partsTable(drafted(input))))).worksheets[0];
    const codes = input.doorSet.parts.map((_, index) => sheet?.getRow(index + 2).getCell(1).value);
    expect(codes).toEqual(input.doorSet.parts.map(({ code }) => code));
    expect(sheet?.rowCount).toBe(input.doorSet.parts.length + 1);
  });

  it('has lengths as they are printed, and in millimetres', async () => {
    const sheet = (await book(await tableWorkbook(partsTable(drafted(input))))).worksheets[0];
    // A stile of a door of 30 in and two overlays of 1/2 in: 31 in, 787.4 mm.
    const row = sheet?.getRow(2);
    expect([row?.getCell(8).value, row?.getCell(11).value]).toEqual(['31', 787.4]);
  });

  it('has no cell that a spreadsheet would run', async () => {
    const sheet = (await book(await tableWorkbook(partsTable(drafted(input))))).worksheets[0];
    const kinds = new Set<number>();
    sheet?.eachRow(row => row.eachCell(cell => kinds.add(cell.type)));
    expect(kinds.has(excel.ValueType.Formula)).toBe(false);
    expect(sheet?.getRow(2).getCell(4).value).toBe('=HYPERLINK("x")');
  });

  it('as text, has an apostrophe before what would run, and quotes round what would break a row', async () => {
    const csv = csvOf(partsTable(drafted(input)));
    expect(csv).toContain(`"'=HYPERLINK(""x"")"`);
    expect(csv).toContain(`"'+1, ""two""\nthree"`);
    const read = new excel.Workbook();
    const sheet = await read.csv.read(Readable.from([csv.slice(1)]));
    expect(sheet.rowCount).toBe(input.doorSet.parts.length + 1);
  });

  it('has the same bytes for the same parts', async () => {
    const [one, two] = [
      await tableWorkbook(partsTable(drafted(input))),
      await tableWorkbook(partsTable(drafted(input))),
    ];
    expect(Buffer.from(one).equals(two)).toBe(true);
  });
});
