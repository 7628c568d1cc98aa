import type { ReminderId } from '../../layout/shop-plan.ts';
import type { Figure, Mark } from '../figure.ts';
import {
  arrow,
  type Box,
  circle,
  HIDDEN_DASH,
  hatched,
  line,
  outline,
  rectangle,
  shrunk,
  text,
  WEIGHT,
} from './pen.ts';

/** Words of the drawings, by key: `fence`, `blade`, … */
export type DrawingWord = (key: DrawingKey) => string;
export type DrawingKey =
  | 'fence'
  | 'blade'
  | 'bit'
  | 'stop-block'
  | 'push-block'
  | 'backer'
  | 'sled'
  | 'tag-up'
  | 'show-face-down'
  | 'inside-edge'
  | 'long-blank'
  | 'support'
  | 'sacrificial-fence'
  | 'back-down';

/** Our own plain drawings of what a sentence says badly; none where the sentence is enough. */
export const REMINDER_DRAWINGS: { readonly [R in ReminderId]?: (word: DrawingWord) => Figure } = {
  'push-block': pushBlock,
  'push-block-narrow': pushBlock,
  'stop-block': stopBlock,
  'coping-sled': backerBehindTheCope,
  'backer-block': backerBehindTheCope,
  'short-piece': longBlank,
  outfeed,
  'sacrificial-fence': sacrificialFence,
};

/** Plan: the block is pushed between blade and fence, behind the piece, and the hand stays on the block. */
function pushBlock(word: DrawingWord): Figure {
  return drawn([
    ...fenceFrom(150, word),
    ...bladeAt(96, 16, 50, word),
    ...wood({ x: 98, y: 26, width: 51, height: 38 }),
    rectangle({ x: 104, y: 64, width: 40, height: 26 }, WEIGHT.outline, 1),
    ...arrow([124, 88], [124, 70], WEIGHT.outline),
    text([90, 84], word('push-block'), { align: 'right' }),
    line([93, 81], [104, 77]),
  ]);
}

/** Plan: the piece leaves the stop before it meets the blade, so that nothing is caught between blade and fence. */
function stopBlock(word: DrawingWord): Figure {
  return drawn([
    ...fenceFrom(150, word),
    ...bladeAt(104, 12, 44, word),
    ...wood({ x: 20, y: 62, width: 111, height: 13 }),
    rectangle({ x: 131, y: 56, width: 19, height: 34 }, WEIGHT.outline, 0.85),
    ...arrow([70, 60], [70, 38], WEIGHT.outline),
    text([120, 92], word('stop-block'), { align: 'right' }),
    line([123, 89], [134, 84]),
    line([104, 44], [104, 62], WEIGHT.thin, HIDDEN_DASH),
  ]);
}

/** Plan: the backer stands behind the rail where the bit comes out, and fills the groove. */
function backerBehindTheCope(word: DrawingWord): Figure {
  return drawn([
    ...fenceFrom(150, word),
    circle([146, 26], 10, WEIGHT.outline, 1),
    circle([146, 26], 2, WEIGHT.edge, 0),
    text([130, 20], word('bit'), { align: 'right' }),
    ...wood({ x: 68, y: 38, width: 80, height: 16 }),
    rectangle({ x: 68, y: 54, width: 80, height: 13 }, WEIGHT.outline, 0.85),
    rectangle({ x: 56, y: 67, width: 86, height: 13 }, WEIGHT.edge, 1),
    ...arrow([80, 36], [80, 18], WEIGHT.outline),
    text([144, 97], word('sled'), { align: 'right' }),
    text([64, 64], word('backer'), { align: 'right' }),
  ]);
}

/** Machined long, then cut: the hands stay far from the cutter. */
function longBlank(word: DrawingWord): Figure {
  const blank = { x: 20, y: 34, width: 180, height: 22 };
  return drawn([
    ...wood(blank),
    ...[65, 110, 155].map(x => line([x, 30], [x, 60], WEIGHT.edge, HIDDEN_DASH)),
    ...arrow([50, 76], [170, 76], WEIGHT.outline),
    text([110, 94], word('long-blank')),
  ]);
}

