import type { Cut, CutBin, CutPlan, Fallen } from '../../layout/shop-plan.ts';
import type { Draft, View } from '../draft.ts';
import { cutDrawing } from '../drawings/cut-bin.ts';
import type { Figure } from '../figure.ts';
import { inRows } from '../order.ts';

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
  /** In sawing order along the rows, four cuts to a row. */
  readonly rows: readonly (readonly CuttingStep[])[];
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
  const room = { width: draft.paperWidth, height: plan.kind === 'board' ? BOARD_HEIGHT : SHEET_HEIGHT };
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

function cuttingBin(bin: CutBin, kind: 'board' | 'sheet', draft: Draft): CuttingBin {
  const { say, size } = draft;
  const steps = bin.cuts.map(cut => step(cut, draft));
  return {
    title: say(`cutting.bin-${kind}`, { code: bin.code }),
    size: `${size(bin.length)} × ${size(bin.width)}`,
    source: say(`cutting.${bin.source}`),
    heavy: bin.mass > LIFT_MAX_KG ? say('cutting.heavy', { mass: draft.quantities.mass(bin.mass) }) : '',
    figure: `cut-${bin.code}`,
    rows: inRows(steps, STEPS_IN_ROW).map(row => [...row, ...NO_STEPS.slice(row.length)]),
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

const STEPS_IN_ROW = 4;
const NO_STEPS: readonly CuttingStep[] = Array.from({ length: STEPS_IN_ROW }, () => ({
  number: '',
  what: '',
  setting: '',
  gives: '',
}));
/** Room for the drawing of a board, and of a sheet, in points. */
const BOARD_HEIGHT = 130;
const SHEET_HEIGHT = 268;
/** One person lifts no more: the load constant of the NIOSH lifting equation (1994), 23 kg. */
const LIFT_MAX_KG = 23;
