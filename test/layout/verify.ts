import type { Stock } from '../../src/import/job.ts';
import type { Blank, Cut, CutBin, CutPlan, CutRectangle, Fallen } from '../../src/layout/shop-plan.ts';
import type { Shop } from '../../src/trade/shop.ts';

/**
 * Says what is wrong with a cut plan. Written from the saw's point of view and without a line of the planner: it picks
 * up each workpiece by its number, runs the blade through it where the cut says, and looks at what falls off.
 * It returns sentences; none means that a helper who follows the plan ends with every blank, once, clear of defects.
 */
export function verify(plan: CutPlan, blanks: readonly Blank[], stock: Stock, shop: Shop): readonly string[] {
  const wrong: string[] = [];
  const cutOut: string[] = [];
  const own = new Map(blanks.filter(blank => blank.stock === plan.stock).map(blank => [blank.code as string, blank]));
  for (const bin of plan.bins) {
    for (const sentence of [...sawThrough(bin, plan, shop), ...lookOver(bin, plan, own, stock, shop)]) {
      wrong.push(`${bin.code}: ${sentence}`);
    }
    cutOut.push(...bin.pieces.map(piece => piece.blank));
  }
  for (const code of own.keys()) {
    const times = cutOut.filter(each => each === code).length;
    if (times !== 1) wrong.push(`${code} comes out ${times} times`);
  }
  for (const code of cutOut) if (!own.has(code)) wrong.push(`${code} is no blank of ${plan.stock}`);
  wrong.push(...takesWhatThereIs(plan, stock), ...countsRight(plan));
  return wrong;
}

const start = (at: CutRectangle, direction: Cut['direction']): number =>
  direction === 'crosscut' ? at.along : at.across;
const span = (at: CutRectangle, direction: Cut['direction']): number =>
  direction === 'crosscut' ? at.length : at.width;
const same = (one: CutRectangle, two: CutRectangle): boolean =>
  one.along === two.along && one.across === two.across && one.length === two.length && one.width === two.width;
const print = (at: CutRectangle): string => `${at.length} × ${at.width} at ${at.along}, ${at.across}`;

/** Follows the cuts with a blade and keeps what lies on the table. */
function sawThrough(bin: CutBin, plan: CutPlan, shop: Shop): readonly string[] {
  const wrong: string[] = [];
  type OnTable = { readonly at: CutRectangle; readonly turns: number; readonly last: Cut['direction'] | undefined };
  const whole: CutRectangle = { along: 0, across: 0, length: bin.length, width: bin.width } as CutRectangle;
  const table = new Map<number, OnTable>([[0, { at: whole, turns: 0, last: undefined }]]);
  const fallen: Fallen[] = [];
  for (const [index, cut] of bin.cuts.entries()) {
    if (cut.number !== index + 1) wrong.push(`cut ${index + 1} is numbered ${cut.number}`);
    const picked = table.get(cut.workpiece);
    if (picked === undefined) {
      wrong.push(`cut ${cut.number} picks up ${cut.workpiece}, which is not there`);
      continue;
    }
    table.delete(cut.workpiece);
    if (!same(picked.at, cut.from)) wrong.push(`cut ${cut.number} takes ${print(cut.from)} for ${print(picked.at)}`);
    wrong.push(...bladeRuns(cut, plan.kerf).map(sentence => `cut ${cut.number} ${sentence}`));
    const limit = cut.direction === 'rip' ? shop.saw.ripCapacity : shop.saw.crosscutCapacity;
    if (!cut.trim && cut.setting > limit) wrong.push(`cut ${cut.number} is set at ${cut.setting}, past ${limit}`);
    const turns = cut.trim || cut.direction === picked.last ? picked.turns : picked.turns + 1;
    if (shop.saw.stages !== 'free' && turns > shop.saw.stages)
      wrong.push(`cut ${cut.number} changes direction the ${turns}th time`);
    for (const side of [cut.falls, cut.stays]) {
      if (side.kind === 'workpiece') {
        if (table.has(side.number)) wrong.push(`workpiece ${side.number} is there twice`);
        table.set(side.number, { at: side.at, turns, last: cut.trim ? picked.last : cut.direction });
      } else fallen.push(side);
    }
  }
  const left = [...table.entries()].filter(([number]) => bin.cuts.length > 0 || number !== 0);
  for (const [number] of left) wrong.push(`workpiece ${number} is never picked up`);
  if (bin.cuts.length > 0) wrong.push(...listsAgree(bin, fallen));
  return wrong;
}

/** The two sides and the kerf between them are what was picked up, and what falls is as wide as the setting. */
function bladeRuns(cut: Cut, kerf: number): readonly string[] {
  const wrong: string[] = [];
  const { from, direction } = cut;
  const across = direction === 'crosscut' ? 'rip' : 'crosscut';
  const sides = [cut.falls, cut.stays].flatMap(side => (side.kind === 'nothing' ? [] : [side.at]));
  for (const side of sides) {
    if (start(side, across) !== start(from, across) || span(side, across) !== span(from, across))
      wrong.push('does not run through from edge to edge');
    if (span(side, direction) <= 0) wrong.push('leaves a side without width');
  }
  if (cut.falls.kind !== 'nothing' && span(cut.falls.at, direction) !== cut.setting)
    wrong.push(`is set at ${cut.setting} and drops ${span(cut.falls.at, direction)}`);
  const [low, high] = sides.sort((one, two) => start(one, direction) - start(two, direction));
  const end = start(from, direction) + span(from, direction);
  if (low === undefined) wrong.push('leaves nothing');
  else if (high !== undefined) {
    if (start(low, direction) !== start(from, direction)) wrong.push('loses wood on the near side');
    if (start(low, direction) + span(low, direction) + kerf !== start(high, direction)) wrong.push('is no kerf wide');
    if (start(high, direction) + span(high, direction) !== end) wrong.push('loses wood on the far side');
  } else {
    const near = start(low, direction) - start(from, direction);
    const far = end - start(low, direction) - span(low, direction);
    if (near !== 0 && far !== 0) wrong.push('takes wood from both sides');
    if (near + far <= 0 || near + far > kerf) wrong.push(`takes ${near + far} with a blade of ${kerf}`);
  }
  return wrong;
}

