// An inbox over plain workbooks, to be killed: folder, and `once` to end when all is filed.
import { setTimeout as sleep } from 'node:timers/promises';
import { openInbox } from '../../src/inbox/index.ts';
import { machine } from '../../src/machine.ts';
import { plainWorkbooks } from '../support/plain-workbooks.ts';

const [folder = '', mode = ''] = process.argv.slice(2);
const inbox = await openInbox(folder, machine, plainWorkbooks(2, 3), () => undefined);
process.send?.('open');
for (let quiet = 0; mode !== 'once' || quiet < 3; ) {
  await inbox.poll();
  await sleep(4);
  if (mode === 'once') await inbox.settled();
  quiet = inbox.waiting().length === 0 ? quiet + 1 : 0;
}
await inbox.close();
process.disconnect?.();
