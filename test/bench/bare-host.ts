// The floor of a durable scan: a host that does nothing but write what comes in to a file, sync it, and answer.
import { closeSync, fdatasyncSync, openSync, writeSync } from 'node:fs';
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

const out = openSync(join(process.argv[2] ?? '', 'bare'), 'a');
let waiting: { readonly body: string; readonly response: ServerResponse }[] = [];

const server = createServer((request, response) => {
  let body = '';
  request.on('data', piece => {
    body += piece;
  });
  request.on('end', () => {
    waiting.push({ body, response });
    if (waiting.length === 1) setImmediate(keep);
  });
});

/** What came in together is made lasting together. */
function keep(): void {
  const batch = waiting;
  waiting = [];
  for (const { body } of batch) writeSync(out, body);
  fdatasyncSync(out);
  for (const { response } of batch) response.end('{}');
}

server.listen(0, '127.0.0.1', () => console.log(`http://127.0.0.1:${(server.address() as AddressInfo).port}`));
process.on('exit', () => closeSync(out));
