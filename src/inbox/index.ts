import { mkdir } from 'node:fs/promises';
import { join, relative } from 'node:path';
import type { Host } from '../host.ts';
import { listDropped, settleTaken } from './dropped.ts';
import { openShelf, type Shelf } from './filed.ts';
import { perform, reasonOf } from './filing.ts';
import { lockFile, takeLock } from './lock.ts';
import type { News, Workbooks } from './ports.ts';
import { statusPage } from './status-page.ts';
import { type Action, type Drop, EMPTY, type Event, type State, step } from './step.ts';

/** A watched folder. What is filed is told by its folders alone, so that it may be stopped at any moment. */
export type Inbox = {
  /** Looks at the folder once, and starts what is to be done. */
  readonly poll: () => Promise<void>;
  /** Waits until all that was started is done. */
  readonly settled: () => Promise<void>;
  /** What lies in the folder and is not filed yet. */
  readonly waiting: () => readonly Drop[];
  readonly close: () => Promise<void>;
};

/** Opens a folder for watching. Throws `FolderIsTaken` where another process watches it. */
export async function openInbox(
  root: string,
  host: Host,
  workbooks: Workbooks,
  tell: (news: News) => void,
): Promise<Inbox> {
  await mkdir(join(root, '.stilebook'), { recursive: true });
  const lock = await takeLock(root, lockFile(root), host.now());
  const shelf = await openShelf(root, host);
  await settleTaken(root, inputHash => shelf.find(inputHash) !== undefined);
  const voice = tellingOnce(tell);
  const running = new Set<Promise<void>>();
  let state = EMPTY(workbooks.builders);
  const take = (event: Event): void => {
    const [next, actions] = step(state, event);
    state = next;
    for (const action of actions) start(action);
  };
  const start = (action: Action): void => {
    const work = perform(action, { root, host, workbooks, shelf, tell: voice.tell }).then(take);
    running.add(work);
    void work.finally(() => running.delete(work));
  };
  const show = statusWriter(root, host, shelf, () => state);
  return {
    poll: async () => {
      await lock.renew(host.now());
      await lookAt(root, take, voice.tell);
      await show();
    },
    settled: async () => {
      while (running.size > 0) await Promise.all(running);
      await show();
    },
    waiting: () => state.drops,
    close: async () => {
      voice.hush();
      await workbooks.close();
      await Promise.all(running);
      await lock.release();
    },
  };
}

/** Lists the folder. A share that is away for a while is no reason to end. */
async function lookAt(root: string, take: (event: Event) => void, tell: (news: News) => void): Promise<void> {
  try {
    const { dropped, passedOver } = await listDropped(root);
    tell({ kind: 'folder-there', name: '' });
    for (const { name, reason } of passedOver) tell({ kind: 'passed-over', name, reason });
    take({ kind: 'listed', files: dropped });
  } catch (refused) {
    tell({ kind: 'folder-gone', name: '', reason: reasonOf(refused) });
  }
}

/**
 * Tells of each file and of the folder what is new: the same again and again is told once. After `hush`, nothing of
 * what is broken off in the end.
 */
function tellingOnce(tell: (news: News) => void): { readonly tell: (news: News) => void; readonly hush: () => void } {
  const last = new Map<string, string>([['', 'folder-there']]);
  let isHushed = false;
  return {
    tell: news => {
      const told = 'folder' in news ? news.folder : 'reason' in news ? `${news.kind} ${news.reason}` : news.kind;
      // A workbook that is filed is news every time, even where it is the same as before.
      const isSame = last.get(news.name) === told && !('folder' in news);
      last.set(news.name, told);
      if (!isSame && !(isHushed && news.kind === 'failed')) tell(news);
    },
    hush: () => {
      isHushed = true;
    },
  };
}

/** Writes the status page where it has changed. */
function statusWriter(root: string, host: Host, shelf: Shelf, state: () => State): () => Promise<void> {
  let shown = '';
  return async () => {
    const filed = shelf.all().map(each => ({ ...each, folder: relative(root, each.folder) }));
    const page = statusPage(filed, state().drops);
    if (page === shown) return;
    shown = page;
    // A page that cannot be written now is written at the next change: nothing hangs on it.
    await host.writeFile(join(root, 'inbox.html'), new TextEncoder().encode(page)).catch(() => undefined);
  };
}
