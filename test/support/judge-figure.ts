import type { Figure, Mark, Measure } from '../../src/render/figure.ts';

/** Says what is wrong with a drawing: what leaves its sheet, lettering too small to read, lines that a copier loses. */
export const judgeFigure = (figure: Figure, measure: Measure): readonly string[] =>
  figure.marks.flatMap(mark => [...outside(mark, figure, measure), ...faint(mark)]);

function faint(mark: Mark): readonly string[] {
  if (mark.kind === 'text') return mark.size < 9 ? [`"${mark.text}" is ${mark.size} points small`] : [];
  return mark.weight !== undefined && mark.weight < 0.7 ? [`a ${mark.kind} is ${mark.weight} points thin`] : [];
}

function outside(mark: Mark, { width, height }: Figure, measure: Measure): readonly string[] {
  const [left, top, right, bottom] = extent(mark, measure);
  const isInside = left >= -SLACK && top >= -SLACK && right <= width + SLACK && bottom <= height + SLACK;
  const what = mark.kind === 'text' ? `"${mark.text}"` : `a ${mark.kind}`;
  const place = [left, top, right, bottom].map(each => each.toFixed(1)).join(' ');
  return isInside ? [] : [`${what} at ${place} leaves a drawing of ${width.toFixed(1)} × ${height.toFixed(1)}`];
}

/** Half a line's weight may stand over the edge. */
const SLACK = 1.5;

function extent(mark: Mark, measure: Measure): readonly [number, number, number, number] {
  switch (mark.kind) {
    case 'line':
      return [
        Math.min(mark.x1, mark.x2),
        Math.min(mark.y1, mark.y2),
        Math.max(mark.x1, mark.x2),
        Math.max(mark.y1, mark.y2),
      ];
    case 'polygon': {
      const [xs, ys] = [mark.points.map(([x]) => x), mark.points.map(([, y]) => y)];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
    }
    case 'circle':
      return [mark.x - mark.radius, mark.y - mark.radius, mark.x + mark.radius, mark.y + mark.radius];
    case 'text':
      return textExtent(mark, measure);
  }
}

function textExtent(
  mark: Extract<Mark, { kind: 'text' }>,
  measure: Measure,
): readonly [number, number, number, number] {
  const long = measure(mark.text, mark.size, mark.bold ?? false);
  const before = mark.align === 'left' ? 0 : mark.align === 'right' ? long : long / 2;
  const above = 0.72 * mark.size;
  if (mark.turn === 90) return [mark.x - above, mark.y - long + before, mark.x, mark.y + before];
  return [mark.x - before, mark.y - above, mark.x - before + long, mark.y];
}
