import type { Cut, CutBin, CutPlan, Fallen } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { cutDrawing } from '../drawings/cut-bin.ts';
import type { Figure } from '../figure.ts';
import { type CellGrid, cellGrid, type Spanning } from './cell-grid.ts';

/** boards.hbs and sheets.hbs: how the boards, or the sheets, of each stock are cut. */
export type CuttingView = { readonly plans: readonly CuttingPlan[] };
export type CuttingPlan = {
  readonly stock: string;
  readonly bound: string;
  readonly facts: string;
  readonly bins: readonly CuttingBin[];
};
export type CuttingBin = {
  readonly title: string;
  readonly size: string;
  readonly source: string;
  /** Empty where one person may lift it. */
  readonly heavy: string;
  readonly figure: string;
  /** In sawing order along the rows. */
  readonly steps: CellGrid<Spanning<CuttingStep>>;
  readonly offcuts: readonly { readonly code: string; readonly size: string }[];
};
/** `8 rip 2 1/4 → B7.A.1L-SL` */
export type CuttingStep = {
  readonly number: string;
  readonly what: string;
  readonly setting: string;
  readonly gives: string;
};

/** Undefined where nothing of that kind is cut. */
export function cutting(draft: Draft, kind: 'board' | 'sheet'): View<CuttingView> | undefined {
  const figures = new Map<string, Figure>();
  const plans = draft.plan.cutPlans.filter(plan => plan.kind === kind && plan.bins.length > 0);
  if (plans.length === 0) return undefined;
  return { data: { plans: plans.map(plan => cuttingPlan(plan, draft, figures)) }, figures };
}

function cuttingPlan(plan: CutPlan, draft: Draft, figures: Map<string, Figure>): CuttingPlan {
  const { say, size, job } = draft;
  const bins = { bins: plan.bins.length, bound: plan.bound.bins };
  const grain = job.stock.find(stock => stock.name === plan.stock)?.grain ?? 'length';
  const room = { width: draft.paperWidth, height: plan.kind === 'board' ? BOARD_HEIGHT : sheetHeight(draft) };
  const label = (code: string) => {
    const blank = draft.blanks.get(code);
    return { code, size: blank === undefined ? '' : `${size(blank.length)} × ${size(blank.width)}` };
  };
  return {
    stock: `${plan.stock}, ${say('cutting.thick', { thickness: size(plan.thickness) })}`,
    bound: say(plan.bins.length === plan.bound.bins ? 'cutting.bound-met' : 'cutting.bound', bins),
    facts: say('cutting.facts', {
      kerf: size(plan.kerf),
      settings: plan.settings,
      waste: Math.round(plan.waste * 100),
    }),
    bins: plan.bins.map(bin => {
      figures.set(`cut-${bin.code}`, cutDrawing(bin, grain, label, draft.pen, room));
      return cuttingBin(bin, plan.kind, draft);
    }),
  };
}

/** Two sheets go on a page, and one that is alone is drawn larger. */
const sheetHeight = ({ plan }: Draft): number =>
  plan.cutPlans.filter(({ kind }) => kind === 'sheet').flatMap(({ bins }) => bins).length > 1
    ? SHEET_HEIGHT.two
    : SHEET_HEIGHT.alone;

function cuttingBin(bin: CutBin, kind: 'board' | 'sheet', draft: Draft): CuttingBin {
  const { say, size } = draft;
  const steps = bin.cuts.map(cut => step(cut, draft));
  return {
    title: say(`cutting.bin-${kind}`, { code: bin.code }),
    size: `${size(bin.length)} × ${size(bin.width)}`,
    source: say(`cutting.${bin.source}`),
    heavy: bin.mass > LIFT_MAX_KG ? say('cutting.heavy', { mass: draft.quantities.mass(bin.mass) }) : '',
    figure: `cut-${bin.code}`,
    steps: cellGrid(steps, draft.paperWidth, { width: cut => stepWidth(cut, draft), nothing: NO_STEP }),
    offcuts: bin.offcuts.map(offcut => ({ code: offcut.code, size: `${size(offcut.length)} × ${size(offcut.width)}` })),
  };
}

const step = (cut: Cut, draft: Draft): CuttingStep => ({
  number: `${cut.number}`,
  what: draft.say(`cutting.${cut.direction}`),
  setting: draft.exact(cut.setting),
  gives: [cut.falls, cut.stays]
    .map(fallen => printFallen(fallen, draft))
    .filter(Boolean)
    .join(', '),
});

/** What is finished by a cut; the drawing shows the rest. */
function printFallen(fallen: Fallen, { say }: Draft): string {
  switch (fallen.kind) {
    case 'piece':
      return fallen.blank;
    case 'offcut':
      return say('cutting.offcut', { code: fallen.code });
    case 'workpiece':
    case 'waste':
    case 'nothing':
      return '';
  }
}

/** As cutting.hbs has it: a box, and words of which the numbers are bold. */
const stepWidth = ({ number, what, setting, gives }: CuttingStep, { pen }: Draft): number =>
  STEP_ROOM +
  pen.measure(`${number}  ${setting}`, STEP_SIZE, true) +
  pen.measure(gives === '' ? ` ${what} ` : ` ${what}  → ${gives}`, STEP_SIZE, false);

const STEP_SIZE = 9;
/** A box with its space, and what columns are apart. */
const STEP_ROOM = 25;
const NO_STEP: CuttingStep = { number: '', what: '', setting: '', gives: '' };
/** Room for the drawing of a board, and of a sheet, in points. */
const BOARD_HEIGHT = 130;
const SHEET_HEIGHT = { alone: 268, two: 170 };
/** One person lifts no more: the load constant of the NIOSH lifting equation (1994), 23 kg. */
const LIFT_MAX_KG = 23;
