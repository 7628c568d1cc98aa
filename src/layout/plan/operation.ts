import type { Barcode, BlankCode, DoorCode, PartCode, SetupCode } from '../../codes/codes.ts';
import type { OperationId } from '../../trade/operations.ts';
import type { Duration } from '../../units/duration.ts';
import type { Length } from '../../units/length.ts';

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
  /** What keeps its pieces together where it is no machine setting. */
  readonly group: SetupGroup | undefined;
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

export type SetupGroup = { readonly kind: 'sheet' | 'batch' | 'room'; readonly name: string };

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
 * `fence-face` out of the router fence, `work-face` is into the face that is up,
 * `outfeed-table` is how far the jointer's infeed table lies below it, `cutter` is the
 * tool's own size.
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
  | 'outfeed-table'
  | 'bottom-end'
  | 'top-end'
  | 'first-hole'
  | 'work-face'
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

/** `count` where there are several of that length: the strips of a panel. */
export type PieceFigure = { readonly of: FigureName; readonly length: Length; readonly count?: number };
export type FigureName =
  | 'diagonal'
  | 'gap-left'
  | 'gap-right'
  | 'gap-top'
  | 'gap-bottom'
  | 'gap-between'
  | 'shoulder'
  | 'pull-from-left'
  | 'strip';

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
