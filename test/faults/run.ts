// The long fault runs: npm run faults [name…]. Prints what was tried, what came of it, and what was lost: must be 0.

import { startOwnPostgres } from '../support/postgres.ts';
import { crashDatabase } from './crashed-database.ts';
import { judgePlans } from './cutting-plans.ts';
import { printHostile } from './hostile-names.ts';
import { sendHostile } from './hostile-requests.ts';
import { fillDisk } from './inbox-full-disk.ts';
import { killInbox } from './inbox-kills.ts';
import { killInBurst } from './killed-station.ts';
import { sameByLibreOffice } from './libreoffice.ts';
import { tryMutations } from './mutated-workbooks.ts';
import { chanceOf } from './mutations.ts';

/** What a run tells of itself; `lost` holds a line for each thing that must not have happened. */
export type Told = { readonly tried: number; readonly lost: readonly string[]; readonly more: string };

const RUNS: { readonly [name: string]: () => Promise<Told> } = {
  workbooks: mutatedWorkbooks,
  'cutting-plans': () => judgePlans(10_000, 1),
  libreoffice: sameByLibreOffice,
  'inbox-kills': killedInboxes,
  'inbox-full-disk': fillDisk,
  stations: killedStations,
  'stations-on-a-server': killedStationsOnAServer,
  database: crashedDatabase,
  requests: hostileRequests,
  names: hostileNames,
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

/** A host is killed in each of twenty bursts of ten thousand scans. */
function killedStations(): Promise<Told> {
  return killedInBursts(20, 10_000, undefined);
}

async function killedStationsOnAServer(): Promise<Told> {
  const server = await startOwnPostgres();
  const told = await killedInBursts(5, 10_000, server.url);
  await server.stop();
  return told;
}

async function killedInBursts(bursts: number, scans: number, database: string | undefined): Promise<Told> {
  const chance = chanceOf(7);
  const lost: string[] = [];
  let resent = 0;
  for (let burst = 0; burst < bursts; burst += 1) {
    const outcome = await killInBurst(scans, () => chance(1000) / 1000, database);
    lost.push(...outcome.lost);
    resent += outcome.resent;
  }
  return { tried: bursts * scans, lost, more: `${bursts} kills, ${resent} scans sent again` };
}

async function crashedDatabase(): Promise<Told> {
  const { scans, refused, troubles, lost } = await crashDatabase(10, 400);
  return { tried: scans, lost, more: `10 crashes, ${refused} times refused, ${troubles} connections broken` };
}

async function hostileRequests(): Promise<Told> {
  const { tried, refused, lost } = await sendHostile(20_000, 1);
  return { tried, lost, more: `${refused} refused` };
}

/** Two hundred packets, each with its own names, judged on paper. */
async function hostileNames(): Promise<Told> {
  const { tried, pages, lost } = await printHostile(200, 1);
  return { tried, lost, more: `${pages} pages` };
}

/** Ten days of twenty-five kills each, every day with other instants. */
async function killedInboxes(): Promise<Told> {
  const days: Told[] = [];
  for (let seed = 1; seed <= 10; seed++) days.push(await killInbox(25, seed));
  const lost = days.flatMap(day => day.lost);
  return { tried: days.reduce((total, { tried }) => total + tried, 0), lost, more: days[0]?.more ?? '' };
}
