import type { Language } from '../diagnostics/languages.ts';
import type { Source } from '../diagnostics/place.ts';
import type { Shop } from '../trade/shop.ts';
import type { Duration } from '../units/duration.ts';
import type { Length } from '../units/length.ts';
import type { Density } from '../units/mass.ts';
import type { Money } from '../units/money.ts';
import type { Units } from '../units/read-length.ts';

/** What the workbook says, read and typed. Nothing in it is calculated. */
export type Job = {
  readonly number: string;
  readonly name: string;
  readonly customer: string;
  readonly note: string;
  readonly units: Units;
  readonly dueDate: string | undefined;
  readonly paper: 'letter' | 'A4';
  readonly language: Language;
  readonly openings: readonly Opening[];
  readonly styles: readonly Style[];
  readonly stock: readonly Stock[];
  readonly shop: Shop;
  readonly finish: readonly FinishStep[];
  readonly hardware: readonly Hardware[];
  /** Every default that the job needed and the workbook did not set, as the packet prints them. */
  readonly defaults: readonly DefaultUsed[];
};

/** A setting as the workbook names it, and the value that was taken. */
export type DefaultUsed = { readonly sheet: string; readonly name: string; readonly value: SettingValue };
export type SettingValue =
  | { readonly kind: 'length'; readonly length: Length }
  | { readonly kind: 'text'; readonly text: string };

export type Side = 'left' | 'right';

/** An opening, with the door or pair that closes it. `width` and `height` are those of the opening, not of the door. */
export type Opening = {
  readonly cabinet: string;
  /** Tells two openings of one cabinet apart; empty where there is only one. */
  readonly label: string;
  readonly room: string;
  readonly quantity: number;
  readonly kind: FrontKind;
  readonly width: Length;
  readonly height: Length;
  readonly mounting: Mounting;
  readonly hanging: Hanging;
  readonly style: string;
  readonly grid: Grid;
  readonly faceFrame: FaceFrame;
  /**
   * The end of a door that its pull is at (`bottom` on a wall cabinet, `top` on a base cabinet). Undefined where the
   * workbook says nothing: then a door is not bored for a pull, and a drawer front in its middle.
   */
  readonly pull: 'top' | 'bottom' | 'middle' | 'none' | undefined;
  readonly note: string;
  readonly from: Source;
};

/** Drawer fronts, false fronts and applied end panels are made like doors and hang on nothing. */
export type FrontKind = 'door' | 'drawer-front' | 'false-front' | 'end-panel';

export type Sides = {
  readonly left: Length;
  readonly right: Length;
  readonly top: Length;
  readonly bottom: Length;
};

/** Lies over the face frame by so much on each side, or stands inside the opening with so much clearance. */
export type Mounting =
  | { readonly kind: 'overlay'; readonly overlay: Sides }
  | { readonly kind: 'inset'; readonly clearance: Sides };

/** One leaf must know its hinge side; a pair cannot have one; what is no door has none. */
export type Hanging =
  | { readonly kind: 'single'; readonly hingeSide: Side }
  | { readonly kind: 'pair'; readonly gap: Length }
  | { readonly kind: 'fixed' };

/** How the frame is divided. Middle-rail heights are those of the rails' centres above the door's bottom edge. */
export type Grid = {
  readonly panelsHigh: number;
  readonly panelsWide: number;
  /** From the bottom up; empty where the panels share the height equally. */
  readonly middleRailHeights: readonly Length[];
};

/** Widths of the face frame's members around the opening, and the openings that share them, where the workbook says. */
export type FaceFrame = {
  readonly left: Length | undefined;
  readonly right: Length | undefined;
  readonly top: Length | undefined;
  readonly bottom: Length | undefined;
  /** `cabinet` or `cabinet/label` of the opening on the other side of the right, and of the top member. */
  readonly rightNeighbour: string | undefined;
  readonly topNeighbour: string | undefined;
};

