import type { Joint } from '../../calculate/door-set.ts';
import { mm, plus, ZERO } from '../../units/length.ts';
import type { Figure, Mark } from '../figure.ts';
import { across, ROW, roomFor, upright } from './dimensions.ts';
import { type Box, hatched, line, outline, type Pen, type Point, text, WEIGHT } from './pen.ts';

/** The words on the section. */
export type SectionWords = {
  readonly face: string;
  readonly back: string;
  readonly stile: string;
  readonly infill: string;
};

/**
 * The section through stile and panel, show face up, twice full size where there is room: what the bits and the rabbet
 * must leave. Cut wood is hatched; the stile and the panel are broken off where nothing changes.
 */
export function jointSection(joint: Joint, words: SectionWords, pen: Pen, width: number): Figure {
  const depths = [joint.faceToGroove, joint.grooveWidth];
  const left = 2 * ROW + roomFor([joint.frameThickness, ...depths], pen) + roomFor(depths, pen);
  const rightRoom = 2 * ROW + roomFor([joint.infillThickness, joint.rabbet?.depth ?? ZERO], pen);
  // Groove and tongue are small beside the stile: draw a groove's depth of stile behind them, and two of panel before.
  const drawn = plus(joint.grooveDepth, STILE_SHOWN, PANEL_SHOWN);
  const scale = Math.min(TWICE, (width - left - rightRoom) / drawn);
  const at = frame(joint, scale, left);
  return {
    width,
    height: at.backMost + ROW + 30,
    marks: [
      ...stile(at, words),
      ...infill(joint, at, words),
      text([left, at.face - ROW - 20], words.face, { align: 'left', bold: true }),
      text([left, at.backMost + ROW + 26], words.back, { align: 'left', bold: true }),
      ...depthsOfStile(joint, at, pen),
      ...depthsOfPanel(joint, at, pen),
      ...widths(joint, at, pen),
    ],
  };
}

/** Places on paper: x from the broken stile rightwards, y from the show face down. */
type Frame = {
  readonly scale: number;
  readonly left: number;
  readonly face: number;
  readonly back: number;
  /** Of frame and panel, whichever stands further out. */
  readonly backMost: number;
  readonly grooveFront: number;
  readonly grooveBack: number;
  readonly grooveBottom: number;
  readonly inside: number;
  readonly panelEdge: number;
  readonly right: number;
};

function frame(joint: Joint, scale: number, left: number): Frame {
  const face = ROW + 32;
  const grooveBottom = left + STILE_SHOWN * scale;
  const inside = grooveBottom + joint.grooveDepth * scale;
  const back = face + joint.frameThickness * scale;
  return {
    scale,
    left,
    face,
    back,
    backMost: back + Math.max(0, joint.backProjection * scale),
    grooveFront: face + joint.faceToGroove * scale,
    grooveBack: face + plus(joint.faceToGroove, joint.grooveWidth) * scale,
    grooveBottom,
    inside,
    panelEdge: grooveBottom + joint.edgeAllowance * scale,
    right: inside + PANEL_SHOWN * scale,
  };
}

function stile(at: Frame, words: SectionWords): readonly Mark[] {
  const shape: readonly Point[] = [
    [at.left, at.face],
    [at.inside, at.face],
    [at.inside, at.grooveFront],
    [at.grooveBottom, at.grooveFront],
    [at.grooveBottom, at.grooveBack],
    [at.inside, at.grooveBack],
    [at.inside, at.back],
    [at.left, at.back],
  ];
  const solid: readonly Box[] = [
    box(at.left, at.face, at.grooveBottom, at.back),
    box(at.grooveBottom, at.face, at.inside, at.grooveFront),
    box(at.grooveBottom, at.grooveBack, at.inside, at.back),
  ];
  return [
    ...solid.flatMap(each => hatched(each, 6)),
    outline(shape, WEIGHT.outline),
    ...broken(at.left, at.face, at.back),
    text([(at.left + at.grooveBottom) / 2, (at.face + at.back) / 2 + 3], words.stile, { mask: true, size: 10 }),
  ];
}

