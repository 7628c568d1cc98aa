import type { Area } from '../units/area.ts';
import { type Duration, minutes } from '../units/duration.ts';
import type { Length } from '../units/length.ts';
import type { Mass, Volume } from '../units/mass.ts';
import type { Money } from '../units/money.ts';
import type { LengthFormat } from '../units/print-length.ts';

/**
 * How this shop works: everything that the workbook's Shop sheet can set, and what is taken where it says nothing.
 * Every default is common practice unless its line names a source. The packet prints each default that it used.
 */
export type Shop = {
  readonly printing: {
    readonly lengths: LengthFormat;
  };
  readonly doors: {
    /** Door sizes are rounded down to this, and what that takes goes back into the gap. */
    readonly increment: Length;
    readonly overlay: Length;
    /** Between the two leaves of a pair. */
    readonly pairGap: Length;
    /** On each side of an inset leaf. */
    readonly insetClearance: Length;
    /** What should show of the face frame between two neighbouring doors. */
    readonly reveal: Length;
    /** How far apart the diagonals of a door may be, up to and above `squareTallFrom`. */
    readonly squareShort: Length;
    readonly squareTall: Length;
    readonly squareTallFrom: Length;
    /** Doors higher than this want a middle rail. */
    readonly middleRailFrom: Length;
  };
  readonly saw: {
    readonly kerf: Length;
    /** Cut off each side of a sheet first, its own kerf included; 0 where factory edges are used. */
    readonly sheetTrim: Length;
    /** Cut off each end of a board first. */
    readonly boardEndTrim: Length;
    /** Lost along a board before its first strip: the jointed edge. */
    readonly boardEdgeLoss: Length;
    /** Largest distance from fence to blade. */
    readonly ripCapacity: Length;
    /** Longest piece that the crosscut stop can measure. */
    readonly crosscutCapacity: Length;
    /** Leftovers narrower than this cannot be cut off; 0 where the saw can skim. */
    readonly leastSkim: Length;
    /** Pieces longer than this want support behind the table. */
    readonly tableLength: Length;
    /** How many times the direction may change: 2 (rip, crosscut), 3 (and a trim cut), or free. */
    readonly stages: 2 | 3 | 'free';
  };
  readonly rough: {
    readonly lengthAllowance: Length;
    readonly widthAllowance: Length;
    readonly rest: Duration;
    /** Net over bought wood where no boards have been measured. */
    readonly yield: number;
    /** A board to buy where Stock names no size. */
    readonly standardBoard: { readonly width: Length; readonly length: Length };
    readonly standardSheet: { readonly width: Length; readonly length: Length };
  };
  readonly testing: {
    /** Blanks to try each router set-up on, from the same stock at the same thickness. */
    readonly stickingPieces: number;
    readonly copingPieces: number;
    readonly rabbetPieces: number;
    readonly pieceLength: Length;
    /** One spare stile and one spare rail for so many of each, at least one. */
    readonly spareForEvery: number;
    /** One piece in so many is measured. */
    readonly measureEvery: number;
    readonly tolerance: Length;
  };
  readonly router: {
    readonly order: 'groove-first' | 'cope-first';
    readonly stickingBitDiameter: Length;
    readonly copingBitDiameter: Length;
    readonly rabbetBitDiameter: Length;
    readonly speed: number;
    /** Rim speed no bit may pass, metres a second. */
    readonly rimSpeedMax: number;
    /** Widest rail that the coping sled holds. */
    readonly sledWidth: Length;
    /** Pieces shorter than this are machined as part of a longer blank, or in a carrier. */
    readonly shortPiece: Length;
    /** The rabbet is cut with a dado stack at the saw, or with a bit at the router table. */
    readonly rabbetBy: 'saw' | 'router';
  };
  readonly panels: {
    /** Left free on each edge of a plywood panel, and along the grain of a solid one. */
    readonly allowance: Length;
    /** Play of the panel's tongue in the groove. */
    readonly rabbetFit: Length;
    /** Added to the rabbet's width so that the field drops between the back lips of the frame. */
    readonly backClearance: Length;
    /** Least engagement on each edge of a solid panel at the driest. */
    readonly engagement: Length;
    /** Widest strip of a solid panel. */
    readonly stripWidthMax: Length;
    /** Added to each strip for jointing its two edges. */
    readonly stripAllowance: Length;
    /** Added to the glued-up blank on each dimension, to be trimmed square. */
    readonly trimAllowance: Length;
    /** Left free on each edge of a pane of glass. */
    readonly glassClearance: Length;
    readonly edgeEasing: Length;
  };
  readonly hinges: {
    readonly counts: HingeCounts;
    /** Centre of an end hinge from the end of the door. */
    readonly fromEnd: Length;
    readonly cupDiameter: Length;
    readonly cupDepth: Length;
    /** Edge of the cup to the edge of the door. */
    readonly cupEdge: Length;
    /** Wood that must stay under the cup. */
    readonly leastUnderCup: Length;
    /** Wood that must stay between cup and groove. */
    readonly leastToGroove: Length;
    /** How far a hinge may be moved to keep its plate off a rail joint. */
    readonly shiftMax: Length;
    /** Half the height of the hinge's plate. */
    readonly plateReach: Length;
  };
  readonly pulls: {
    /** Lower hole of a door's pull from the corner away from the hinge: in from the edge, and along the stile. */
    readonly fromEdge: Length;
    readonly fromEnd: Length;
    /** Between the two holes; 0 for a knob. */
    readonly spacing: Length;
    readonly holeDiameter: Length;
  };
  readonly climate: {
    readonly temperatureC: number;
    /** Moisture content of the wood when it is machined, in percent. */
    readonly shopMoisture: number;
    /** The shop's relative humidity, where the wood has settled to it: then it tells the moisture instead. */
    readonly shopHumidity: number | undefined;
    /** Relative humidity of the house in its driest and wettest weeks. */
    readonly driestHumidity: number;
    readonly wettestHumidity: number;
    /** Moisture content of wood in that house, in percent, where it was measured: then humidity is not asked. */
    readonly driestMoisture: number | undefined;
    readonly wettestMoisture: number | undefined;
  };
  readonly gluing: {
    readonly clamps: number;
    /** Doors higher than this take two more clamps along the stiles. */
    readonly tallFrom: Length;
    readonly inClamps: Duration;
    readonly beforeMachining: Duration;
    /** Glue for each square metre of joint, in litres. */
    readonly litresPerSquareMetre: number;
  };
  readonly finishing: {
    /** Wet doors that the drying rack holds. */
    readonly rackSlots: number;
    /** Doors that can be sprayed side by side. */
    readonly sprayPlaces: number;
    /** What the cup or gun holds. */
    readonly potVolume: Volume;
    /** How long a mix stays workable. */
    readonly potLife: Duration;
    readonly sprayTransfer: number;
    /** Containers the finish is sold in, smallest first. */
    readonly containers: readonly Volume[];
  };
  readonly buying: {
    /** For a litre; undefined where the shop gives none. */
    readonly gluePrice: Money | undefined;
    /** Bottles the glue is sold in, smallest first. */
    readonly glueContainers: readonly Volume[];
    /** What one sanding disc is good for, how many come in a pack, and what a pack costs. */
    readonly discArea: Area;
    readonly discPack: number;
    readonly discPrice: Money | undefined;
    /** For a square metre of glass, cut to size. */
    readonly glassPrice: Money | undefined;
  };
  readonly work: {
    readonly people: number;
    readonly hoursPerDay: number;
    readonly startsAt: string;
    /** ISO weekday numbers, 1 = Monday. */
    readonly weekdays: readonly number[];
    /** ISO dates on which nobody works. */
    readonly daysOff: readonly string[];
    readonly startDate: string | undefined;
    /** Set-up minutes and minutes for each piece, where the workbook changes an operation's own. */
    readonly minutes: { readonly [operation: string]: { readonly setup: number; readonly piece: number } };
    /** Operations that a helper may do alone. */
    readonly helperAlone: readonly string[];
    readonly rate: Money;
    readonly margin: number;
  };
  readonly planning: {
    /** How long the planner may look for a better cutting plan, for the whole job. */
    readonly seconds: number;
    /** How long it goes on without finding a better one, for each hundred pieces. */
    readonly patience: number;
    readonly seed: number;
    /** Whether parts that are seen together come from one board, and the share of waste that this may cost. */
    readonly colourMatch: 'none' | 'stiles' | 'door';
    readonly colourMatchWaste: number;
    /** Offcuts at least this large are kept. */
    readonly remnantLength: Length;
    readonly remnantWidth: Length;
    /** The remnant, as a share of a board or sheet, that is worth making one more setting of fence or stop for. */
    readonly remnantForSetting: number;
    /** What one setting of fence or stop fewer may cost, in boards or sheets. */
    readonly boardsForSetting: number;
  };
  readonly labels: LabelSheet;
};

/** Where the labels are on the sheet, or the size of a single label. All by number: no maker's name. */
export type LabelSheet = {
  readonly page: 'letter' | 'A4' | 'single';
  readonly rows: number;
  readonly columns: number;
  readonly width: Length;
  readonly height: Length;
  readonly left: Length;
  readonly top: Length;
  readonly pitchAcross: Length;
  readonly pitchDown: Length;
  /** First label still on a partly used sheet, 1 = top left, counted along the rows. */
  readonly startAt: number;
};

/** How many hinges a door wants: the larger of what its height and its mass ask for. */
export type HingeCounts = readonly {
  readonly hinges: number;
  readonly heightUpTo: Length;
  readonly massUpTo: Mass;
}[];

/** How long one day of work is. */
export const workday = (shop: Shop): Duration => minutes(shop.work.hoursPerDay * 60);
