import { readFileSync } from 'node:fs';

/** What ships with the program, found from where this file lies: `src/` and `dist/` both stand beside the rest. */
const beside = (path: string): URL => new URL(`../${path}`, import.meta.url);

export function programVersion(): string {
  const { version } = JSON.parse(readFileSync(beside('package.json'), 'utf8')) as { readonly version: string };
  return version;
}
