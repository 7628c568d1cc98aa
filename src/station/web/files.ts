import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Context } from 'hono';
import { PACKAGED_STATION } from '../../packaged.ts';

const TYPES: { readonly [ending: string]: string } = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
  wasm: 'application/wasm',
};

/** The reader of symbols in pictures, from its package: the page asks for it when somebody uses a camera. */
const READER = new Map([
  ['zxing/reader/index.js', '../es/reader/index.js'],
  ['zxing/share.js', '../es/share.js'],
  ['zxing/zxing_reader.wasm', 'zxing_reader.wasm'],
]);

/** Our own scripts and styles and the reader; nothing else of the disk, whatever the name says. */
export async function serveFile(c: Context): Promise<Response> {
  const name = c.req.path.slice('/files/'.length);
  const place = placeOf(name);
  if (place === undefined) return c.notFound();
  const bytes = await readFile(place);
  const type = TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  return c.body(Uint8Array.from(bytes), 200, { 'content-type': type, 'cache-control': 'no-cache' });
}

function placeOf(name: string): URL | undefined {
  const beside = READER.get(name);
  if (beside !== undefined) return new URL(beside, `file://${readerWasm()}`);
  return /^[a-z-]+\.(css|js|svg)$/.test(name) ? new URL(name, PACKAGED_STATION) : undefined;
}

const readerWasm = (): string => createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
