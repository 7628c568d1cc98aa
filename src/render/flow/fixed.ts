import type { Element } from '../markup.ts';
import type { Symbology } from '../symbols.ts';
import { typeset } from '../typeset.ts';
import { type Context, points, SIZES } from './context.ts';
import { paragraph, startOf } from './paragraph.ts';
import { evenly, type Strip } from './strip.ts';

/** A drawing in its own size. One that is missing or wider than its place is a mistake of whoever drew it. */
export function figureStrip(element: Element, room: number, context: Context): Strip {
  const name = element.attributes['name'] ?? '';
  const figure = context.figures.get(name);
  if (figure === undefined) return complained(element, context, `there is no drawing "${name}"`);
  if (figure.width > room + 0.01) {
    return complained(element, context, `the drawing "${name}" is ${wide(figure.width, room)}`);
  }
  return {
    ...evenly({ height: figure.height }),
    put: (x, y, sheet) =>
      sheet.items.push({ kind: 'figure', x: startOf(x, room, context.align, figure.width), y, figure }),
  };
}

/**
 * A symbol with its quiet zones. Its module is a whole number of the printer's dots and its place begins on one, so that
 * all its bars print alike. It is never scaled: one that does not fit is a mistake of the sheet.
 */
export function symbolStrip(element: Element, room: number, context: Context): Strip {
  const { code = '', height, text } = element.attributes;
  const symbol = symbolOf(element, context);
  if (symbol === undefined) return complained(element, context, `"${code}" cannot be a symbol`);
  if (context.isTinted) return complained(element, context, 'a symbol does not read on a tint');
  const dot = 72 / context.dots;
  const module = moduleOf(element, context);
  const width = widthWithQuiet(symbol, module) + dot;
  if (width > room + 0.01) return complained(element, context, `the symbol of "${code}" is ${wide(width, room)}`);
  const tall = symbol.kind === 'linear' ? points(height, 28.8) : module;
  const edge = symbol.kind === 'linear' ? LINEAR_EDGE : symbol.quiet * module;
  const setting = { size: SIZES.small, align: 'centre' } as const;
  const under = text === 'yes' ? paragraph([{ set: typeset(code), bold: false }], width, setting, context.fonts) : [];
  const caption = under[0];
  const body = symbol.height * tall + 2 * edge + dot;
  return {
    ...evenly({ height: body + (caption?.usual.height ?? 0) }),
    put: (x, y, sheet, spacing) => {
      const left = startOf(x, room, context.align, width);
      const at = { x: onDot(left + symbol.quiet * module, dot), y: onDot(y + edge, dot) };
      sheet.items.push({ kind: 'symbol', ...at, symbol, module, tall });
      caption?.put(left, y + body, sheet, spacing);
    },
  };
}

/** The room that a symbol takes, quiet zones and all; 0 for one that cannot be. */
export function symbolWidth(element: Element, context: Context): number {
  const symbol = symbolOf(element, context);
  return symbol === undefined ? 0 : widthWithQuiet(symbol, moduleOf(element, context)) + 72 / context.dots;
}

const symbolOf = ({ name, attributes }: Element, { symbols }: Context): Symbology | undefined =>
  name === 'qr' ? symbols.qr(attributes['code'] ?? '') : symbols.bar(attributes['code'] ?? '');

/** As many whole dots as come nearest to the module asked for, one at least. */
function moduleOf({ name, attributes }: Element, { dots }: Context): number {
  const asked = points(attributes['module'], name === 'qr' ? QR_MODULE : BAR_MODULE);
  return (Math.max(1, Math.round((asked * dots) / 72)) * 72) / dots;
}

/** 10 mil: what a hand scanner reads from a laser printer at arm's length. Common practice, and measured. */
const BAR_MODULE = 0.72;
/** 20 mil, for phones. */
const QR_MODULE = 1.44;
/** Above and below a linear symbol, in points. */
const LINEAR_EDGE = 2;

const widthWithQuiet = (symbol: Symbology, module: number): number => (symbol.width + 2 * symbol.quiet) * module;

const onDot = (place: number, dot: number): number => Math.ceil(place / dot - 1e-6) * dot;

const wide = (width: number, room: number): string =>
  `${Math.ceil(width)} points wide, and its place is ${Math.floor(room)}`;

function complained(element: Element, context: Context, reason: string): Strip {
  context.complain(element, reason);
  return { ...evenly({ height: 0 }), put: () => {} };
}
