import type { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import type { Language } from '../../diagnostics/languages.ts';
import type { Shop } from './app.ts';
import { DEVICE_COOKIE } from './guard.ts';
import { languageOf } from './languages.ts';
import type { Pages } from './pages.ts';

/** A year: a tablet on a machine is paired once. */
const LASTS_SECONDS = 365 * 24 * 3600;

export function pairRoutes(app: Hono, shop: Shop, pages: Pages): void {
  const page = (language: Language, wrong: boolean): string =>
    pages('pair', language, { title: '', wrong, bare: true });
  app.get('/pair', c => c.html(page(languageOf(c, shop), false)));
  app.post('/pair', async c => {
    const { code } = await c.req.parseBody();
    const token = shop.guard.pairing?.pair(typeof code === 'string' ? code : '');
    if (token === undefined) return c.html(page(languageOf(c, shop), true), 403);
    setCookie(c, DEVICE_COOKIE, token, { httpOnly: true, sameSite: 'Strict', path: '/', maxAge: LASTS_SECONDS });
    return c.redirect('/', 303);
  });
}
