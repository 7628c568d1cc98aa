import { type Element, isElement } from '../markup.ts';
import { stack } from './blocks.ts';
import { type Context, points } from './context.ts';
import { labelSheets } from './labels.ts';
import { fillSheets, type Region, sheetsAtLeast } from './pages.ts';
import { MARGIN, type Orientation, type Paper, pageSize } from './paper.ts';
import { blankSheet, heightOf, putAll, type Sheet, type Strip } from './strip.ts';

/** The sheets of one section, with its head and foot on each. */
export function sectionSheets(
  section: Element,
  paper: Paper,
  shared: Pick<Context, 'fonts' | 'figures' | 'symbols' | 'awaited' | 'bookmarks' | 'complain'>,
): readonly Sheet[] {
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
  const body = elements.filter(({ name }) => name !== 'header' && name !== 'footer');
  const labels = ofName('labels');
  const sheets =
    labels === undefined
      ? fewest(chapters(body, room, context), region, blank, reason => context.complain(section, reason))
      : labelSheets(labels, blank, context);
  const { title = '', bookmark = '', level = '1' } = attributes;
  sheets[0]?.targets.unshift({ bookmark, title, level: Number(level), y: 0 });
  const foot = size.height - margin - heightOf(footer, 'usual');
  for (const sheet of sheets) putAll(footer, margin, foot, sheet, 'usual');
  return sheets;
}

/** Set closer where that saves a sheet: nobody wants to carry one for its last two rows. Type stays as large. */
function fewest(
  strips: readonly (readonly Strip[])[],
  region: Region,
  blank: () => Sheet,
  complain: (reason: string) => void,
): Sheet[] {
  const sheets = fillSheets(strips, region, 'usual', blank, complain);
  if (sheets.length > SHEETS_CARRIED_MAX || sheetsAtLeast(strips, region, 'close') >= sheets.length) return sheets;
  const closer = fillSheets(strips, region, 'close', blank, () => {});
  return closer.length < sheets.length ? closer : sheets;
}

/** Among more, one less is not worth the closeness. */
const SHEETS_CARRIED_MAX = 12;

/** What suits printers of 300, 600 and 1200 dots to the inch. */
const DOTS = 300;

const PLAIN = { style: 'body', bold: false, align: 'left', isTinted: false } as const;

/** Between head and foot, with a gap to each where it is there. */
function regionBetween(
  { height }: { readonly height: number },
  margin: number,
  header: number,
  footer: number,
): Region {
  const top = margin + header + (header > 0 ? GAP : 0);
  const foot = margin + footer + (footer > 0 ? GAP : 0);
  return { left: margin, top, height: height - top - foot };
}

const GAP = 10;

/** Strips from one forced new page to the next. */
function chapters(body: readonly Element[], room: number, context: Context): readonly (readonly Strip[])[] {
  const parts: Element[][] = [[]];
  for (const element of body) {
    if (element.name === 'break') parts.push([]);
    else parts.at(-1)?.push(element);
  }
  return parts.map(part => stack(part, room, context));
}
