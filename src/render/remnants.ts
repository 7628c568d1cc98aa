import type { Stock } from '../import/job.ts';
import type { Offcut } from '../layout/shop-plan.ts';
import type { Length } from '../units/length.ts';
import { printedBelow, printLength } from '../units/print-length.ts';
import { type Draft, inOneUnit } from './draft.ts';
import type { Table } from './parts-list.ts';

/**
 * The offcuts that are kept, as rows of the next job's Stock: in the order of its columns, with the tag that the piece on the
 * rack bears after them. None is written longer or wider than it is, and none has a price: it is paid for.
 */
export function remnantsTable(draft: Draft): Table {
  const heads = [...STOCK_HEADS, draft.say('remnants.tag')];
  return {
    title: draft.say('remnants.title'),
    columns: heads.map(header => ({ header, width: WIDTH })),
    rows: draft.plan.cutPlans.flatMap(plan => {
      const stock = draft.job.stock.find(({ name }) => name === plan.stock);
      const offcuts = plan.bins.flatMap(bin => bin.offcuts);
      return stock === undefined ? [] : offcuts.map(offcut => rowOf(draft, stock, offcut));
    }),
  };
}

/** As the workbook has them, in whatever language the packet is. */
const STOCK_HEADS = [
  'Stock',
  'Kind',
  'Species',
  'Thickness',
  'Width',
  'Length',
  'On hand',
  'Buy',
  'Price',
  'Priced by',
  'Grain',
  'Density',
  'Defects',
];

const WIDTH = 14;

function rowOf(draft: Draft, stock: Stock, { code, length, width }: Offcut): Table['rows'][number] {
  const { name, kind, species, thickness, grain } = stock;
  const price = '';
  const pricedBy = '';
  // Where one is given, the row that more is bought by has it.
  const density = '';
  const defects = '';
  return [
    name,
    kind,
    species,
    exact(thickness),
    measured(width, draft),
    measured(length, draft),
    1,
    'no',
    price,
    pricedBy,
    kind === 'sheet' ? grain : '',
    density,
    defects,
    `${draft.job.number} ${code}`,
  ];
}

/** As a tape shows it, and no more than there is. */
function measured(length: Length, { job }: Draft): string {
  const format = inOneUnit(job);
  return printLength(printedBelow(length, format), format);
}

/** To the nanometre, because all rows of a stock have the same thickness. */
const exact = (length: Length): string => `${length / NANOMETRES_OF_MILLIMETRE} mm`;

const NANOMETRES_OF_MILLIMETRE = 1_000_000;
