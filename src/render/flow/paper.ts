import { points } from './context.ts';

export type Paper = 'letter' | 'A4';
export type Orientation = 'portrait' | 'landscape';
export type PageSize = { readonly width: number; readonly height: number };

/** Letter 8 1/2 × 11 in; A4 210 × 297 mm (ISO 216). */
const PAPERS: { readonly [P in Paper]: PageSize } = {
  letter: { width: 612, height: 792 },
  A4: { width: (210 * 72) / 25.4, height: (297 * 72) / 25.4 },
};

/** 0.6 in: every printer reaches there, and a punched hole does not reach the words. */
export const MARGIN = 43.2;

/** A page in points: a paper of that name, or the width and height that are written there. */
export function pageSize(paper: string, orientation: Orientation): PageSize {
  const named = paper === 'letter' || paper === 'A4' ? PAPERS[paper] : undefined;
  const [width, height] = paper.split(' ').map(text => points(text, 0));
  const upright = named ?? { width: width ?? 0, height: height ?? 0 };
  return orientation === 'landscape' ? { width: upright.height, height: upright.width } : upright;
}
