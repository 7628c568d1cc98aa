import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { type Inbox, openInbox } from '../inbox/index.ts';
import { FolderIsTaken } from '../inbox/lock.ts';
import type { News } from '../inbox/ports.ts';
import { pauseOf } from '../inbox/step.ts';
import { machine } from '../machine.ts';
import type { ExitCode } from './exit-code.ts';
import { openBell } from './inbox-bell.ts';
import { openBuilders } from './inbox-builders.ts';
import { count, tellLine } from './telling.ts';

export type InboxOptions = {
  readonly notify?: string;
  /** Seconds between two looks at the folder. */
  readonly poll: number;
  readonly templates?: string;
  /** Files what lies in the folder, and ends. */
  readonly once?: boolean;
  readonly json?: boolean;
};

/** `stilebook inbox DIR`: watches a folder until it is stopped; a workbook dropped in it is filed with its packet. */
export async function inbox(folder: string, options: InboxOptions): Promise<ExitCode> {
  const root = resolve(folder);
  const tell = teller(root, options);
  const workbooks = openBuilders(Math.max(1, Math.min(8, availableParallelism())), options.templates);
  const opened = await open(() => openInbox(root, machine, workbooks, tell));
  if (opened === undefined) {
    await workbooks.close();
    return 2;
  }
  if (options.json !== true) tellLine(`Watching ${root}. Drop workbooks in it; stop with Ctrl-C.`);
  await watch(root, opened, options);
  await opened.close();
  return 0;
}

async function open(take: () => Promise<Inbox>): Promise<Inbox | undefined> {
  try {
    return await take();
  } catch (refused) {
    if (!(refused instanceof FolderIsTaken)) throw refused;
    process.stderr.write(`stilebook: ${refused.message}\n`);
    return undefined;
  }
}

async function watch(root: string, opened: Inbox, options: InboxOptions): Promise<void> {
  let isStopped = false;
  const stop = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      isStopped = true;
      stop.abort();
    });
  }
  const bar = barOf(opened, options);
  const bell = openBell(root);
  while (!isStopped) {
    await opened.poll();
    bar();
    if (options.once === true && (await isDone(opened))) break;
    const waiting = opened.waiting();
    // What lies there is looked at in even steps: how long it has been quiet is counted in them.
    if (waiting.length === 0) await bell.sleepUntilRung(options.poll, stop.signal);
    else await sleep(options.poll * pauseOf(waiting) * 1000, undefined, { signal: stop.signal }).catch(() => undefined);
  }
  bell.close();
}

/** With `--once`, what is stuck is left for another time. */
async function isDone(opened: Inbox): Promise<boolean> {
  if (opened.waiting().some(({ phase }) => phase !== 'stuck')) return false;
  await opened.settled();
  return opened.waiting().every(({ phase }) => phase === 'stuck');
}

/** On a terminal, a line that tells how much is in work. */
function barOf(opened: Inbox, { json }: InboxOptions): () => void {
  if (json === true || !process.stderr.isTTY) return () => undefined;
  let most = 0;
  return () => {
    const left = opened.waiting().filter(({ phase }) => phase !== 'stuck').length;
    most = left === 0 ? 0 : Math.max(most, left);
    const done = most === 0 ? 0 : Math.round(((most - left) / most) * BAR_WIDTH);
    process.stderr.write(most < 2 ? ERASE : `${ERASE}${'#'.repeat(done)}${'.'.repeat(BAR_WIDTH - done)} ${left} to go`);
  };
}

const BAR_WIDTH = 24;
const ERASE = '\r\u001b[K';

/** Tells what happened: to a person in words, to a program as a line of JSON; and to the shop's own program. */
function teller(root: string, { json, notify }: InboxOptions): (news: News) => void {
  return news => {
    if (process.stderr.isTTY) process.stderr.write(ERASE);
    if (json === true) tellLine(JSON.stringify({ at: machine.now().toISOString(), ...news }));
    else tellLine(`${clock(machine.now())}  ${sentence(news)}`);
    if (notify !== undefined && (news.kind === 'packet' || news.kind === 'to-mend'))
      run(notify, news.kind, join(root, news.folder));
  };
}

const clock = (now: Date): string => now.toTimeString().slice(0, 8);

function sentence(news: News): string {
  switch (news.kind) {
    case 'packet': {
      const warnings = news.warnings === 0 ? '' : `, ${count(news.warnings, 'warning')}`;
      return `${news.name}: ${count(news.doors, 'door')}${warnings}; job ${news.job}, revision ${news.revision}, in ${news.folder} (${news.seconds.toFixed(1)} s)`;
    }
    case 'to-mend':
      return `${news.name}: ${count(news.problems, 'problem')} to mend; marked in ${news.folder}`;
    case 'known':
      return `${news.name}: the same workbook is filed already, in ${news.folder}`;
    case 'failed':
      return `${news.name}: ${news.reason}; it stays where it is and is tried again`;
    case 'passed-over':
      return `${news.name} is passed over: ${news.reason}`;
    case 'folder-there':
      return 'The folder can be read again.';
    case 'folder-gone':
      return `The folder cannot be read now: ${news.reason}`;
  }
}

/** The shop's program gets the kind of news and the folder. What becomes of it is its own affair. */
function run(program: string, ...told: readonly string[]): void {
  const child = spawn(program, told, { stdio: 'ignore', timeout: 120_000 });
  child.on('error', failure => process.stderr.write(`stilebook: ${program}: ${failure.message}\n`));
}
