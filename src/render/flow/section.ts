import { type Element, isElement } from '../markup.ts';
import type { Target } from '../page.ts';
import { stack } from './blocks.ts';
import { type Context, points } from './context.ts';
import { labelSheets } from './labels.ts';
import { type BegunPage, type Chapter, fillSheets, fitWhole, type Region } from './pages.ts';
import { MARGIN, type Orientation, type PageSize, type Paper, pageSize } from './paper.ts';
import { blankSheet, evenly, heightOf, putAll, type Sheet, type Strip } from './strip.ts';

/**
 * The sheets of one section, with its head and foot on each; none where it joins the last page before it. At the end, the
 * last of them (or the page that the section went on) as far as it is free.
 */
export function* sectionSheets(
  section: Element,
  paper: Paper,
  before: BegunPage | undefined,
  shared: Pick<Context, 'fonts' | 'figures' | 'symbols' | 'awaited' | 'bookmarks' | 'complain'>,
): Generator<Sheet, BegunPage | undefined> {
  const { attributes, children } = section;
  const context: Context = { ...shared, ...PLAIN, dots: Number(attributes['dots'] ?? DOTS) };
  const orientation = (attributes['orientation'] ?? 'portrait') as Orientation;
  const size = pageSize(attributes['paper'] ?? paper, orientation);
  const margin = points(attributes['margin'], MARGIN);
  const room = size.width - 2 * margin;

  const elements = children.filter(isElement);
  const ofName = (name: string) => elements.find(element => element.name === name);
  const part = (name: 'header' | 'footer') => stack(ofName(name)?.children ?? [], room, context);
  const [header, footer] = [part('header'), part('footer')];
  const region = regionBetween(size, margin, heightOf(header, 'usual'), heightOf(footer, 'usual'));
  if (region.height < size.height / 3) context.complain(section, 'its header and footer leave no room for the rest');

  const blank = (): Sheet => {
    const sheet = blankSheet(size.width, size.height, shared.bookmarks);
    putAll(header, margin, margin, sheet, 'usual');
    return sheet;
  };
  const foot = size.height - margin - heightOf(footer, 'usual');
  const finished = (sheet: Sheet): Sheet => {
    putAll(footer, margin, foot, sheet, 'usual');
    return sheet;
  };
  const labels = ofName('labels');
  if (labels !== undefined) {
    let isFirst = true;
    for (const sheet of labelSheets(labels, blank, context)) {
      if (isFirst) sheet.targets.unshift(targetOf(section, 0));
      isFirst = false;
      yield finished(sheet);
    }
    return undefined;
  }
  const complain = (reason: string) => context.complain(section, reason);
  const parts = chapters(section, room, region, header, context);
  const begun = before !== undefined && isPlaceFor(parts, region, before, attributes['joins']) ? before : undefined;
  const sheets = fillSheets(parts, { region, blank, begun, complain });
  for (;;) {
    const next = sheets.next();
    if (next.done === true) return next.value;
    yield finished(next.value);
  }
}

/** Whether a section may go on a page that another began: one as wide, with room for all of it where it wants that. */
const isPlaceFor = (
  parts: readonly Chapter[],
  { left, width }: Region,
  before: BegunPage,
  joins: string | undefined,
): boolean =>
  before.region.left === left &&
  before.region.width === width &&
  (joins === 'yes' || (joins === 'whole' && fitWhole(parts, before)));

/** Where links to the section lead: the top of its page, or where it begins on one that it joins. */
const targetOf = ({ attributes: { bookmark = '', title = '', level = '1' } }: Element, y: number): Target => ({
  bookmark,
  title,
  level: Number(level),
  y,
});

/** What suits printers of 300, 600 and 1200 dots to the inch. */
const DOTS = 300;

const PLAIN = { style: 'body', bold: false, align: 'left', isTinted: false } as const;

/** Between head and foot, with a gap to each where it is there. */
function regionBetween({ width, height }: PageSize, margin: number, header: number, footer: number): Region {
  const top = margin + header + (header > 0 ? GAP : 0);
  const foot = margin + footer + (footer > 0 ? GAP : 0);
  return { left: margin, top, width: width - 2 * margin, height: height - top - foot };
}

const GAP = 10;

/** Strips from one forced new page to the next; the section itself is the first. */
function chapters(
  section: Element,
  room: number,
  region: Region,
  header: readonly Strip[],
  context: Context,
): readonly Chapter[] {
  const parts: { readonly begins: Element; readonly elements: Element[] }[] = [{ begins: section, elements: [] }];
  for (const element of section.children.filter(isElement)) {
    if (element.name === 'break') parts.push({ begins: element, elements: [] });
    else if (element.name !== 'header' && element.name !== 'footer') parts.at(-1)?.elements.push(element);
  }
  return parts.map(({ begins, elements }) => {
    const { joins = 'no' } = begins.attributes;
    const strips = stack(elements, room, context);
    return begins === section
      ? {
          joins: joins !== 'no',
          head: header.map(strip => ({ ...strip, keepsNext: true })),
          strips: [targetStrip(section, region), ...strips],
        }
      : { joins: joins !== 'no', head: [], strips };
  });
}

const targetStrip = (section: Element, { top }: Region): Strip => ({
  ...evenly({ height: 0 }),
  keepsNext: true,
  put: (_, y, sheet) => sheet.targets.push(targetOf(section, y > top ? y : 0)),
});