/** From the side: what is longer than the table is held up behind it. */
function outfeed(word: DrawingWord): Figure {
  return drawn([
    rectangle({ x: 16, y: 40, width: 96, height: 8 }, WEIGHT.outline, 1),
    line([30, 48], [30, 90], WEIGHT.edge),
    line([98, 48], [98, 90], WEIGHT.edge),
    circle([72, 40], 16, WEIGHT.edge),
    ...wood({ x: 28, y: 33, width: 170, height: 7 }),
    circle([176, 45], 5, WEIGHT.outline, 1),
    line([176, 50], [176, 90], WEIGHT.outline),
    line([164, 90], [188, 90], WEIGHT.outline),
    ...arrow([110, 22], [160, 22], WEIGHT.outline),
    text([170, 72], word('support'), { align: 'right' }),
  ]);
}

/** Section: the cutter is partly buried in a wooden fence, and the panel's back is down on the table. */
function sacrificialFence(word: DrawingWord): Figure {
  return drawn([
    line([8, 78], [212, 78], WEIGHT.outline),
    rectangle({ x: 150, y: 20, width: 20, height: 58 }, WEIGHT.outline, 1),
    ...hatched({ x: 150, y: 20, width: 20, height: 58 }, 6),
    outline(
      [
        [20, 52],
        [150, 52],
        [150, 66],
        [132, 66],
        [132, 78],
        [20, 78],
      ],
      WEIGHT.outline,
      1,
    ),
    rectangle({ x: 133, y: 66, width: 26, height: 12 }, WEIGHT.edge, 0.5),
    text([74, 70], word('back-down')),
    text([110, 36], word('sacrificial-fence'), { align: 'right' }),
    line([113, 33], [150, 33]),
    text([150, 95], word('blade')),
  ]);
}

/** The tag is stuck on the back face: the first bit is run with the tag up and the show face on the table. */
export function tagUp(word: DrawingWord): Figure {
  return drawn([
    line([8, 78], [212, 78], WEIGHT.outline),
    rectangle({ x: 104, y: 24, width: 16, height: 54 }, WEIGHT.edge, 1),
    ...hatched({ x: 104, y: 24, width: 16, height: 54 }, 6),
    ...wood({ x: 18, y: 54, width: 86, height: 24 }),
    rectangle({ x: 40, y: 49, width: 40, height: 5 }, WEIGHT.outline, 0),
    line([60, 48], [50, 36]),
    text([96, 32], word('tag-up'), { align: 'right', bold: true }),
    text([72, 94], word('show-face-down')),
    text([126, 36], word('fence'), { align: 'left' }),
    text([134, 68], word('inside-edge'), { align: 'left' }),
    ...arrow([132, 65], [105, 65]),
  ]);
}

/** Drawn on a field of 220 × 100, printed at two thirds of that: lines shrink, lettering does not. */
const drawn = (marks: readonly Mark[]): Figure => ({
  width: 220 * PRINTED,
  height: 100 * PRINTED,
  marks: marks.map(mark => shrunk(mark, PRINTED)),
});

/** The fence, seen from above, with its name on its far side. */
const fenceFrom = (x: number, word: DrawingWord): readonly Mark[] => [
  rectangle({ x, y: 4, width: 10, height: 92 }, WEIGHT.outline, 1),
  ...hatched({ x, y: 4, width: 10, height: 92 }, 7),
  text([x + 15, 20], word('fence'), { align: 'left' }),
];

const bladeAt = (x: number, from: number, to: number, word: DrawingWord): readonly Mark[] => [
  rectangle({ x: x - 1.5, y: from, width: 3, height: to - from }, WEIGHT.edge, 0),
  text([x - 6, from + 12], word('blade'), { align: 'right' }),
];

/** A piece, with a line or two of grain. */
const wood = (box: Box): readonly Mark[] => [
  rectangle(box, WEIGHT.outline, 1),
  ...[0.35, 0.7].map(share => {
    const lies = box.width > box.height;
    return lies
      ? line([box.x + 4, box.y + box.height * share], [box.x + box.width - 4, box.y + box.height * share], WEIGHT.hair)
      : line([box.x + box.width * share, box.y + 4], [box.x + box.width * share, box.y + box.height - 4], WEIGHT.hair);
  }),
];

const PRINTED = 0.64;
