import { barcodeFor } from './barcode.ts';
import type { Barcode } from './codes.ts';

/** What can be scanned from the wall beside a tag: which station this is, and what to do with the piece. */
export type Poster =
  | { readonly kind: 'station'; readonly station: string }
  | { readonly kind: 'action'; readonly action: PosterAction };

export const POSTER_ACTIONS = ['undo', 'spoiled', 'yes', 'no'] as const;
export type PosterAction = (typeof POSTER_ACTIONS)[number];

/** The symbol of a poster: that of a code of the job without a number, so that no tag of any job can be taken for it. */
export const posterBarcode = (poster: Poster): Barcode =>
  barcodeFor('', poster.kind === 'station' ? `station ${poster.station}` : `action ${poster.action}`);
