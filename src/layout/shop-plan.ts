import type { Barcode, BlankCode, DoorCode, PartCode, SetupCode } from '../codes/codes.ts';
import type { DoorSide } from '../trade/finishing.ts';
import type { OperationId } from '../trade/operations.ts';
import type { Area } from '../units/area.ts';
import type { Duration } from '../units/duration.ts';
import type { Length } from '../units/length.ts';
import type { Mass, Volume } from '../units/mass.ts';
import type { Money } from '../units/money.ts';

/** The work and the wood, laid out: everything that the packet prints and the stations ask for. */
export type ShopPlan = {
  /** In the order in which they are done. An operation without pieces is left out. */
  readonly operations: readonly Operation[];
  /** The operations of each part and each door, in order. */
  readonly routes: { readonly [code: string]: readonly OperationId[] };
  readonly blanks: readonly Blank[];
  readonly cutPlans: readonly CutPlan[];
  readonly shopping: Shopping;
  readonly batches: readonly GlueUpBatch[];
  readonly finish: FinishPlan;
  readonly days: DayPlan;
};

export type { OperationId };

export type Station =
  | 'saw'
  | 'rack'
  | 'jointer'
  | 'planer'
  | 'bench'
  | 'router'
  | 'clamps'
  | 'sander'
  | 'drill'
  | 'spray'
  | 'site';

/** A kind of work, done at one station. */
export type Operation = {
  readonly id: OperationId;
  readonly station: Station;
  /** In the order in which they are made: longest pieces first, so that a spoiled long one can become a short one. */
  readonly setups: readonly Setup[];
  /** Those that hold for the whole operation, whatever the piece. */
  readonly reminders: readonly Reminder[];
  readonly minutes: { readonly setup: number; readonly pieces: number };
  /** Time that passes without work: a rest, a cure. */
  readonly wait: Duration | undefined;
};

/** One machine setting, made once, and the pieces that are run at it. */
export type Setup = {
  readonly code: SetupCode;
  readonly barcode: Barcode;
  /** None where nothing is set: a bench, a rack, a glue-up batch. */
  readonly settings: readonly Setting[];
  /** How a piece lies on the machine; undefined where it does not matter. */
  readonly orientation: Orientation | undefined;
  /** How the work is done at this very setting. */
  readonly notes: readonly SetupNote[];
  /** What to measure before setting, and what to set when the measure differs from what the plan took. */
  readonly adjustment: Adjustment | undefined;
  /** Run these first, from the same stock. */
  readonly testPieces: readonly BlankCode[];
  /** Longest first. */
  readonly pieces: readonly SetupPiece[];
  readonly reminders: readonly Reminder[];
  /** What to measure, on one piece in so many. */
  readonly check: MeasuredCheck | undefined;
};

export type MeasuredCheck = {
  readonly of: SettingName;
  readonly length: Length;
  readonly tolerance: Length;
  readonly every: number;
};

/** A number that is set on a machine, and the face or edge that it is measured from. */
export type Setting = {
  readonly of: SettingName;
  readonly value: Length;
  readonly sets: 'fence' | 'stop' | 'height' | 'depth' | 'place' | 'tool';
  readonly from: Datum;
};

export type SettingName =
  | 'rough-length'
  | 'rough-width'
  | 'depth-of-cut'
  | 'planed-thickness'
  | 'final-width'
  | 'final-length'
  | 'groove-height'
  | 'groove-depth'
  | 'groove-width'
  | 'tongue-height'
  | 'tongue-length'
  | 'tongue-thickness'
  | 'rabbet-depth'
  | 'rabbet-width'
  | 'rabbet-tongue'
  | 'glass-rabbet-depth'
  | 'glass-rabbet-width'
  | 'stop-thickness'
  | 'door-height'
  | 'hinge-from-edge'
  | 'hinge-from-end'
  | 'cup-depth'
  | 'cup-diameter'
  | 'easing-radius'
  | 'pull-from-edge'
  | 'pull-from-end'
  | 'pull-spacing'
  | 'hole-diameter';

/**
 * Where a setting is measured from: `blade-to-fence` is from the fence to the near side of the teeth, `blade-to-stop`
 * from the near side of the teeth to the face of the stop block, `sled-base` from the top of the coping sled's base,
 * `fence-face` out of the router fence, `cutter` is the tool's own size.
 */
