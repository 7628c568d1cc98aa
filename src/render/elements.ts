/**
 * The markup that templates are written in: one small language, XML in form, made for sheets of a packet.
 *
 * Lengths are points (`12`), or inches, millimetres or thousandths (`0.5in`, `13mm`, `10mil`). A yes-or-no attribute
 * takes `yes` or `no`. White space is as in a web page: any run of it is one space.
 *
 * **A template is one or more sections.**
 *
 * - `<section title bookmark level orientation paper margin dots joins>` starts a new page. `title` puts it into the
 *   outline, at `level` 1 (usual) or 2; `bookmark` lets links lead there. `orientation` is `portrait` or `landscape`;
 *   `paper` is `letter`, `A4` or a size such as `50mm 25mm`, by default the job's; `margin` by default 0.6 in;
 *   `dots` of the printer to the inch, 300 by default (it suits 600 and 1200; label printers often have 203). One with
 *   `joins="yes"` begins on the last page before it, under a rule and with its header, where that saves a sheet; with
 *   `joins="whole"` only where all of it fits there. Where it saves its last
 *   sheet, a section is set closer: less room above and below things, type as large as ever.
 * - `<header>`, `<footer>`: first in a section; on each of its pages.
 * - `<break/>` a new page; `<break joins="yes"/>` none where that saves a sheet: what follows, up to the next break,
 *   then begins on the same page, under a rule. `<mark bookmark title/>` a target of links, in the outline (a level lower than
 *   its section) when it has a title; it stays with what follows.
 *
 * **Blocks** stand below each other, in a section, a cell, a card, a column:
 *
 * - `<t style bold align to lines keep>` a paragraph. `style` is one of `small` (9 pt), `body` (10, the usual), `large`
 *   (12.5: lengths), `heading`, `title`, `display`, `huge`; `align` is `left`, `centre`, `right`. `to` names the bookmark it links
 *   to. `lines` is how many lines it may take at most; what does not fit ends in an ellipsis (for labels: elsewhere
 *   text takes the lines it needs). `keep="next"` keeps it on one page with the block after it; headings do so anyway.
 *   Lengths such as `14 3/8` are set with real fractions by themselves and still read and copied as `14 3/8`.
 * - Inside a paragraph: words, `<b>` bold words, `<br/>`, `<page/>` this page's number, `<pages/>` how many there are,
 *   `<at to/>` the page of a bookmark.
 * - `<li mark style bold>` a paragraph with a hanging mark (`•`, `1.`), a number of them make a list.
 * - `<row gap align>` of `<col width align>`: columns beside each other, never split between pages. `width` is a
 *   length, a share (`2*`; `*` is the usual) or `auto` (as wide as its longest line). `align` on `row` is where
 *   shorter columns stand: `top`, `middle`, `bottom`; on `col` it is the text's.
 * - `<table widths aligns rules pad style keep>` of `<tr head fill bold keep>` of `<td span align bold style fill>`.
 *   `widths` as of columns, `aligns` as of text, one for each column, apart by spaces. `rules` is `rows` (usual),
 *   `grid` or `none`. Rows with `head="yes"` come first and again on each page. A row is never split; `keep="next"`
 *   keeps it with the next. A cell holds words as a paragraph does, or blocks. `fill="light"` tints a row or cell.
 * - `<card pad border fill>` blocks in a frame of `border` points (0.75; 0 for none), never split.
 * - `<keep keep>` blocks that stay on one page together, where one page holds them; with `keep="next"`, with the block
 *   after them too.
 * - `<box size/>` a box to tick. With words in it, they stand beside it.
 * - `<write height label/>` a line to write on, with a small label under it.
 * - `<rule weight/>` a line across. `<sp h/>` empty room; at the top of a page it vanishes.
 * - `<figure name align/>` one of the drawings, in its own size.
 * - `<bar code module height text align/>` the Code 128 symbol of `code`, with its quiet zones. It is never scaled:
 *   `module` (10 mil) is what it is, and a place too narrow for it is an error. `text="yes"` writes the code under it.
 *   Symbols never stand in a tinted cell.
 * - `<qr code module align/>` a QR symbol, module 20 mil, for phones.
 *
 * **Labels**: `<labels across down width height left top pitch-x pitch-y start>` of `<label>`s, each of blocks that must
 * fit into it: an absolute grid on the sheet of its section (which wants `margin="0"`), filled row by row from label
 * number `start` (1), on as many sheets as it takes. `pitch-x`, `pitch-y` go from label to label; `pad` is kept free
 * inside each.
 */
export type ElementName = keyof typeof shapes;

/** The attributes an element takes and what they may say; the elements it may hold, and `text` for words. */
export type Shape = {
  readonly name: ElementName;
  readonly takes: ReadonlyMap<string, RegExp>;
  readonly holds: ReadonlySet<string>;
};

/** What an element may be; undefined for a name that no element has. */
export const shapeOf = (name: string): Shape | undefined => SHAPES.get(name);

