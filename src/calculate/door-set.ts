import type { Barcode, DoorCode, PartCode } from '../codes/codes.ts';
import type { Source } from '../diagnostics/place.ts';
import type { FrontKind, GrainCut, Side, Sides } from '../import/job.ts';
import type { Area } from '../units/area.ts';
import type { Length } from '../units/length.ts';
import type { Mass } from '../units/mass.ts';

/** Every door of the job, and every part of every door. Doors and parts speak of each other by code. */
export type DoorSet = { readonly doors: readonly Door[]; readonly parts: readonly Part[] };

/** One leaf, or one front that is made like a leaf. One entry for each physical door. */
export type Door = {
  readonly code: DoorCode;
  readonly barcode: Barcode;
  readonly cabinet: string;
  readonly label: string;
  readonly room: string;
  /** 1 to the opening's quantity. */
  readonly copy: number;
  readonly leaf: 'single' | 'left' | 'right';
  readonly front: FrontKind;
  /** Seen from the front; undefined where nothing hangs. */
  readonly hingeSide: Side | undefined;
  readonly mounting: 'overlay' | 'inset';
  readonly style: string;
  readonly build: 'frame' | 'slab';
  readonly opening: { readonly width: Length; readonly height: Length };
  readonly width: LengthWorking;
  readonly height: LengthWorking;
  readonly thickness: Length;
  /** Overlay or clearance on each side, and the gap between two leaves, as they come out after rounding. */
  readonly gaps: Sides & { readonly between: Length | undefined };
  /** √(W² + H²), and how far the two may differ. */
  readonly diagonal: { readonly length: Length; readonly tolerance: Length };
  /** What is seen from the front, in door coordinates. Empty for a slab. */
  readonly sights: readonly Sight[];
  readonly joint: Joint | undefined;
  readonly hinges: readonly Hinge[];
  readonly pull: Pull | undefined;
  readonly mass: Mass;
  /** Both faces and the four edges: what gets finished. */
  readonly finishArea: Area;
  readonly edgeEasing: Length;
  readonly parts: readonly PartCode[];
  /** Every other number of this door, with how it came about. */
  readonly workings: readonly Working[];
  readonly note: string;
  readonly from: Source;
};

/** A rectangle on the door's front: from the left edge and up from the bottom edge, in the finished door. */
export type Rectangle = {
  readonly left: Length;
  readonly bottom: Length;
  readonly width: Length;
  readonly height: Length;
};

/** A clear opening of the frame, and what fills it. Column 1 is on the left, row 1 at the bottom. */
export type Sight = Rectangle & { readonly column: number; readonly row: number; readonly infill: PartCode };

export type Role =
  | 'stile-left'
  | 'stile-right'
  | 'stile-middle'
  | 'rail-top'
  | 'rail-middle'
  | 'rail-bottom'
  | 'panel'
  | 'glass'
  | 'glass-stop'
  | 'slab';

/** One physical piece as it goes into the door. Its length runs with the grain; a panel's along the door's height. */
export type Part = {
  readonly code: PartCode;
  readonly barcode: Barcode;
  readonly door: DoorCode;
  readonly role: Role;
  /** The stock's name in the workbook; undefined for what is ordered to size (glass). */
  readonly stock: string | undefined;
  readonly length: LengthWorking;
  readonly width: LengthWorking;
  readonly thickness: Length;
  /** Between the shoulders, for what is coped; otherwise undefined. */
  readonly shoulder: LengthWorking | undefined;
  /** The part of it that is seen, where it lies in the door. */
  readonly place: Rectangle;
  readonly make: Make;
  readonly mass: Mass;
  /** Its other numbers (mass, rabbet, movement, strips), with how they came about. */
  readonly workings: readonly Working[];
};

/** What has to be done to a part beyond sawing it to size. */
export type Make =
  | { readonly kind: 'stile'; readonly groovedEdges: 1 | 2; readonly horn: Length }
  | { readonly kind: 'rail'; readonly groovedEdges: 1 | 2 }
  | { readonly kind: 'middle-stile'; readonly groovedEdges: 2 }
  | { readonly kind: 'plywood-panel'; readonly rabbet: Rabbet | undefined }
  | {
      readonly kind: 'solid-panel';
      readonly rabbet: Rabbet | undefined;
      readonly glueUp: PanelGlueUp;
      readonly movement: Movement;
    }
  | { readonly kind: 'glass' }
  | { readonly kind: 'glass-stop' }
  | { readonly kind: 'slab' };