export type Datum =
  | 'blade-to-fence'
  | 'blade-to-stop'
  | 'table'
  | 'sled-base'
  | 'fence-face'
  | 'bit-centre-to-fence'
  | 'bit-centre-to-stop'
  | 'free-edge'
  | 'left-edge'
  | 'bottom-end'
  | 'top-end'
  | 'first-hole'
  | 'cutter';

/** The tag is on the back: with the show face down the tag is up. `edge` is the one against the fence. */
export type Orientation = {
  readonly face: 'show-down' | 'show-up' | 'either';
  readonly edge: 'jointed' | 'inside' | 'outside' | 'hinge' | 'sawn' | 'each' | 'either';
};

export type SetupNote =
  | 'test-pieces-first'
  | 'square-one-end-first'
  | 'leave-spares-long'
  | 'joint-both-edges'
  | 'groove-both-edges'
  | 'shaped-backer-behind-cope'
  | 'cope-before-groove'
  | 'score-back-veneer'
  | 'measure-thickness-first'
  | 'ends-before-sides'
  | 'number-the-strips'
  | 'panel-stays-loose'
  | 'compare-diagonals'
  | 'cut-first-horn-by-the-rail'
  | 'square-corners-by-hand'
  | 'rip-stops-from-wide-blank'
  | 'stop-left-and-right'
  | 'mirror-for-right-hand'
  | 'backer-under-door'
  | 'prefinish-panel-edges';

/** `setting` depends on a thickness that only the caliper knows: for each reading, what to set. */
export type Adjustment = {
  readonly measure: 'panel-thickness';
  readonly setting: SettingName;
  readonly planned: Length;
  readonly rows: readonly { readonly measured: Length; readonly set: Length }[];
};

/** A piece at a set-up, and what is done to it there. A figure is the piece's own: a door's diagonal, its gaps. */
export type SetupPiece = {
  readonly code: PartCode | DoorCode | BlankCode;
  readonly kind: 'part' | 'door' | 'blank';
  readonly runs: readonly RunName[];
  /** Size before this operation. */
  readonly length: Length;
  readonly width: Length;
  readonly figures: readonly PieceFigure[];
};

export type PieceFigure = { readonly of: FigureName; readonly length: Length };
export type FigureName = 'diagonal' | 'gap-left' | 'gap-right' | 'gap-top' | 'gap-bottom' | 'gap-between' | 'shoulder';

/** One pass of a piece. Left and right are those of a hinge side seen from the front; `stop-…` is where its end lies. */
export type RunName =
  | 'once'
  | 'one-edge'
  | 'both-edges'
  | 'inside-edge'
  | 'left-end'
  | 'right-end'
  | 'top-end'
  | 'bottom-end'
  | 'four-edges'
  | 'around'
  | 'top-at-left-stop'
  | 'bottom-at-right-stop'
  | 'top-at-right-stop'
  | 'bottom-at-left-stop'
  | 'pull-on-left'
  | 'pull-on-right'
  | 'pull-in-middle';

/** A caution, because of the pieces that it names; none named where it holds for the machine. */
export type Reminder = {
  readonly id: ReminderId;
  readonly pieces: readonly (PartCode | DoorCode | BlankCode)[];
  readonly facts: { readonly [name: string]: Length | number | string };
};

export type ReminderId =
  | 'general-saw'
  | 'general-jointer'
  | 'general-planer'
  | 'general-router'
  | 'general-sander'
  | 'general-drill'
  | 'general-spray'
  | 'push-block'
  | 'push-block-narrow'
  | 'stop-block'
  | 'narrow-offcut'
  | 'short-piece'
  | 'coping-sled'
  | 'sled-too-narrow'
  | 'outfeed'
  | 'sacrificial-fence'
  | 'rim-speed'
  | 'two-people'
  | 'dust'
  | 'ears'
  | 'rags'
  | 'ventilation'
  | 'backer-block'
  | 'do-not-glue-panel'
  | 'glass-edges'
  | 'test-board';

