#!/usr/bin/env node
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import type { ExitCode } from './commands/exit-code.ts';
import type { InboxOptions } from './commands/inbox.ts';
import type { PacketOptions } from './commands/packet.ts';
import type { FloorOptions, StationCommandOptions } from './commands/station.ts';
import { openWorkbook } from './commands/workbook-file.ts';
import { forShortWork } from './engine.ts';
import type { Solver } from './layout/solver.ts';
import { programVersion } from './packaged.ts';
import { SHEET_NAMES } from './render/sheet-names.ts';

/** Arguments → one call → exit code. Each command is loaded only when it is called: a check need not load the PDF. */
const program = new Command('stilebook')
  .description('From a workbook of cabinets to a complete shop packet for frame-and-panel doors.')
  .version(programVersion())
  .showHelpAfterError()
  .exitOverride();

let exitCode: ExitCode = 0;

// Who reads the first lines and goes away (`stilebook packet … | head -1`) has not broken the packet.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (failure: NodeJS.ErrnoException) => {
    if (failure.code !== 'EPIPE') throw failure;
  });

program
  .command('packet')
  .description('build the shop packet of a workbook')
  .argument('<file>', 'workbook (.xlsx) or list of openings (.csv)')
  .option('--out <folder>', 'folder to write, made whole or not at all (default: the name of the workbook)')
  .option('--revision <letter>', 'revision that the packet carries', 'A')
  .addOption(new Option('--only <sheet...>', 'print only these sheets').choices(SHEET_NAMES))
  .option('--tags <code...>', 'print only the tags of these parts, doors or offcuts')
  .option('--templates <folder>', 'templates and words of your own, in place of those that ship')
  .option('--json', 'say what was made as JSON')
  .action(async (file: string, options: PacketOptions) => {
    forShortWork();
    const [opened, solver, { packet }] = await Promise.all([
      openWorkbook(file),
      solverLoaded(),
      import('./commands/packet.ts'),
    ]);
    exitCode = await packet(file, opened, solver, options);
  });

program
  .command('check')
  .description('say everything that is wrong with a workbook, and build nothing')
  .argument('<file>', 'workbook (.xlsx) or list of openings (.csv)')
  .option('--json', 'say it as JSON')
  .action(async (file: string, options: { json?: boolean }) => {
    forShortWork();
    const [opened, solver, { check }] = await Promise.all([
      openWorkbook(file),
      solverLoaded(),
      import('./commands/check.ts'),
    ]);
    exitCode = check(file, opened, solver, options);
  });

program
  .command('explain')
  .description('say in words how every number of a door or part came about')
  .argument('<file>', 'workbook (.xlsx) or list of openings (.csv)')
  .argument('<code>', 'code of a door or part, as on its tag (or what a scanner reads from it)')
  .option('--json', 'say it as JSON')
  .action(async (file: string, code: string, options: { json?: boolean }) => {
    const [opened, { explain }] = await Promise.all([openWorkbook(file), import('./commands/explain.ts')]);
    exitCode = explain(file, opened, code, options);
  });

program
  .command('new')
  .description('write a blank workbook to start a job with')
  .argument('<file>', 'workbook to write (.xlsx)')
  .addOption(new Option('--units <units>', 'what a bare number in it means').choices(['inch', 'mm']).default('inch'))
  .action(async (file: string, options: { units: 'inch' | 'mm' }) => {
    const { newFile } = await import('./commands/new.ts');
    exitCode = await newFile(file, options);
  });

program
  .command('inbox')
  .description('watch a folder: a workbook dropped in it comes back as a packet, or with what is to mend marked')
  .argument('<folder>', 'folder to watch')
  .option('--notify <program>', 'program to run after each file, with `packet` or `to-mend` and the folder')
  .option('--poll <seconds>', 'how often to look at the folder', secondsOf, 0.5)
  .option('--templates <folder>', 'templates and words of your own, in place of those that ship')
  .option('--once', 'file what lies in the folder, and end')
  .option('--json', 'tell each event as a line of JSON')
  .action(async (folder: string, options: InboxOptions) => {
    forShortWork();
    const { inbox } = await import('./commands/inbox.ts');
    exitCode = await inbox(folder, options);
  });

onTheFloor(program.command('station'))
  .description('serve the scan pages to the browsers of the shop')
  .option('--port <number>', 'port to serve them on', portOf, 8080)
  .option('--lan', 'serve other devices of the shop’s network too, each once it is paired')
  .action(async (options: StationCommandOptions) => {
    const { station } = await import('./commands/station.ts');
    exitCode = await station(options);
  });

onTheFloor(program.command('progress'))
  .description('say how far a job is')
  .argument('<job>', 'job number')
  .option('--json', 'say it as JSON')
  .action(async (job: string, options: FloorOptions & { json?: boolean }) => {
    const { progress } = await import('./commands/progress.ts');
    exitCode = await progress(job, options);
  });

const ledger = program.command('ledger').description('copy, restore or export what was scanned');

onTheFloor(ledger.command('backup'))
  .description('write a copy of all scans that they can be restored from')
  .argument('<file>', 'file to write (.jsonl)')
  .action(async (file: string, options: FloorOptions) => {
    const { ledgerBackup } = await import('./commands/ledger.ts');
    exitCode = await ledgerBackup(file, options);
  });

onTheFloor(ledger.command('restore'))
  .description('bring the scans of a copy in; those that are there already stay')
  .argument('<file>', 'copy made by backup')
  .action(async (file: string, options: FloorOptions) => {
    const { ledgerRestore } = await import('./commands/ledger.ts');
    exitCode = await ledgerRestore(file, options);
  });

onTheFloor(ledger.command('export'))
  .description('write all scans as a table')
  .argument('<file>', 'file to write (.csv)')
  .action(async (file: string, options: FloorOptions) => {
    const { ledgerExport } = await import('./commands/ledger.ts');
    exitCode = await ledgerExport(file, options);
  });

async function solverLoaded(): Promise<Solver> {
  const { loadSolver } = await import('./layout/solver.ts');
  return loadSolver();
}

/** Where the scans and the packets are: every command about them asks the same. */
function onTheFloor(command: Command): Command {
  return command
    .option('--data <folder>', 'where the ledger and the pairing key are kept', 'station')
    .option('--database <url>', 'keep the ledger on a server (postgres://…) instead of in the data folder')
    .option('--shop <name>', 'whose scans these are, where several shops share a server', 'shop')
    .option('--packets <folder>', 'packets as the inbox files them (default: the folder packets beside the data)')
    .option('--packet <folder...>', 'single packets');
}

function secondsOf(text: string): number {
  const seconds = Number(text);
  if (!(seconds >= 0.05 && seconds <= 3600))
    throw new InvalidArgumentError('A time is a number of seconds from 0.05 to 3600.');
  return seconds;
}

function portOf(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65535) throw new InvalidArgumentError('A port is a number from 0 to 65535.');
  return port;
}

try {
  await program.parseAsync();
} catch (refused) {
  const { exitCodeOf, tellRefusal } = await import('./commands/exit-code.ts');
  if (refused instanceof CommanderError) exitCode = refused.exitCode === 0 ? 0 : 2;
  else {
    tellRefusal(refused);
    exitCode = exitCodeOf(refused);
  }
}
process.exitCode = exitCode;
