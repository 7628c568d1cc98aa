import { type Element, isElement, type Node } from '../markup.ts';
import { typeset } from '../typeset.ts';
import { columnWidths } from './columns.ts';
import { type Context, points, SIZES, signFor, TINT, within } from './context.ts';
import { figureStrip, symbolStrip, symbolWidth } from './fixed.ts';
import { naturalWidth, paragraph } from './paragraph.ts';
import { sideBySide } from './side-by-side.ts';
import { evenly, heightOf, putAll, ROOM_KEPT, type Strip, stacked } from './strip.ts';
import { table } from './table.ts';
import { isInline, spansOf } from './words.ts';

/** The strips of blocks and words below each other, none of them wider than `room`. */
export function stack(nodes: readonly Node[], room: number, context: Context): readonly Strip[] {
  if (nodes.every(isInline)) return words(nodes, room, context);
  const strips: Strip[] = [];
  let run: Node[] = [];
  for (const node of nodes) {
    if (isElement(node) && !isInline(node)) {
      strips.push(...words(run, room, context), ...block(node, room, context));
      run = [];
    } else run.push(node);
  }
  return [...strips, ...words(run, room, context)];
}

function words(nodes: readonly Node[], room: number, context: Context): readonly Strip[] {
  const spans = spansOf(nodes, context);
  const isEmpty = spans.every(span => span !== 'break' && span.set === '');
  return isEmpty ? [] : paragraph(spans, room, { size: SIZES[context.style], align: context.align }, context.fonts);
}

function block(element: Element, room: number, outer: Context): readonly Strip[] {
  const { name, attributes, children } = element;
  const context = within(element, outer);
  switch (name) {
    case 't':
      return text(element, room, context);
    case 'li':
      return item(element, room, context);
    case 'row':
      return [row(element, room, context)];
    case 'table':
      return table(element, room, context, { stack, widest });
    case 'card':
      return [card(element, room, context)];
    case 'keep':
      return [stacked(stack(children, room, context), attributes['keep'] === 'next')];
    case 'box':
      return [tickBox(element, room, context)];
    case 'write':
      return [lineToWriteOn(element, room, context)];
    case 'rule':
      return [rule(points(attributes['weight'], 0.75), room)];
    case 'sp':
      return [emptyRoom(points(attributes['h'], 6))];
    case 'figure':
      return [figureStrip(element, room, context)];
    case 'bar':
    case 'qr':
      return [symbolStrip(element, room, context)];
    case 'mark':
      return [target(element)];
    default:
      return [];
  }
}

function text(element: Element, room: number, context: Context): readonly Strip[] {
  const { to, lines, keep } = element.attributes;
  if (to !== undefined) signFor(element, to, context);
  const linesMax = lines === undefined ? undefined : Number(lines);
  const setting = { size: SIZES[context.style], align: context.align, to, linesMax };
  const strips = paragraph(spansOf(element.children, context), room, setting, context.fonts);
  const isHeading = context.style === 'heading' || context.style === 'title';
  if (keep !== 'next' && !isHeading) return strips;
  return strips.map(strip => ({ ...strip, keepsNext: true }));
}

/** A mark, and the words beside it: lines after the first stand under the first word. */
function item(element: Element, room: number, context: Context): readonly Strip[] {
  const mark = [{ set: typeset(element.attributes['mark'] ?? '•'), bold: context.bold }];
  const size = SIZES[context.style];
  const indent = Math.min(naturalWidth(mark, size, context.fonts) + 0.5 * size, room / 2);
  const [sign] = paragraph(mark, indent, { size, align: 'left', linesMax: 1 }, context.fonts);
  const lines = paragraph(spansOf(element.children, context), room - indent, { size, align: 'left' }, context.fonts);
  return lines.map((line, index) => ({
    ...line,
    put: (x, y, sheet, spacing) => {
      if (index === 0) sign?.put(x, y, sheet, spacing);
      line.put(x + indent, y, sheet, spacing);
    },
  }));
}

function row(element: Element, room: number, context: Context): Strip {
  const columns = element.children.filter(isElement);
  const gap = points(element.attributes['gap'], 12);
  const asked = columns.map(column => column.attributes['width'] ?? '*');
  const natural = (index: number) => widest(columns[index]?.children ?? [], context);
  const inside = room - gap * (columns.length - 1);
  const { widths, reason } = columnWidths(asked, inside, natural, text => points(text, 0));
  if (reason !== undefined) context.complain(element, reason);
  let x = 0;
  const placed = columns.map((column, index) => {
    const width = widths[index] ?? 0;
    const at = x;
    x += width + gap;
    return { x: at, strips: stack(column.children, width, within(column, context)) };
  });
  const place = element.attributes['align'] as 'top' | 'middle' | 'bottom' | undefined;
  return sideBySide(placed, { pad: 0, place: place ?? 'top' });
}

