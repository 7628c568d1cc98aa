import { type Diagnosed, type Diagnostic, isError, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { GroovedMember } from '../diagnostics/problems/calculate.ts';
import type { FrameStyle, Infill, Job, Opening, Stock, Style } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { type Length, minus, mm, plus, times } from '../units/length.ts';
import { printedValue } from '../units/print-length.ts';
import { stopThickness } from './glass.ts';
import { backProjection } from './rabbet.ts';

/** What must hold of a style, whatever door is made in it; each is said once, at the style's row. */
type Check = (style: Style, uses: Uses) => readonly Diagnostic[];

/** What the job does with a style. */
type Uses = { readonly openings: readonly Opening[]; readonly stock: readonly Stock[]; readonly shop: Shop };

/** The styles that openings are made in and doors can be made in; what is wrong with them and with the others. */
export function usableStyles(job: Job): Diagnosed<readonly Style[]> {
  const checked = job.styles
    .map(style => ({ style, openings: job.openings.filter(opening => opening.style === style.name) }))
    .filter(({ openings }) => openings.length > 0)
    .map(({ style, openings }) => {
      const uses = { openings, stock: job.stock, shop: job.shop };
      return { style, findings: CHECKS.flatMap(check => check(style, uses)) };
    });
  return {
    value: checked.filter(({ findings }) => !findings.some(isError)).map(({ style }) => style),
    diagnostics: checked.flatMap(({ findings }) => findings),
  };
}

const frameCheck =
  (check: (style: FrameStyle, uses: Uses) => readonly Diagnostic[]): Check =>
  (style, uses) =>
    style.build === 'frame' ? check(style, uses) : [];

/** A member must be wider than the grooves that are cut into it: one on an outer member, one on each edge between. */
const membersOutlastGrooves = frameCheck((style, uses) =>
  membersOf(style, uses)
    .map(([member, field, width, count]) => ({ member, field, width, grooves: times(count, style.grooveDepth) }))
    .filter(({ width, grooves }) => width <= grooves)
    .map(({ member, field, width, grooves }) =>
      problem('groove-deeper-than-member', cellOf(style.from, field), { style: style.name, member, width, grooves }),
    ),
);

/** Sizes that the tape shows exactly add up as they are printed. */
const membersLieOnMarks = frameCheck((style, uses) =>
  membersOf(style, uses)
    .filter(([, , width]) => printedValue(width, uses.shop.printing.lengths) !== width)
    .map(([member, field, width]) =>
      problem('member-between-marks', cellOf(style.from, field), { style: style.name, member, width }),
    ),
);

type Member = readonly [member: GroovedMember, field: keyof FrameStyle, width: Length, grooves: number];

/** The members that the doors of a style have, with the number of their grooves. */
function membersOf(style: FrameStyle, { openings }: Uses): readonly Member[] {
  const where = (divided: (opening: Opening) => boolean, member: Member): readonly Member[] =>
    openings.some(divided) ? [member] : [];
  return [
    ['stile', 'stileWidth', style.stileWidth, 1],
    ['rail-top', 'topRail', style.topRail, 1],
    ['rail-bottom', 'bottomRail', style.bottomRail, 1],
    ...where(({ grid }) => grid.panelsHigh > 1, ['rail-middle', 'middleRail', style.middleRail, 2]),
    ...where(({ grid }) => grid.panelsWide > 1, ['stile-middle', 'middleStile', style.middleStile, 2]),
  ];
}

/** Behind the groove a lip must be left, or nothing holds the panel at the back. */
const grooveLeavesBackLip = frameCheck(style => {
  const reaches = plus(style.faceToGroove, style.grooveWidth);
  return reaches < style.frameThickness
    ? []
    : [
        problem('groove-breaks-back', cellOf(style.from, 'grooveWidth'), {
          style: style.name,
          reaches,
          frameThickness: style.frameThickness,
        }),
      ];
});

/** A tongue that bottoms keeps the shoulders from closing. */
const tongueFitsGroove = frameCheck(style =>
  style.tongueLength <= style.grooveDepth
    ? []
    : [
        problem('tongue-longer-than-groove', cellOf(style.from, 'tongueLength'), {
          style: style.name,
          tongue: style.tongueLength,
          groove: style.grooveDepth,
        }),
      ],
);

/** What is cut short of the groove's bottom must still be in the groove. */
const infillReachesGroove = frameCheck((style, { shop }) => {
  const allowance = style.infill.kind === 'glass' ? shop.panels.glassClearance : shop.panels.allowance;
  return allowance < style.grooveDepth
    ? []
    : [
        problem('panel-not-in-groove', cellOf(style.from, 'grooveDepth'), {
          style: style.name,
          groove: style.grooveDepth,
          allowance,
        }),
      ];
});

/** A panel is as thick as its groove is wide, or thicker and rabbeted; a thinner one rattles. */
const panelFitsGroove = frameCheck((style, { shop }) => {
  const { infill, grooveWidth, name } = style;
  const { rabbetFit } = shop.panels;
  if (infill.kind === 'glass') return [];
  if (infill.thickness > grooveWidth && rabbetFit >= grooveWidth)
    return [
      problem('panel-tongue-too-thin', cellOf(style.from, 'grooveWidth'), {
        style: name,
        groove: grooveWidth,
        fit: rabbetFit,
      }),
    ];
  return minus(grooveWidth, infill.thickness) <= RATTLE
    ? []
    : [
        problem('panel-loose-in-groove', cellOf(style.from, 'panelThickness'), {
          style: name,
          panel: infill.thickness,
          groove: grooveWidth,
        }),
      ];
});

/** Play that a coat of finish takes up; common practice. */
const RATTLE = mm(0.5);

const backLiesFlat = frameCheck(style => {
  const proud = backProjection(style).value;
  return style.infill.kind === 'glass' || proud <= 0
    ? []
    : [problem('panel-proud-of-back', cellOf(style.from, 'panelThickness'), { style: style.name, proud })];
});

const glassHasStop = frameCheck(style => {
  const left = stopThickness(style).value;
  return style.infill.kind !== 'glass' || left > 0
    ? []
    : [problem('glass-without-stop', cellOf(style.from, 'panelThickness'), { style: style.name, left })];
});

/** A 35 mm cup needs 1 mm of wood between it and the groove, or it shows from the front. */
const cupClearsGroove = frameCheck((style, { openings, shop }) => {
  const wants = plus(shop.hinges.cupEdge, shop.hinges.cupDiameter, shop.hinges.leastToGroove);
  const has = minus(style.stileWidth, style.grooveDepth);
  return wants <= has || !openings.some(hangs)
    ? []
    : [problem('cup-breaks-into-groove', cellOf(style.from, 'stileWidth'), { style: style.name, wants, has })];
});

const cupLeavesBottom: Check = (style, { openings, shop }) => {
  const thickness = style.build === 'frame' ? style.frameThickness : style.thickness;
  const left = minus(thickness, shop.hinges.cupDepth);
  const least = shop.hinges.leastUnderCup;
  return left >= least || !openings.some(hangs)
    ? []
    : [problem('cup-breaks-through', cellOf(style.from, 'frameThickness'), { style: style.name, left, least })];
};

const hangs = ({ hanging }: Opening): boolean => hanging.kind !== 'fixed';

/** Boards are milled down to size, so they must be as thick; sheets are used as they are, so they must agree. */
const stockIsThickEnough: Check = (style, { stock }) =>
  thicknessesWanted(style).flatMap(({ name, wants, field }) => {
    const found = stock.find(each => each.name === name);
    if (found === undefined || found.thickness === wants) return [];
    const facts = { style: style.name, stock: name, has: found.thickness, wants };
    if (found.kind === 'sheet') return [problem('sheet-thickness-differs', cellOf(style.from, field), facts)];
    return found.thickness < wants ? [problem('stock-too-thin', cellOf(style.from, field), facts)] : [];
  });

type Wanted = { readonly name: string; readonly wants: Length; readonly field: string };

function thicknessesWanted(style: Style): readonly Wanted[] {
  if (style.build === 'slab') return [{ name: style.stock, wants: style.thickness, field: 'frameThickness' }];
  return [
    { name: style.frameStock, wants: style.frameThickness, field: 'frameThickness' },
    ...panelThickness(style.infill),
  ];
}

const panelThickness = (infill: Infill): readonly Wanted[] =>
  infill.kind === 'glass' ? [] : [{ name: infill.stock, wants: infill.thickness, field: 'panelThickness' }];

/** The list that a shop would run down before it sets up a bit. */
const CHECKS: readonly Check[] = [
  membersOutlastGrooves,
  membersLieOnMarks,
  grooveLeavesBackLip,
  tongueFitsGroove,
  infillReachesGroove,
  panelFitsGroove,
  backLiesFlat,
  glassHasStop,
  cupClearsGroove,
  cupLeavesBottom,
  stockIsThickEnough,
];