/** The step round the back of a panel that leaves a tongue for the groove. */
export type Rabbet = { readonly depth: Length; readonly width: Length; readonly tongue: Length };

/** How a panel is glued up from strips, edge to edge: rough strip sizes before jointing, blank size before trimming. */
export type PanelGlueUp = {
  readonly strips: number;
  readonly stripWidth: Length;
  readonly blankLength: Length;
  readonly blankWidth: Length;
};

/** What the seasons do to a solid panel across its grain. */
export type Movement = {
  readonly species: string;
  readonly cut: GrainCut;
  /** Percent of moisture. */
  readonly made: number;
  readonly driest: number;
  readonly wettest: number;
  readonly shrinks: Length;
  readonly swells: Length;
  /** In the groove on each edge at the driest; left free on each edge at the wettest. */
  readonly engagement: Length;
  readonly clearance: Length;
};

/** The section through stile and panel: everything that the drawing of it needs. */
export type Joint = {
  readonly frameThickness: Length;
  readonly grooveDepth: Length;
  readonly grooveWidth: Length;
  readonly faceToGroove: Length;
  readonly tongueLength: Length;
  readonly stileWidth: Length;
  readonly infillKind: 'plywood' | 'solid' | 'glass';
  readonly infillThickness: Length;
  readonly rabbet: Rabbet | undefined;
  /** From the show face to the panel's face, and how far the panel's back stands proud of the frame's (negative: recessed). */
  readonly backProjection: Length;
  /** Left free between the panel's edge and the bottom of the groove. */
  readonly edgeAllowance: Length;
};

/** One hinge boring, measured from the top of the door and from its hinge edge. */
export type Hinge = {
  readonly fromTop: Length;
  /** Centre of the cup from the hinge edge. */
  readonly fromEdge: Length;
  readonly cupDiameter: Length;
  readonly cupDepth: Length;
  /** How far it was moved to keep its plate off a rail joint; zero where it was not. */
  readonly shifted: Length;
};

/** Holes of a pull: from the edge away from the hinge, and from the bottom (or top) end, as `end` says. */
export type Pull = {
  readonly end: 'bottom' | 'top' | 'middle';
  /** Up a stile, or along a drawer front. */
  readonly runs: 'upright' | 'level';
  readonly holes: readonly { readonly fromLeft: Length; readonly fromBottom: Length }[];
  readonly diameter: Length;
};

/** How a number came about. */
export type Working = LengthWorking | FactWorking;

/** `count` times the length that `symbol` stands for, as on the shop's paper: `−2·S`. */
export type Term<Symbol extends string = string> = { readonly count: number; readonly symbol: Symbol };

/**
 * A length and the sum that it is, shared out and rounded down where it was:
 * `sharedBy · value + rest` is the sum of the terms, to the nanometre.
 */
export type LengthWorking = {
  readonly kind: 'length';
  /** What was worked out: a word of the words files. */
  readonly of: string;
  readonly terms: readonly Term[];
  /** What was put in, by symbol; there may be more than the terms ask for. */
  readonly given: Readonly<Record<string, Length>>;
  readonly sharedBy: number;
  /** Undefined where nothing was rounded. */
  readonly roundedTo: Length | undefined;
  readonly rest: Length;
  readonly value: Length;
};

/** What is no sum of lengths: a mass, a count, a percentage, a diagonal. */
export type FactWorking = {
  readonly kind: 'fact';
  readonly of: string;
  readonly formula: string;
  readonly inputs: readonly Input[];
  /** What was put in, by symbol; lengths in nanometres. */
  readonly given: Readonly<Record<string, number>>;
  readonly value: FactValue;
};

export type Input<Symbol extends string = string> = {
  readonly symbol: Symbol;
  readonly unit: FactValue['unit'];
};

export type FactValue =
  | { readonly unit: 'length'; readonly value: Length }
  | { readonly unit: 'kg' | 'kg/m³' | 'm³' | 'm²' | '%' | '°C' | 'count' | 'ratio'; readonly value: number };