function card(element: Element, room: number, context: Context): Strip {
  const pad = points(element.attributes['pad'], 8);
  const weight = points(element.attributes['border'], 0.75);
  const strips = stack(element.children, room - 2 * pad, context);
  return sideBySide([{ x: pad, strips }], {
    pad,
    place: 'top',
    trim: (x, y, height, sheet) => {
      if (element.attributes['fill'] === 'light') sheet.tints.push({ x, y, width: room, height, grey: TINT });
      if (weight > 0) sheet.items.push({ kind: 'frame', x, y, width: room, height, weight });
    },
  });
}

function tickBox(element: Element, room: number, context: Context): Strip {
  const size = points(element.attributes['size'], 11);
  const indent = size + 6;
  const setting = { size: SIZES[context.style], align: 'left' } as const;
  const lines = paragraph(spansOf(element.children, context), Math.max(room - indent, 1), setting, context.fonts);
  const line = element.children.length === 0 ? [] : lines;
  // The square stands a little below the base line, as a capital in a box would.
  const base = Math.max(line[0]?.usual.baseline ?? 0, size * 0.86);
  const drop = base - (line[0]?.usual.baseline ?? base);
  // Two boxes below each other do not touch.
  const height = Math.max(base + size * 0.14 + 1.5, drop + heightOf(line, 'usual'));
  return {
    ...evenly({ height, baseline: base }),
    put: (x, y, sheet, spacing) => {
      sheet.items.push({ kind: 'frame', x: x + 0.5, y: y + base - size * 0.86, width: size, height: size, weight: 1 });
      putAll(line, x + indent, y + drop, sheet, spacing);
    },
  };
}

function lineToWriteOn(element: Element, room: number, context: Context): Strip {
  const height = points(element.attributes['height'], 22);
  const { label } = element.attributes;
  const setting = { size: SIZES.small, align: 'left' } as const;
  const spans = [{ set: typeset(label ?? ''), bold: false }];
  const under = label === undefined ? [] : paragraph(spans, room, setting, context.fonts);
  return {
    ...evenly({ height: height + heightOf(under, 'usual') + 2 }),
    put: (x, y, sheet, spacing) => {
      const foot = y + height;
      sheet.items.push({ kind: 'line', x1: x, y1: foot, x2: x + room, y2: foot, weight: 0.75 });
      putAll(under, x, foot + 1, sheet, spacing);
    },
  };
}

const emptyRoom = (height: number): Strip => ({
  usual: { height },
  close: { height: height * ROOM_KEPT.close },
  isRoom: true,
  put: () => {},
});

const rule = (weight: number, room: number): Strip => ({
  ...evenly({ height: weight + 2 }),
  put: (x, y, sheet) => {
    const middle = y + 1 + weight / 2;
    sheet.items.push({ kind: 'line', x1: x, y1: middle, x2: x + room, y2: middle, weight });
  },
});

function target(element: Element): Strip {
  const { bookmark = '', title = '' } = element.attributes;
  return {
    ...evenly({ height: 0 }),
    keepsNext: true,
    put: (_, y, sheet) => sheet.targets.push({ bookmark, title, level: 2, y }),
  };
}

/** How wide blocks and words are by themselves, with nothing to make them break. */
export function widest(nodes: readonly Node[], context: Context): number {
  if (nodes.every(isInline)) return naturalWidth(spansOf(nodes, context), SIZES[context.style], context.fonts) + HAIR;
  return Math.max(0, ...nodes.filter(isElement).map(element => widestOf(element, within(element, context))));
}

/** So that a sum of floats never makes a line break that was measured to fit. */
const HAIR = 0.01;

function widestOf(element: Element, context: Context): number {
  const { name, attributes, children } = element;
  const words = isInline(element) || children.length === 0 ? 0 : widest(children, context);
  switch (name) {
    case 'bar':
    case 'qr':
      return symbolWidth(element, context);
    case 'figure':
      return context.figures.get(attributes['name'] ?? '')?.width ?? 0;
    case 'box':
      return points(attributes['size'], 11) + (words === 0 ? 1 : 6 + words);
    case 'card':
      return words + 2 * points(attributes['pad'], 8);
    case 't':
    case 'keep':
      return words;
    default:
      return 0;
  }
}
