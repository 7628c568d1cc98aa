import { type Element, isElement, type Node } from '../markup.ts';
import { stack } from './blocks.ts';
import { type Context, points } from './context.ts';
import { heightOf, putAll, type Sheet } from './strip.ts';

/** Labels at their places on as many sheets as they take, each given when it is full. What does not fit on its label is a problem. */
export function* labelSheets(element: Element, blank: () => Sheet, context: Context): Generator<Sheet> {
  const grid = gridOf(element.attributes);
  const each = grid.across * grid.down;
  let sheet: Sheet | undefined;
  for (const [index, label] of element.children.filter(isElement).entries()) {
    const place = index + grid.start - 1;
    if (sheet === undefined || place % each === 0) {
      if (sheet !== undefined) yield sheet;
      sheet = blank();
    }
    const x = grid.left + (place % grid.across) * grid.pitchX;
    const y = grid.top + (Math.floor(place / grid.across) % grid.down) * grid.pitchY;
    const strips = stack(label.children, grid.width - 2 * grid.pad, context);
    const [needed, room] = [heightOf(strips, 'usual'), grid.height - 2 * grid.pad];
    if (needed > room + 0.01) {
      context.complain(
        label,
        `"${firstWords(label)}" needs ${Math.ceil(needed)} points of height, and has ${Math.floor(room)}`,
      );
    } else putAll(strips, x + grid.pad, y + grid.pad, sheet, 'usual');
  }
  if (sheet !== undefined) yield sheet;
}

function gridOf(attributes: Element['attributes']) {
  const number = (name: string) => Number(attributes[name] ?? 1);
  const length = (name: string, otherwise: number) => points(attributes[name], otherwise);
  const [width, height] = [length('width', 144), length('height', 72)];
  return {
    across: number('across'),
    down: number('down'),
    start: number('start'),
    width,
    height,
    left: length('left', 0),
    top: length('top', 0),
    pitchX: length('pitch-x', width),
    pitchY: length('pitch-y', height),
    pad: length('pad', 5),
  };
}

/** Enough of a label's words to find it by. */
function firstWords(node: Node): string {
  if (!isElement(node)) return node.trim().slice(0, 40);
  return node.children.map(firstWords).find(words => words !== '') ?? '';
}
