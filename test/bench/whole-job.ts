import { readFileSync } from 'node:fs';
import { deflateSync, inflateSync } from 'node:zlib';
import { PDFArray, PDFDocument, PDFName, PDFRawStream } from 'pdf-lib';
import { calculate } from '../../src/calculate/index.ts';
import { assetsFor } from '../../src/commands/assets.ts';
import { forShortWork } from '../../src/engine.ts';
import { importJob } from '../../src/import/index.ts';
import { readXlsx } from '../../src/import/read-xlsx.ts';
import { layOut } from '../../src/layout/index.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { render } from '../../src/render/index.ts';
import { type Measured, peakMemory, timed } from './measurement.ts';

/** What one size of job costs: processor seconds of each stage, the floor's two pieces of work, peak memory. */
export type WholeJob = {
  readonly doors: number;
  readonly pages: number;
  readonly stages: { readonly [stage: string]: number };
  readonly total: number;
  readonly floor: number;
  readonly memory: number;
};

/** The whole way of a workbook, stage by stage, in this process; then the floor. */
async function wholeJob(file: string): Promise<WholeJob> {
  const bytes = readFileSync(file);
  const solver = await loadSolver();
  const assets = await assetsFor('en', undefined);
  const read = await timed(() => readXlsx(bytes, 'bench.xlsx'));
  const workbook = sound(read.value.value, read);
  const job = await timed(() => importJob(workbook));
  const doorSet = await timed(() => calculate(job.value.value));
  const plan = await timed(() => layOut(job.value.value, doorSet.value.value, solver));
  const packet = await timed(() =>
    render(
      {
        job: job.value.value,
        doorSet: doorSet.value.value,
        plan: plan.value.value,
        diagnostics: [],
        revision: { letter: 'A', inputHash: '', changes: undefined },
        program: 'bench',
      },
      assets,
    ),
  );
  const memory = peakMemory();
  const stages = seconds({ read, import: job, calculate: doorSet, layout: plan, render: packet });
  const floor = await floorOf(bytes, packet.value.value.packetPdf);
  return {
    doors: doorSet.value.value.doors.length,
    pages: packet.value.value.pages.packet,
    stages,
    total: Object.values(stages).reduce((sum, each) => sum + each, 0),
    floor,
    memory,
  };
}

/** What nobody can leave out: the spreadsheet library reads this workbook, and the pages' own bytes are compressed. */
async function floorOf(workbook: Uint8Array, packetPdf: Uint8Array): Promise<number> {
  const contents = await pageContents(packetPdf);
  // Here, so that its memory and its loading are not the program's.
  const { default: ExcelJS } = await import('exceljs');
  const reading = await timed(() => new ExcelJS.Workbook().xlsx.load(workbook.slice().buffer));
  const packing = await timed(() => contents.map(content => deflateSync(content).length));
  return reading.processorSeconds + packing.processorSeconds;
}

async function pageContents(pdf: Uint8Array): Promise<readonly Uint8Array[]> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  return document.getPages().flatMap(page => {
    const streams = page.node.Contents();
    const parts = streams instanceof PDFArray ? streams.asArray().map(ref => document.context.lookup(ref)) : [streams];
    return [Buffer.concat(parts.map(part => (part instanceof PDFRawStream ? plain(part) : Buffer.alloc(0))))];
  });
}

const plain = ({ dict, contents }: PDFRawStream): Uint8Array =>
  dict.has(PDFName.of('Filter')) ? inflateSync(contents) : contents;

const seconds = (stages: { readonly [stage: string]: Measured<unknown> }) =>
  Object.fromEntries(Object.entries(stages).map(([stage, measured]) => [stage, measured.processorSeconds]));

function sound<T>(value: T | undefined, found: unknown): T {
  if (value === undefined) throw new Error(`the bench's own workbook does not read: ${JSON.stringify(found)}`);
  return value;
}

// As the command does that builds a packet.
forShortWork();
const [file = ''] = process.argv.slice(2);
process.stdout.write(JSON.stringify(await wholeJob(file)));
