import type { Hono } from 'hono';
import { stream } from 'hono/streaming';
import { backUp } from '../ledger/backup.ts';
import { exportCsv } from '../ledger/export-csv.ts';
import type { Shop } from './app.ts';
import { thisMachineOnly } from './guard.ts';

/** What other programs ask for: progress as data, and all that was ever scanned. */
export function exportRoutes(app: Hono, { desk, ledger, tell }: Shop): void {
  app.get('/api/progress/:job', async c => {
    const progress = await desk.progress(c.req.param('job'));
    return progress === undefined ? c.json({ problem: 'no such job' }, 404) : c.json(progress);
  });
  app.get('/export.csv', c => {
    c.header('content-type', 'text/csv; charset=utf-8');
    c.header('content-disposition', 'attachment; filename="scans.csv"');
    return stream(
      c,
      async out => {
        for await (const line of exportCsv(ledger)) await out.write(line);
      },
      async trouble => tell(trouble),
    );
  });
  app.get('/ledger.jsonl', thisMachineOnly, c =>
    stream(
      c,
      async out => {
        for await (const line of backUp(ledger)) await out.write(line);
      },
      async trouble => tell(trouble),
    ),
  );
}
