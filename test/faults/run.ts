// The long fault runs: npm run faults [name…]. Prints what was tried, what came of it, and what was lost: must be 0.
import { sameByLibreOffice } from './libreoffice.ts';
import { tryMutations } from './mutated-workbooks.ts';

/** What a run tells of itself; `lost` holds a line for each thing that must not have happened. */
export type Told = { readonly tried: number; readonly lost: readonly string[]; readonly more: string };

const RUNS: { readonly [name: string]: () => Promise<Told> } = {
  workbooks: mutatedWorkbooks,
  libreoffice: sameByLibreOffice,
};

const wanted = process.argv.slice(2);
let anyLost = false;
for (const [name, run] of Object.entries(RUNS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const { tried, lost, more } = await run();
  console.log(`${name}: tried ${tried}, lost ${lost.length}; ${more}`);
  for (const line of lost.slice(0, 20)) console.log(`  ${line}`);
  anyLost ||= lost.length > 0;
}
process.exitCode = anyLost ? 1 : 0;

async function mutatedWorkbooks(): Promise<Told> {
  const { tried, refused, toMend, sound, lost, slowestSeconds } = await tryMutations(5000, 1000);
  const megabytes = process.resourceUsage().maxRSS / 1024;
  const tooLarge = megabytes > 512 ? [`${megabytes.toFixed(0)} MB of memory`] : [];
  const more = `${refused} refused, ${toMend} to mend, ${sound} sound; slowest ${slowestSeconds.toFixed(2)} s, at most ${megabytes.toFixed(0)} MB`;
  return { tried, lost: [...lost, ...tooLarge], more };
}
