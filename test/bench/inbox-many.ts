import { setTimeout as sleep } from 'node:timers/promises';
import { openBuilders } from '../../src/commands/inbox-builders.ts';
import { openInbox } from '../../src/inbox/index.ts';
import { machine } from '../../src/machine.ts';

// inbox-many.ts FOLDER BUILDERS: files what lies in the folder with so many builders, and prints the seconds it took.
const [root = '', builders = ''] = process.argv.slice(2);
const inbox = await openInbox(root, machine, openBuilders(Number(builders), undefined), () => undefined);
const start = performance.now();
do {
  await inbox.poll();
  await sleep(50);
} while (inbox.waiting().length > 0);
process.stdout.write(`${(performance.now() - start) / 1000}`);
await inbox.close();
