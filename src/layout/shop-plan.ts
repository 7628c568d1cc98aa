import type { Barcode, BlankCode, DoorCode, PartCode, SetupCode } from '../codes/codes.ts';
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
  readonly settings: readonly Setting[];
  /** Run these first, from the same stock. */
  readonly testPieces: readonly BlankCode[];
  readonly pieces: readonly SetupPiece[];
  readonly reminders: readonly Reminder[];
  /** What to measure, on one piece in so many. */
  readonly check:
    | { readonly of: string; readonly length: Length; readonly tolerance: Length; readonly every: number }
    | undefined;
};

/** A number that is set on a machine. `of` is a word of the words files: 'fence', 'stop', 'bit-height', 'depth' … */
export type Setting = {
  readonly of: string;
  readonly value: Length;
  readonly sets: 'fence' | 'stop' | 'height' | 'depth' | 'place';
};

/** A piece at a set-up. `run` tells what is done to it where that is not plain: 'left-end', 'inside-edge' … */
export type SetupPiece = {
  readonly code: PartCode | DoorCode | BlankCode;
  readonly kind: 'part' | 'door' | 'blank';
  readonly runs: readonly string[];
  /** Size before this operation, where it says something to the hand. */
  readonly length: Length;
  readonly width: Length;
};

/** A caution, because of the pieces that it names; none named where it holds for the machine. */
export type Reminder = {
  readonly id: ReminderId;
  readonly pieces: readonly (PartCode | DoorCode | BlankCode)[];
  readonly facts: { readonly [name: string]: Length | number | string };
};

export type ReminderId =
  | 'general-saw'
  | 'general-jointer'
  | 'general-router'
  | 'general-sander'
  | 'general-drill'
  | 'general-spray'
  | 'push-block'
  | 'push-block-narrow'
  | 'stop-block'
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
  | {
      readonly kind: 'panes';
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
  /** Doors of each mix, such that it fits the pot and is used up within its working time. */
  readonly batches: readonly { readonly doors: readonly DoorCode[]; readonly volume: Volume }[];
  readonly rackSlots: number;
  readonly wait: Duration;
};

/** The days of the job, for one person and for the people that the shop has. */
export type DayPlan = {
  readonly schedules: readonly Schedule[];
};

export type Schedule = {
  readonly people: number;
  readonly startDate: string | undefined;
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
