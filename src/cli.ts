#!/usr/bin/env node
import { Command, CommanderError, Option } from 'commander';
import type { ExitCode } from './commands/exit-code.ts';
import type { PacketOptions } from './commands/packet.ts';
import { programVersion } from './packaged.ts';
import { SHEET_NAMES } from './render/sheet-names.ts';

/** Arguments → one call → exit code. Each command is loaded only when it is called: a check need not load the PDF. */
const program = new Command('stilebook')
  .description('From a workbook of cabinets to a complete shop packet for frame-and-panel doors.')
  .version(programVersion())
  .showHelpAfterError()
  .exitOverride();

let exitCode: ExitCode = 0;

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
    const { packet } = await import('./commands/packet.ts');
    exitCode = await packet(file, options);
  });

program
  .command('check')
  .description('say everything that is wrong with a workbook, and build nothing')
  .argument('<file>', 'workbook (.xlsx) or list of openings (.csv)')
  .option('--json', 'say it as JSON')
  .action(async (file: string, options: { json?: boolean }) => {
    const { check } = await import('./commands/check.ts');
    exitCode = await check(file, options);
  });

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
