import { copyLedger, restoreLedger } from '../station/copies.ts';
import { NoCopy } from '../station/ledger/backup.ts';
import type { ExitCode } from './exit-code.ts';
import { type FloorOptions, floorOf } from './station.ts';
import { tellLine } from './telling.ts';

/** `stilebook ledger backup FILE`: a copy of all that was ever scanned, from a running station too. */
export async function ledgerBackup(file: string, options: FloorOptions): Promise<ExitCode> {
  await copyLedger(floorOf(options), 'copy', file, () => undefined);
  tellLine(`${file} holds the whole ledger.`);
  return 0;
}

/** `stilebook ledger export FILE`: the same as a table for a spreadsheet program. */
export async function ledgerExport(file: string, options: FloorOptions): Promise<ExitCode> {
  await copyLedger(floorOf(options), 'table', file, () => undefined);
  tellLine(`${file} holds all scans.`);
  return 0;
}

/** `stilebook ledger restore FILE`: brings a copy's events in; what is there already stays as it is. */
export async function ledgerRestore(file: string, options: FloorOptions): Promise<ExitCode> {
  try {
    const fresh = await restoreLedger(floorOf(options), file, () => undefined);
    tellLine(`Brought in from ${file}: ${fresh}.`);
    return 0;
  } catch (refused) {
    if (!(refused instanceof NoCopy)) throw refused;
    process.stderr.write(`stilebook: ${file}: ${refused.message}. Nothing was brought in.\n`);
    return 1;
  }
}