const YES_NO = /^(yes|no)$/;
const WORD = /^.*$/s;
const LENGTH = /^\d*\.?\d+(in|mm|mil)?$/;
const COUNT = /^[1-9]\d{0,4}$/;
const ALIGN = /^(left|centre|right)$/;
const STYLE = /^(small|body|large|heading|title|display|huge)$/;
const WIDTH = /^(auto|\d*\.?\d*\*|\d*\.?\d+(in|mm)?)$/;
const WIDTHS = /^(auto|\d*\.?\d*\*|\d*\.?\d+(in|mm)?)( (auto|\d*\.?\d*\*|\d*\.?\d+(in|mm)?))*$/;
const FILL = /^(light|none)$/;
const NEXT = /^(next|no)$/;

const INLINE = ['text', 'b', 'br', 'page', 'pages', 'at'] as const;
const BLOCKS = [
  't',
  'li',
  'row',
  'table',
  'card',
  'keep',
  'box',
  'write',
  'rule',
  'sp',
  'figure',
  'bar',
  'qr',
  'mark',
] as const;

const shapes = {
  packet: { takes: {}, holds: ['section'] },
  section: {
    takes: {
      title: WORD,
      bookmark: WORD,
      level: /^[12]$/,
      orientation: /^(portrait|landscape)$/,
      paper: /^(letter|A4|\d*\.?\d+(in|mm)? \d*\.?\d+(in|mm)?)$/,
      margin: LENGTH,
      dots: COUNT,
      joins: /^(yes|no|whole)$/,
    },
    holds: ['header', 'footer', 'break', 'labels', ...BLOCKS],
  },
  header: { takes: {}, holds: BLOCKS },
  footer: { takes: {}, holds: BLOCKS },
  break: { takes: { joins: YES_NO }, holds: [] },
  mark: { takes: { bookmark: WORD, title: WORD }, holds: [] },
  t: {
    takes: { style: STYLE, bold: YES_NO, align: ALIGN, to: WORD, lines: COUNT, keep: NEXT },
    holds: INLINE,
  },
  b: { takes: {}, holds: INLINE },
  br: { takes: {}, holds: [] },
  page: { takes: {}, holds: [] },
  pages: { takes: {}, holds: [] },
  at: { takes: { to: WORD }, holds: [] },
  li: { takes: { mark: WORD, style: STYLE, bold: YES_NO }, holds: INLINE },
  row: { takes: { gap: LENGTH, align: /^(top|middle|bottom)$/ }, holds: ['col'] },
  col: { takes: { width: WIDTH, align: ALIGN }, holds: BLOCKS },
  table: {
    takes: {
      widths: WIDTHS,
      aligns: /^(left|centre|right)( (left|centre|right))*$/,
      rules: /^(rows|grid|none)$/,
      pad: LENGTH,
      style: STYLE,
      keep: YES_NO,
    },
    holds: ['tr'],
  },
  tr: { takes: { head: YES_NO, fill: FILL, bold: YES_NO, keep: NEXT }, holds: ['td'] },
  td: {
    takes: { span: COUNT, align: ALIGN, bold: YES_NO, style: STYLE, fill: FILL },
    holds: [...INLINE, ...BLOCKS],
  },
  card: { takes: { pad: LENGTH, border: LENGTH, fill: FILL }, holds: BLOCKS },
  keep: { takes: { keep: NEXT }, holds: BLOCKS },
  box: { takes: { size: LENGTH, style: STYLE }, holds: INLINE },
  write: { takes: { height: LENGTH, label: WORD }, holds: [] },
  rule: { takes: { weight: LENGTH }, holds: [] },
  sp: { takes: { h: LENGTH }, holds: [] },
  figure: { takes: { name: WORD, align: ALIGN }, holds: [] },
  bar: { takes: { code: WORD, module: LENGTH, height: LENGTH, text: YES_NO, align: ALIGN }, holds: [] },
  qr: { takes: { code: WORD, module: LENGTH, align: ALIGN }, holds: [] },
  labels: {
    takes: {
      across: COUNT,
      down: COUNT,
      width: LENGTH,
      height: LENGTH,
      left: LENGTH,
      top: LENGTH,
      'pitch-x': LENGTH,
      'pitch-y': LENGTH,
      pad: LENGTH,
      start: COUNT,
    },
    holds: ['label'],
  },
  label: { takes: {}, holds: BLOCKS },
} satisfies {
  readonly [name: string]: {
    readonly takes: { readonly [attribute: string]: RegExp };
    readonly holds: readonly string[];
  };
};

/** Every element of a packet is looked up. */
const SHAPES: ReadonlyMap<string, Shape> = new Map(
  Object.entries(shapes).map(([name, { takes, holds }]) => [
    name,
    { name: name as ElementName, takes: new Map(Object.entries(takes)), holds: new Set(holds) },
  ]),
);