export type Style = FrameStyle | SlabStyle;

export type FrameStyle = {
  readonly build: 'frame';
  readonly name: string;
  readonly stileWidth: Length;
  readonly topRail: Length;
  readonly bottomRail: Length;
  readonly middleRail: Length;
  readonly middleStile: Length;
  readonly frameThickness: Length;
  readonly grooveDepth: Length;
  readonly grooveWidth: Length;
  /** From the show face to the groove's front wall. */
  readonly faceToGroove: Length;
  readonly tongueLength: Length;
  /** Left long on each end of a stile, and cut off after glue-up. */
  readonly horn: Length;
  readonly edgeEasing: Length;
  readonly frameStock: string;
  readonly infill: Infill;
  readonly from: Source;
};

/** What fills the frame. Thicknesses are measured ones. */
export type Infill =
  | { readonly kind: 'plywood'; readonly stock: string; readonly thickness: Length }
  | { readonly kind: 'solid'; readonly stock: string; readonly thickness: Length; readonly cut: GrainCut }
  | { readonly kind: 'glass'; readonly thickness: Length };

export type GrainCut = 'flat-sawn' | 'quarter-sawn';

/** A door that is one piece of sheet. */
export type SlabStyle = {
  readonly build: 'slab';
  readonly name: string;
  readonly thickness: Length;
  readonly edgeEasing: Length;
  readonly stock: string;
  readonly from: Source;
};

/** Boards or sheets of one kind, in every size of it that is on hand or can be bought. */
export type Stock = {
  readonly name: string;
  readonly kind: 'board' | 'sheet';
  readonly species: string;
  /** As bought: 1 in for 4/4 boards; measured for sheets. */
  readonly thickness: Length;
  /** Sheets: along their length, or none, so that pieces may be turned. Boards always run with their length. */
  readonly grain: 'length' | 'none';
  /** kg/m³ where the workbook gives it; else from the species, or the usual figure for plywood. */
  readonly density: Density | undefined;
  /** Never empty: where the workbook gives no size, a standard one that can be bought. */
  readonly sizes: readonly StockSize[];
  readonly from: Source;
};

export type StockSize = {
  readonly width: Length;
  readonly length: Length;
  readonly onHand: number;
  readonly buy: boolean;
  readonly price: Price | undefined;
  /** Knots and splits to cut around, as spans along the length; empty where the board is clear. */
  readonly defects: readonly Span[];
  readonly from: Source;
};

export type Span = { readonly start: Length; readonly end: Length };
export type Price = { readonly by: 'board-foot' | 'sheet' | 'piece'; readonly amount: Money };

export type FinishStep = {
  readonly name: string;
  readonly kind: 'sand' | 'stain' | 'seal' | 'topcoat' | 'wait';
  /** What is mixed, in parts: 2 of the first to 1 of the second. One component alone where nothing is mixed. */
  readonly components: readonly { readonly name: string; readonly parts: number }[];
  /** Percent of the mix that is added to it. */
  readonly additive: { readonly name: string; readonly percent: number } | undefined;
  readonly coats: number;
  /** m² that a litre covers in one coat, before transfer losses. */
  readonly squareMetresPerLitre: number;
  /** Share of what leaves the gun that stays on the door; 1 for what is wiped or brushed. */
  readonly transfer: number;
  readonly grit: number | undefined;
  /** Until the next step, after each coat. */
  readonly wait: Duration;
  readonly price: { readonly perLitre: Money } | undefined;
  readonly from: Source;
};

export type Hardware = {
  readonly item: string;
  readonly use: 'hinge' | 'pull' | 'bumper' | 'screw' | 'other';
  readonly per: 'door' | 'hinge' | 'pull' | 'job';
  readonly count: number;
  /** How many come in a pack. */
  readonly pack: number;
  readonly onHand: number;
  readonly price: Money | undefined;
  readonly from: Source;
};
