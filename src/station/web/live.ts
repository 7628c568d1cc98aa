import type { Context } from 'hono';
import { streamSSE } from 'hono/streaming';
import type { Desk } from '../desk.ts';

const PING_MS = 15_000;
const LISTENERS_MAX = 200;

/** Tells pages that something changed: in one job, or anywhere where none is named. The page then asks what. */
export function liveFeed(desk: Desk): (c: Context) => Response {
  let listeners = 0;
  let told = 0;
  return c => {
    if (listeners >= LISTENERS_MAX) return c.text('Too many pages follow.', 503);
    const job = c.req.query('job') ?? '';
    return streamSSE(c, async stream => {
      listeners += 1;
      await stream.writeSSE({ event: 'hello', data: '', retry: 1000 });
      const stop = desk.follow(changed => {
        if (job !== '' && changed !== job) return;
        told += 1;
        void stream.writeSSE({ event: 'changed', data: '', id: String(told) });
      });
      const ping = setInterval(() => void stream.write(': still here\n\n'), PING_MS);
      await new Promise<void>(gone => stream.onAbort(gone));
      clearInterval(ping);
      stop();
      listeners -= 1;
    });
  };
}
