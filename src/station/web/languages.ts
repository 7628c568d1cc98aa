import type { Context } from 'hono';
import type { Language } from '../../diagnostics/languages.ts';
import type { Shelf } from '../floor/shelf.ts';
import { preferredLanguage } from './words.ts';

/** The browser's language where we have it; otherwise that of the jobs. */
export const languageOf = (c: Context, shop: { readonly packets: { readonly shelf: () => Shelf } }): Language =>
  preferredLanguage(c.req.header('accept-language') ?? '', languageOfJobs(shop.packets.shelf()));

const languageOfJobs = (shelf: Shelf): Language => [...shelf.jobs.values()].at(-1)?.book.manifest.job.language ?? 'en';