function infill(joint: Joint, at: Frame, words: SectionWords): readonly Mark[] {
  const front = at.grooveFront;
  const tongueBack = front + (joint.rabbet?.tongue ?? joint.infillThickness) * at.scale;
  const back = front + joint.infillThickness * at.scale;
  const shoulder = at.panelEdge + (joint.rabbet?.width ?? ZERO) * at.scale;
  const shape: readonly Point[] = [
    [at.right, front],
    [at.panelEdge, front],
    [at.panelEdge, tongueBack],
    [shoulder, tongueBack],
    [shoulder, back],
    [at.right, back],
  ];
  return [
    outline(shape, WEIGHT.outline, 1),
    ...layers(at, front, tongueBack, shoulder, back),
    ...broken(at.right, front, back),
    text([(at.inside + at.right) / 2 + 10, (front + back) / 2 + 3], words.infill, { mask: true, size: 10 }),
  ];
}

/** Lines along the panel: its plies or its grain, set off from the stile's hatching. */
function layers(at: Frame, front: number, tongueBack: number, shoulder: number, back: number): readonly Mark[] {
  const marks: Mark[] = [];
  for (let y = front + 5; y < back - 2; y += 5) {
    marks.push(line([(y < tongueBack - 1 ? at.panelEdge : shoulder) + 2, y], [at.right - 2, y], WEIGHT.hair));
  }
  return marks;
}

/** The thickness, and from the show face the groove's front wall and its width. */
function depthsOfStile(joint: Joint, at: Frame, pen: Pen): readonly Mark[] {
  const inner = at.left - ROW;
  const outer = inner - ROW - roomFor([joint.faceToGroove, joint.grooveWidth], pen);
  return [
    ...upright(
      [
        { from: at.face, to: at.grooveFront, length: joint.faceToGroove },
        { from: at.grooveFront, to: at.grooveBack, length: joint.grooveWidth },
      ],
      { x: inner, edge: at.left },
      pen,
    ),
    ...upright([{ from: at.face, to: at.back, length: joint.frameThickness }], { x: outer, edge: at.left }, pen),
  ];
}

/** The panel's thickness, and the step that is taken off its back. */
function depthsOfPanel(joint: Joint, at: Frame, pen: Pen): readonly Mark[] {
  const back = at.grooveFront + joint.infillThickness * at.scale;
  if (joint.rabbet === undefined) {
    return upright(
      [{ from: at.grooveFront, to: back, length: joint.infillThickness }],
      { x: at.right + ROW, edge: at.right },
      pen,
    );
  }
  const step = at.grooveFront + joint.rabbet.tongue * at.scale;
  return upright(
    [
      { from: at.grooveFront, to: step, length: joint.rabbet.tongue },
      { from: step, to: back, length: joint.rabbet.depth },
    ],
    { x: at.right + ROW, edge: at.right },
    pen,
  );
}

/** Above: the groove's depth. Below: the rabbet's width. */
function widths(joint: Joint, at: Frame, pen: Pen): readonly Mark[] {
  const above = across(
    [{ from: at.grooveBottom, to: at.inside, length: joint.grooveDepth }],
    { y: at.face - ROW, edge: at.face },
    pen,
  );
  if (joint.rabbet === undefined) return above;
  const shoulder = at.panelEdge + joint.rabbet.width * at.scale;
  return [
    ...above,
    ...across(
      [{ from: at.panelEdge, to: shoulder, length: joint.rabbet.width }],
      { y: at.backMost + ROW, edge: at.backMost },
      pen,
    ),
  ];
}

/** The zigzag of something that goes on. */
function broken(x: number, top: number, bottom: number): readonly Mark[] {
  const middle = (top + bottom) / 2;
  return [
    {
      kind: 'polygon',
      closed: false,
      points: [
        [x, top - 4],
        [x, middle - 5],
        [x - 4, middle - 2],
        [x + 4, middle + 2],
        [x, middle + 5],
        [x, bottom + 4],
      ],
      weight: WEIGHT.thin,
    },
  ];
}

const box = (left: number, top: number, right: number, bottom: number): Box => ({
  x: left,
  y: top,
  width: right - left,
  height: bottom - top,
});

/** Points to a nanometre at twice full size. */
const TWICE = (2 * 72) / 25_400_000;
/** How much of the stile behind the groove, and of the panel before it, is drawn. */
const STILE_SHOWN = mm(19);
const PANEL_SHOWN = mm(38);
