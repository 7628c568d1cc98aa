import { evenly, heightOf, type Sheet, SLACK, type Spacing, type Strip } from './strip.ts';

/** Where strips go on each page of a section. */
export type Region = { readonly left: number; readonly top: number; readonly width: number; readonly height: number };

/** Strips that begin on a new page; those that `joins`, on the page that is begun, where that saves a sheet. */
export type Chapter = {
  readonly strips: readonly Strip[];
  readonly joins: boolean;
  /** What comes above them on a page that is begun. */
  readonly head: readonly Strip[];
};

/** A page that is begun: `used` is how far down from its region's top. */
export type BegunPage = { readonly sheet: Sheet; readonly region: Region; readonly used: number };

/** What pages are made with: `begun`, the page before them, is where a first chapter that joins may go. */
export type Pages = {
  readonly region: Region;
  readonly blank: () => Sheet;
  readonly begun: BegunPage | undefined;
  readonly complain: (reason: string) => void;
};

/**
 * Fills pages with strips from the top down. Strips that keep the next one move to a new page together with it; what is
 * taller than a whole page is split, or said to be too tall. Gives each new page once nothing more goes on it, so that those
 * of a large job are never in memory together; and at the end the last one as far as it is used.
 */
export function* fillSheets(
  chapters: readonly Chapter[],
  { region, blank, begun, complain }: Pages,
): Generator<Sheet, BegunPage | undefined> {
  let last = begun;
  for (const chapter of chapters) {
    const layout = fewest(chapter, chapter.joins ? last : undefined, region, complain);
    for (const [index, placed] of layout.pages.entries()) {
      const isBegun = layout.joins && index === 0;
      if (!isBegun && last !== undefined && last.sheet !== begun?.sheet) yield last.sheet;
      const page: Omit<BegunPage, 'used'> = isBegun && last !== undefined ? last : { sheet: blank(), region };
      for (const { strip, y } of placed) {
        strip.put(page.region.left, page.region.top + y, page.sheet, layout.spacing);
      }
      last = { ...page, used: layout.used };
    }
  }
  if (last !== undefined && last.sheet !== begun?.sheet) yield last.sheet;
  return last;
}

/** Whether all chapters fit below each other on the page that is begun. */
export const fitWhole = (chapters: readonly Chapter[], { used, region }: BegunPage): boolean =>
  chapters.reduce((down, { head, strips }) => down + DIVIDER + heightOf([...head, ...strips], 'close'), used) <=
  region.height + SLACK;

/**
 * On the page that is begun where that saves a sheet, and set closer where that does: nobody wants to carry one for its
 * last two rows. Type stays as large.
 */
function fewest(
  { strips, head }: Chapter,
  begun: BegunPage | undefined,
  region: Region,
  complain: (reason: string) => void,
): Layout {
  const usual = layOut(strips, region, 'usual', complain);
  if (usual.pages.length > SHEETS_CARRIED_MAX) return usual;
  const ways = [usual];
  if (begun !== undefined) ways.push(joined([...head, ...strips], begun, region, 'usual'));
  // What is wrong has been said.
  if (sheetsAtLeast(strips, region) < usual.pages.length) ways.push(layOut(strips, region, 'close', () => {}));
  if (begun !== undefined) ways.push(joined([...head, ...strips], begun, region, 'close'));
  return ways.reduce((best, way) => (newPages(way) < newPages(best) ? way : best));
}

const newPages = ({ pages, joins }: Layout): number => pages.length - (joins ? 1 : 0);

/** How many pages they take at least, set close. */
function sheetsAtLeast(strips: readonly Strip[], region: Region): number {
  const solid = strips.filter(strip => strip.isRoom !== true);
  return Math.max(1, Math.ceil((heightOf(solid, 'close') - SLACK) / region.height));
}

/** Among more, one less is not worth the closeness. */
const SHEETS_CARRIED_MAX = 12;

/** Below what is on the page already, apart by a rule. */
function joined(strips: readonly Strip[], begun: BegunPage, region: Region, spacing: Spacing): Layout {
  const first = { used: begun.used + DIVIDER, height: begun.region.height };
  const below = layOut(strips, region, spacing, () => {}, first);
  const [onIt = [], ...others] = below.pages;
  const divider = onIt.length === 0 ? [] : [{ strip: dividerOf(region), y: begun.used }];
  return { ...below, pages: [[...divider, ...onIt], ...others], joins: true };
}

const dividerOf = ({ width }: Region): Strip => ({
  ...evenly({ height: DIVIDER }),
  put: (x, y, sheet) => {
    const middle = y + DIVIDER / 2;
    sheet.items.push({ kind: 'line', x1: x, y1: middle, x2: x + width, y2: middle, weight: 1.2 });
  },
});

/** Room for the rule between those that share a page. */
const DIVIDER = 20;

/** What goes where, before it is put there: `y` from the region's top; the first page may be one that is begun. */
type Layout = {
  readonly pages: readonly (readonly Placed[])[];
  readonly used: number;
  readonly spacing: Spacing;
  readonly joins: boolean;
};
type Placed = { readonly strip: Strip; readonly y: number };

function layOut(
  strips: readonly Strip[],
  region: Region,
  spacing: Spacing,
  complain: (reason: string) => void,
  first: { readonly used: number; readonly height: number } = { used: 0, height: region.height },
): Layout {
  let page: Placed[] = [];
  let { used, height: room } = first;
  const pages = [page];
  const newPage = () => {
    page = [];
    pages.push(page);
    used = 0;
    room = region.height;
  };
  const put = (strip: Strip) => {
    if (strip.isRoom === true && used === 0) return;
    page.push({ strip, y: used });
    used += strip[spacing].height;
  };
  const isFitting = (height: number) => used + height <= room + SLACK;

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
    if (used > room * 0.6) {
      newPage();
      if (heads !== undefined) put(heads);
    }
    const [head, rest] = strip.split?.(room - used, spacing) ?? [];
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
  for (const unit of unitsOf(strips)) place(unit);
  return { pages, used, spacing, joins: false };
}

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

/** Heads that would fill a page by themselves are not worth repeating. */
const headsFor = (strip: Strip | undefined, region: Region, spacing: Spacing): Strip | undefined =>
  strip?.heads !== undefined && strip.heads[spacing].height < region.height / 2 ? strip.heads : undefined;
