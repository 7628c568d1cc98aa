import { Hono } from 'hono';
import type { Host } from '../../host.ts';
import type { Desk } from '../desk.ts';
import { scanSchema } from '../floor/scan.ts';
import type { Ledger } from '../ledger/ledger.ts';
import type { PacketFolders } from '../packet-folders.ts';
import { exportRoutes } from './export-routes.ts';
import { serveFile } from './files.ts';
import { type Guard, headers, knownName, ownPagesOnly, pairedOnly, rateLimit, shortOnly } from './guard.ts';
import { languageOf } from './languages.ts';
import { liveFeed } from './live.ts';
import { pageRoutes } from './page-routes.ts';
import { openPages } from './pages.ts';
import { pairRoutes } from './pair-routes.ts';
import { sayAnswerCard } from './say-answer.ts';

/** All that the web side stands on. */
export type Shop = {
  readonly desk: Desk;
  readonly ledger: Ledger;
  readonly packets: PacketFolders;
  readonly guard: Guard;
  readonly host: Pick<Host, 'now'>;
  /** Hears of what the ledger or the machine refused. */
  readonly tell: (trouble: unknown) => void;
};

/** A scan with its reason is under a kilobyte. */
const BODY_MAX = 8 * 1024;

export function shopApp(shop: Shop): Hono {
  const app = new Hono();
  const pages = openPages(clock);
  app.use(headers);
  app.use(knownName(shop.guard));
  app.use(rateLimit(shop.guard, shop.host.now));
  app.use(ownPagesOnly);
  app.use(pairedOnly(shop.guard));
  app.use(shortOnly(BODY_MAX));
  app.get('/files/*', serveFile);
  app.get('/live', liveFeed(shop.desk));
  app.post('/scans', async c => {
    const scan = scanSchema.safeParse(await c.req.json().catch(() => undefined));
    if (!scan.success) return c.json({ problems: scan.error.issues.map(each => each.message) }, 400);
    return c.json(sayAnswerCard(await shop.desk.scan(scan.data), languageOf(c, shop), clock));
  });
  pairRoutes(app, shop, pages);
  pageRoutes(app, shop, pages);
  exportRoutes(app, shop);
  app.notFound(c => {
    const language = languageOf(c, shop);
    return c.html(pages('error', language, { title: '404', missing: true }), 404);
  });
  app.onError((trouble, c) => {
    // Whoever hung up in the middle of a request is no trouble of the host.
    if (isHungUp(trouble)) return c.body(null, 400);
    shop.tell(trouble);
    return c.html(pages('error', languageOf(c, shop), { title: '503', away: true }), 503);
  });
  return app;
}

const isHungUp = (trouble: Error): boolean => 'code' in trouble && trouble.code === 'ECONNRESET';

/** The clock on the shop's wall: hours and minutes where the host stands. */
function clock(iso: string): string {
  const time = new Date(iso);
  const two = (count: number): string => String(count).padStart(2, '0');
  return Number.isNaN(time.getTime()) ? '' : `${two(time.getHours())}:${two(time.getMinutes())}`;
}
