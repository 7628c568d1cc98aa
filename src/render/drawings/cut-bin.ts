import type { Cut, CutBin, CutRectangle, Offcut, PlacedPiece } from '../../layout/shop-plan.ts';
import type { Figure, Mark } from '../figure.ts';
import { type Blade, cutNumbers, RING } from './cut-numbers.ts';
import type { Room } from './door-elevation.ts';
import {
  type Box,
  grainArrow,
  HIDDEN_DASH,
  hatched,
  LETTERING,
  lettered,
  line,
  type Pen,
  rectangle,
  WEIGHT,
} from './pen.ts';

/** What a cutting drawing shows of a blank: its code, and its size as it is told to the saw. */
export type BlankLabel = (code: string) => { readonly code: string; readonly size: string };

/**
 * A board or a sheet with its cuts, to scale and lying along the page: pieces with their codes, waste hatched, offcuts
 * dashed, the numbers of the cuts in sawing order, the direction of the grain. Its own size stands above it.
 */
export function cutDrawing(bin: CutBin, grain: 'length' | 'none', label: BlankLabel, pen: Pen, room: Room): Figure {
  const margins = { left: RING + 1, top: 12, right: RING + 1, bottom: RING + 1 };
  const scale = Math.min(
    (room.width - margins.left - margins.right) / bin.length,
    (room.height - margins.top - margins.bottom) / bin.width,
  );
  const whole = { x: margins.left, y: margins.top, width: bin.length * scale, height: bin.width * scale };
  const at = (rectangleOf: CutRectangle): Box => ({
    x: whole.x + rectangleOf.along * scale,
    y: whole.y + rectangleOf.across * scale,
    width: rectangleOf.length * scale,
    height: rectangleOf.width * scale,
  });
  const [right, bottom] = [whole.x + whole.width, whole.y + whole.height];
  const pieces = bin.pieces.flatMap(piece => drawnPiece(piece, at(piece), label, pen));
  const offcuts = bin.offcuts.flatMap(offcut => drawnOffcut(offcut, at(offcut), pen));
  const blades = bin.cuts.map(cut => blade(cut, at(cut.from), scale));
  const field = { x: 0, y: 0, width: right + margins.right, height: bottom + margins.bottom };
  const arrows = grain === 'length' ? [{ x: right - 82, y: 0, width: 74, height: 6 }] : [];
  const numbers = cutNumbers(blades, [...pieces, ...offcuts], { field, busy: arrows }, pen);
  return {
    width: right + margins.right,
    height: Math.max(bottom + margins.bottom, numbers.bottom),
    marks: [
      ...bin.waste.flatMap(waste => hatched(at(waste))),
      ...bin.defects.flatMap(defect => crossed(at(defect))),
      ...pieces,
      ...offcuts,
      rectangle(whole, WEIGHT.outline),
      ...blades.map(cutLine),
      ...numbers.marks,
      ...(grain === 'length' ? grainArrow([right - 80, 2.5], [right - 10, 2.5]) : []),
    ],
  };
}

/** The code, and under it the size where there is room; turned where the piece is narrow, in two where it is short. */
function drawnPiece(piece: PlacedPiece, box: Box, label: BlankLabel, pen: Pen): readonly Mark[] {
  const { code, size } = label(piece.blank);
  const whole = fitted(box, [code, size], pen, 1);
  return [rectangle(box, WEIGHT.edge, 1), ...(whole.length > 0 ? whole : inTwo(code, box, pen))];
}

/** Door and part below each other. Half a code would be another piece's. */
function inTwo(code: string, box: Box, pen: Pen): readonly Mark[] {
  const part = code.lastIndexOf('-') + 1;
  const halves = fitted(box, [code.slice(0, part), code.slice(part)], pen, 2);
  return halves.length === 2 ? halves : [];
}

function drawnOffcut(offcut: Offcut, box: Box, pen: Pen): readonly Mark[] {
  const [left, top, right, bottom] = [box.x + 1.5, box.y + 1.5, box.x + box.width - 1.5, box.y + box.height - 1.5];
  return [
    {
      kind: 'polygon',
      closed: true,
      points: [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ],
      weight: WEIGHT.thin,
      dash: HIDDEN_DASH,
      fill: 1,
    },
    ...fitted(box, [offcut.code], pen, 0),
  ];
}

/** As many of the words as go into the box, lying or standing, so many of them bold; none where not even the first does. */
function fitted(box: Box, words: readonly string[], pen: Pen, bold: number): readonly Mark[] {
  for (const turn of [0, 90] as const) {
    const [long, high] = turn === 0 ? [box.width, box.height] : [box.height, box.width];
    const rows = Math.min(words.length, Math.floor((high - 1) / (LETTERING + 1)));
    for (let count = rows; count > 0; count -= 1) {
      const set = words.slice(0, count);
      if (set.every((each, row) => pen.measure(each, LETTERING, row < bold) < long - 3)) {
        return stacked(box, set, turn, bold);
      }
    }
    const together = words.join('  ');
    if (words.length > 1 && rows === 1 && pen.measure(together, LETTERING, bold > 0) < long - 3)
      return stacked(box, [together], turn, bold);
  }
  return [];
}

const stacked = (box: Box, rows: readonly string[], turn: 0 | 90, bold: number): readonly Mark[] =>
  rows.map((words, row) => {
    const off = (row - (rows.length - 1) / 2) * (LETTERING + 1.5);
    const moved = turn === 0 ? { ...box, y: box.y + off } : { ...box, x: box.x + off };
    return lettered(moved, words, { turn, bold: row < bold });
  });

/** A knot or a split: crossed out. */
const crossed = (box: Box): readonly Mark[] => [
  rectangle(box, WEIGHT.thin),
  line([box.x, box.y], [box.x + box.width, box.y + box.height], WEIGHT.edge),
  line([box.x, box.y + box.height], [box.x + box.width, box.y], WEIGHT.edge),
];

function blade(cut: Cut, from: Box, scale: number): Blade {
  const setting = cut.setting * scale;
  const near = fallsFirst(cut);
  if (cut.direction === 'crosscut') {
    const x = near ? from.x + setting : from.x + from.width - setting;
    return { number: cut.number, from: [x, from.y], to: [x, from.y + from.height] };
  }
  const y = near ? from.y + setting : from.y + from.height - setting;
  return { number: cut.number, from: [from.x, y], to: [from.x + from.width, y] };
}

const cutLine = (cut: Blade): Mark => line(cut.from, cut.to, WEIGHT.edge);

/** Whether what falls off lies at the near end of the workpiece (its left or upper side on paper). */
function fallsFirst(cut: Cut): boolean {
  if (cut.falls.kind === 'nothing') return true;
  const [fallen, whole] = [cut.falls.at, cut.from];
  return cut.direction === 'crosscut' ? fallen.along === whole.along : fallen.across === whole.across;
}