/** What fell off and what the bin lists are the same. */
function listsAgree(bin: CutBin, fallen: readonly Fallen[]): readonly string[] {
  const name = (side: Fallen): string =>
    side.kind === 'piece'
      ? `${side.blank} ${print(side.at)}`
      : side.kind === 'offcut'
        ? `${side.code} ${print(side.at)}`
        : side.kind === 'waste'
          ? print(side.at)
          : '';
  const fell = fallen.filter(side => side.kind !== 'nothing').map(name);
  const listed = [
    ...bin.pieces.map(piece => `${piece.blank} ${print(piece)}`),
    ...bin.offcuts.map(offcut => `${offcut.code} ${print(offcut)}`),
    ...bin.waste.map(print),
  ];
  const missing = fell.filter(each => !listed.includes(each));
  const invented = listed.filter(each => !fell.includes(each));
  return [
    ...missing.map(each => `${each} fell off and is not listed`),
    ...invented.map(each => `${each} is listed and never fell off`),
    ...(fell.length === listed.length ? [] : [`${fell.length} things fell off, ${listed.length} are listed`]),
  ];
}

/** Looks at what was cut out: size, grain, trims, defects, offcuts worth keeping. */
function lookOver(
  bin: CutBin,
  plan: CutPlan,
  own: ReadonlyMap<string, Blank>,
  stock: Stock,
  shop: Shop,
): readonly string[] {
  const wrong: string[] = [];
  const end = plan.kind === 'sheet' ? shop.saw.sheetTrim : shop.saw.boardEndTrim;
  const edge = plan.kind === 'sheet' ? shop.saw.sheetTrim : shop.saw.boardEdgeLoss;
  const farEdge = plan.kind === 'sheet' ? shop.saw.sheetTrim : 0;
  for (const piece of bin.pieces) {
    const blank = own.get(piece.blank);
    if (blank === undefined) continue;
    const [length, width] = piece.turned ? [blank.width, blank.length] : [blank.length, blank.width];
    if (piece.length !== length || piece.width !== width) wrong.push(`${piece.blank} comes out as ${print(piece)}`);
    if (piece.turned && (stock.grain === 'length' || plan.kind === 'board'))
      wrong.push(`${piece.blank} lies across the grain`);
    if (piece.along < end || piece.along + piece.length > bin.length - end) wrong.push(`${piece.blank} is in the trim`);
    if (piece.across < edge || piece.across + piece.width > bin.width - farEdge)
      wrong.push(`${piece.blank} is in the edge trim`);
    for (const defect of bin.defects) if (meets(piece, defect)) wrong.push(`${piece.blank} has a defect in it`);
  }
  for (const offcut of bin.offcuts) {
    if (offcut.length < shop.planning.remnantLength || offcut.width < shop.planning.remnantWidth)
      wrong.push(`${offcut.code} is not worth keeping`);
    for (const defect of bin.defects) if (meets(offcut, defect)) wrong.push(`${offcut.code} has a defect in it`);
  }
  const all = [...bin.pieces, ...bin.offcuts, ...bin.waste];
  for (const [index, one] of all.entries())
    for (const two of all.slice(index + 1)) if (meets(one, two)) wrong.push(`${print(one)} overlaps ${print(two)}`);
  return wrong;
}

const meets = (one: CutRectangle, two: CutRectangle): boolean =>
  one.along < two.along + two.length &&
  two.along < one.along + one.length &&
  one.across < two.across + two.width &&
  two.across < one.across + one.width;

/** Every bin is of a size of the stock, with its defects, and none is taken that is not there. */
function takesWhatThereIs(plan: CutPlan, stock: Stock): readonly string[] {
  const wrong: string[] = [];
  const look = (each: { readonly length: number; readonly width: number }, defects: readonly number[][]): string =>
    `${each.length} × ${each.width} ${JSON.stringify(defects)}`;
  const onHand = new Map<string, number>();
  const sold = new Set<string>();
  for (const size of stock.sizes) {
    const name = look(
      size,
      size.defects.map(({ start, end }) => [start, end - start]),
    );
    onHand.set(name, (onHand.get(name) ?? 0) + size.onHand);
    if (size.buy) sold.add(name);
  }
  for (const bin of plan.bins) {
    const name = look(
      bin,
      bin.defects.map(defect => [defect.along, defect.length]),
    );
    const left = onHand.get(name) ?? 0;
    if (bin.source === 'buy' && !sold.has(name)) wrong.push(`${bin.code} is bought and not sold`);
    if (bin.source === 'on-hand' && left <= 0) wrong.push(`${bin.code} is not on hand any more`);
    if (bin.source === 'on-hand') onHand.set(name, left - 1);
  }
  return wrong;
}

function countsRight(plan: CutPlan): readonly string[] {
  const wrong: string[] = [];
  if (plan.bins.length < plan.bound.bins)
    wrong.push(`${plan.bins.length} bins are fewer than the ${plan.bound.bins} that are said to be needed`);
  const settings = new Set<string>();
  for (const bin of plan.bins)
    for (const cut of bin.cuts) if (!cut.trim) settings.add(`${cut.direction} at ${cut.setting}`);
  if (settings.size !== plan.settings) wrong.push(`${settings.size} settings are said to be ${plan.settings}`);
  return wrong;
}
