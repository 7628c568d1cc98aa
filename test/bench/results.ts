import { existsSync, readFileSync } from 'node:fs';
import type { Measurement } from './measurement.ts';

/** What the last run of each bench gave, and on what; the README shows those that have a target. */
export type Results = {
  readonly [subject: string]: {
    readonly machine: { readonly processor: string; readonly cores: number; readonly platform: string };
    readonly node: string;
    readonly measurements: readonly Measurement[];
  };
};

export const RESULTS = new URL('results.json', import.meta.url).pathname;

export const readResults = (): Results =>
  existsSync(RESULTS) ? (JSON.parse(readFileSync(RESULTS, 'utf8')) as Results) : {};