/** A rough piece of board or sheet, before it is a part. */
export type Blank = {
  readonly code: BlankCode;
  readonly purpose: 'part' | 'strip' | 'test' | 'spare';
  /** What it becomes; for a test piece, the operation that it tries. */
  readonly part: PartCode | undefined;
  readonly operation: OperationId | undefined;
  readonly stock: string;
  readonly length: Length;
  readonly width: Length;
};

/** How the boards, or the sheets, of one stock are cut. */
export type CutPlan = {
  readonly stock: string;
  readonly kind: 'board' | 'sheet';
  readonly thickness: Length;
  readonly kerf: Length;
  readonly bins: readonly CutBin[];
  /** Proven: no plan at all needs fewer boards or sheets (or, where prices differ, costs less). */
  readonly bound: { readonly bins: number; readonly by: 'area' | 'packing' | 'column-generation' };
  /** Distinct fence and stop settings of this stock's plan. */
  readonly settings: number;
  /** Share of the bins' area that becomes neither piece nor kept offcut. */
  readonly waste: number;
};

/** One board or sheet. In its own coordinates `along` runs with its length (and grain), `across` with its width. */
export type CutBin = {
  readonly code: string;
  readonly length: Length;
  readonly width: Length;
  readonly source: 'on-hand' | 'buy';
  /** Cut away before the first cut; part of `cuts` too. */
  readonly pieces: readonly PlacedPiece[];
  readonly offcuts: readonly Offcut[];
  readonly waste: readonly CutRectangle[];
  readonly defects: readonly CutRectangle[];
  /** In sawing order. */
  readonly cuts: readonly Cut[];
  readonly mass: Mass;
};

export type CutRectangle = {
  readonly along: Length;
  readonly across: Length;
  readonly length: Length;
  readonly width: Length;
};

/** A piece where it lies. `turned`: its own length runs across the sheet. `length` and `width` are as it lies. */
export type PlacedPiece = CutRectangle & { readonly blank: BlankCode; readonly turned: boolean };
export type Offcut = CutRectangle & { readonly code: string };

/**
 * A through cut of one workpiece into two. A rip runs along the bin's length, a crosscut across it.
 * `workpiece` is the number of the piece that is picked up (0 the whole bin); what falls between fence (or stop) and
 * blade is `falls`, of exactly `setting` (its width or length); what is left is `stays`.
 */
export type Cut = {
  readonly number: number;
  readonly direction: 'rip' | 'crosscut';
  readonly setting: Length;
  readonly workpiece: number;
  readonly from: CutRectangle;
  readonly falls: Fallen;
  readonly stays: Fallen;
  readonly trim: boolean;
};

export type Fallen =
  | { readonly kind: 'workpiece'; readonly number: number; readonly at: CutRectangle }
  | { readonly kind: 'piece'; readonly blank: BlankCode; readonly at: CutRectangle }
  | { readonly kind: 'offcut'; readonly code: string; readonly at: CutRectangle }
  | { readonly kind: 'waste'; readonly at: CutRectangle }
  | { readonly kind: 'nothing' };

/** What to buy. */
export type Shopping = {
  readonly lines: readonly ShoppingLine[];
  readonly materials: Money;
  readonly labour: { readonly minutes: number; readonly amount: Money };
  readonly margin: Money;
  readonly total: Money;
  /** Lines whose price the workbook does not give, so that the total lacks them. */
  readonly unpriced: number;
};

export type ShoppingLine = {
  readonly kind: 'board' | 'sheet' | 'hardware' | 'glue' | 'abrasive' | 'finish' | 'glass';
  readonly item: string;
  readonly unit: 'board-foot' | 'board' | 'sheet' | 'pack' | 'piece' | 'litre' | 'container' | 'disc';
  /** Needed net, on hand, and to buy, in that unit; `detail` in words' facts (board feet, sizes, containers). */
  readonly needed: number;
  readonly onHand: number;
  readonly buy: number;
  readonly detail: ShoppingDetail;
  readonly amount: Money | undefined;
};

