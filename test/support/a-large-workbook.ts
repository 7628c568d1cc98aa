import ExcelJS from 'exceljs';
import { KITCHEN } from '../../fixtures/demo/kitchen.ts';
import { nm } from '../../src/units/length.ts';
import { printLength } from '../../src/units/print-length.ts';
import { lengthOf } from '../../src/units/read-length.ts';

/**
 * A workbook of about `doors` doors: the demo kitchen again and again, each time in another house with cabinets of its
 * own names and openings a little wider, so that sizes differ as they do between jobs.
 */
export async function aLargeWorkbook(doors: number): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  for (const [title, rows] of Object.entries({ ...KITCHEN, Cabinets: houses(doors) }))
    book.addWorksheet(title).addRows(rows.map(row => row.map(cell => (cell === '' ? null : cell))));
  return new Uint8Array(await book.xlsx.writeBuffer());
}

function houses(doors: number): readonly (readonly string[])[] {
  const [headings = [], ...kitchen] = KITCHEN['Cabinets'] ?? [];
  const at = (name: string) => headings.indexOf(name);
  const rows: (readonly string[])[] = [];
  let made = 0;
  for (let house = 1; made < doors; house += 1)
    for (const row of kitchen) {
      if (made >= doors) break;
      const cell = (name: string) => row[at(name)] ?? '';
      made += Number(cell('Quantity')) * (cell('Leaves') === '2' ? 2 : 1);
      rows.push(
        row.map((text, column) => {
          if (column === at('Cabinet')) return `H${house}-${text}`;
          if (column === at('Room')) return `House ${house} ${text}`;
          if (column === at('Opening width')) return wider(text, house % 16);
          // Neighbours are left out: their overlays were drawn for the kitchen's own widths.
          return column === at('Right neighbour') ? '' : text;
        }),
      );
    }
  return [headings, ...rows];
}

const wider = (width: string, sixteenths: number): string =>
  printLength(nm(lengthOf(width) + sixteenths * lengthOf('1/16')), { units: 'inch', increment: lengthOf('1/32') });
