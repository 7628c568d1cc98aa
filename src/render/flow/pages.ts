import { heightOf, type Sheet, SLACK, type Spacing, type Strip } from './strip.ts';

/** Where strips go on each page of a section. */
export type Region = { readonly left: number; readonly top: number; readonly height: number };

/**
 * Fills pages with strips from the top down. Strips that keep the next one move to a new page together with it; what is
 * taller than a whole page is split, or said to be too tall.
 */
export function fillSheets(
  chapters: readonly (readonly Strip[])[],
  region: Region,
  spacing: Spacing,
  blank: () => Sheet,
  complain: (reason: string) => void,
): Sheet[] {
  const sheets: Sheet[] = [];
  for (const chapter of chapters) {
    const filler = startFilling(region, spacing, blank, complain, sheets);
    filler.newPage();
    for (const unit of unitsOf(chapter)) filler.place(unit);
  }
  return sheets;
}

/** How many pages they take at least. */
export const sheetsAtLeast = (chapters: readonly (readonly Strip[])[], region: Region, spacing: Spacing): number =>
  chapters.reduce((sheets, strips) => {
    const solid = strips.filter(strip => strip.isRoom !== true);
    return sheets + Math.max(1, Math.ceil((heightOf(solid, spacing) - SLACK) / region.height));
  }, 0);

/** Strips that belong on one page: each but the last keeps the next one. Room between them does not part them. */
function* unitsOf(strips: readonly Strip[]): Generator<readonly Strip[]> {
  let unit: Strip[] = [];
  let isKept = false;
  for (const strip of strips) {
    unit.push(strip);
    isKept = strip.isRoom === true ? isKept : strip.keepsNext === true;
    if (isKept) continue;
    yield unit;
    unit = [];
  }
  if (unit.length > 0) yield unit;
}

function startFilling(
  region: Region,
  spacing: Spacing,
  blank: () => Sheet,
  complain: (reason: string) => void,
  sheets: Sheet[],
) {
  let sheet = blank();
  let used = 0;
  const newPage = () => {
    sheet = blank();
    sheets.push(sheet);
    used = 0;
  };
  const put = (strip: Strip) => {
    if (strip.isRoom === true && used === 0) return;
    strip.put(region.left, region.top + used, sheet, spacing);
    used += strip[spacing].height;
  };
  const isFitting = (height: number) => used + height <= region.height + SLACK;

  const place = (unit: readonly Strip[]): void => {
    const height = heightOf(unit, spacing);
    if (isFitting(height)) {
      unit.forEach(put);
      return;
    }
    const heads = headsFor(unit[0], region, spacing);
    if (used > 0 && height + (heads?.[spacing].height ?? 0) <= region.height + SLACK) {
      newPage();
      if (heads !== undefined) put(heads);
      unit.forEach(put);
    } else if (unit.length > 1) for (const strip of unit) place([strip]);
    else if (unit[0] !== undefined) placeTall(unit[0], heads);
  };
  /** One strip that does not fit where it is, nor on a page of its own with its heads. */
  const placeTall = (strip: Strip, heads: Strip | undefined): void => {
    if (used > region.height * 0.6) {
      newPage();
      if (heads !== undefined) put(heads);
    }
    const [head, rest] = strip.split?.(region.height - used, spacing) ?? [];
    if (head !== undefined && rest !== undefined) {
      put(head);
      newPage();
      if (heads !== undefined) put(heads);
      place([rest]);
    } else if (used > 0) {
      newPage();
      place([strip]);
    } else
      complain(
        `something in it is ${Math.ceil(strip[spacing].height)} points tall, and a page holds ${Math.floor(region.height)}`,
      );
  };
  return { newPage, place };
}

/** Heads that would fill a page by themselves are not worth repeating. */
const headsFor = (strip: Strip | undefined, region: Region, spacing: Spacing): Strip | undefined =>
  strip?.heads !== undefined && strip.heads[spacing].height < region.height / 2 ? strip.heads : undefined;