export type ShoppingDetail =
  | {
      readonly kind: 'boards';
      readonly species: string;
      /** As it is counted: 4/4 is 1 in, and so is what is thinner. */
      readonly thickness: Length;
      readonly netBoardFeet: number;
      readonly boughtBoardFeet: number;
      readonly yield: number;
      readonly sizes: readonly SizeCount[];
    }
  | { readonly kind: 'sheets'; readonly sizes: readonly SizeCount[] }
  | { readonly kind: 'packs'; readonly pieces: number; readonly pack: number }
  | {
      readonly kind: 'volume';
      readonly volume: Volume;
      readonly containers: readonly { readonly volume: Volume; readonly count: number }[];
    }
  | { readonly kind: 'discs'; readonly grit: number; readonly area: Area; readonly pack: number }
  | {
      readonly kind: 'panes';
      readonly thickness: Length;
      readonly panes: readonly { readonly width: Length; readonly height: Length; readonly count: number }[];
    }
  | { readonly kind: 'none' };

export type SizeCount = {
  readonly width: Length;
  readonly length: Length;
  readonly count: number;
  readonly onHand: boolean;
};

/** Doors that are in clamps together. */
export type GlueUpBatch = { readonly number: number; readonly doors: readonly DoorCode[]; readonly clamps: number };

export type FinishPlan = {
  readonly area: Area;
  readonly steps: readonly FinishStepPlan[];
};

/** A step of the finish: how much of what to mix, in how many batches. */
export type FinishStepPlan = {
  readonly number: number;
  readonly name: string;
  readonly kind: 'sand' | 'stain' | 'seal' | 'topcoat' | 'wait';
  readonly coats: number;
  readonly grit: number | undefined;
  /** For one coat of all doors, losses included. */
  readonly volume: Volume;
  readonly components: readonly { readonly name: string; readonly parts: number; readonly volume: Volume }[];
  readonly additive: { readonly name: string; readonly percent: number; readonly volume: Volume } | undefined;
  /** For one coat: the doors of each mix, such that it fits the pot and is used up within its working time. */
  readonly batches: readonly Mix[];
  /** In this order, so that the show face is touched last. */
  readonly sides: readonly DoorSide[];
  /** Doors that are wet at once, at the pace of this step. */
  readonly rackSlots: number;
  /** For all coats of all doors. */
  readonly minutes: { readonly setup: number; readonly pieces: number };
  /** After each coat. */
  readonly wait: Duration;
};

/** One filling of the pot: its share of each component, in their order, and of the additive that comes on top. */
export type Mix = {
  readonly doors: readonly DoorCode[];
  /** Of the components together, without the additive. */
  readonly volume: Volume;
  readonly components: readonly Volume[];
  readonly additive: Volume | undefined;
};

/** The days of the job, for one person and for the people that the shop has. */
export type DayPlan = {
  readonly schedules: readonly Schedule[];
};

export type Schedule = {
  readonly people: number;
  readonly startDate: string | undefined;
  /** Whether it is as short as its bound: no schedule at all is shorter. */
  readonly proven: boolean;
  /** Working seconds from the start of the job to its end, and what no schedule can be shorter than. */
  readonly makespan: Duration;
  readonly bound: {
    readonly makespan: Duration;
    readonly by: 'critical-path' | 'people' | 'clamps' | 'spray' | 'rack';
  };
  readonly tasks: readonly Task[];
  readonly days: readonly Day[];
};

/** A stretch of one operation: the doors of one glue-up batch, or all pieces of a set-up run. */
export type Task = {
  readonly id: string;
  readonly operation: OperationId;
  /** Batch or coat, where an operation is done in several goes. */
  readonly go: number;
  /** For a coat of the finish: the step's number in the finish plan, and which of its coats. */
  readonly coat: { readonly step: number; readonly number: number } | undefined;
  readonly doors: readonly DoorCode[];
  readonly people: number;
  readonly helperAlone: boolean;
  readonly work: Duration;
  /** Passes after the work, before the next task may start; nights count. */
  readonly wait: Duration;
  readonly after: readonly string[];
  readonly starts: Moment;
  readonly ends: Moment;
};

/** `day` 0 is the first working day; `second` counts from the start of work on that day. */
export type Moment = { readonly day: number; readonly date: string | undefined; readonly second: number };

export type Day = {
  readonly day: number;
  readonly date: string | undefined;
  readonly entries: readonly {
    readonly task: string;
    readonly starts: number;
    readonly ends: number;
    readonly person: number;
  }[];
};
