import type { Length } from '../../units/length.ts';
import type { Mass } from '../../units/mass.ts';
import type { Severity } from '../problems.ts';

/** What can be wrong with a door: sizes that cannot be, and sizes that a shop would regret. `door` is its opening. */
export type CalculateProblems = {
  'door-has-no-size': { readonly door: string; readonly width: Length; readonly height: Length };
  'rail-has-no-length': { readonly door: string; readonly shoulder: Length };
  'sight-has-no-width': { readonly door: string; readonly width: Length };
  'sight-has-no-height': { readonly door: string; readonly row: number; readonly height: Length };
  'panel-leaves-groove': {
    readonly door: string;
    readonly width: Length;
    readonly shrinks: Length;
    readonly swells: Length;
    readonly gap: Length;
  };
  'panel-barely-held': {
    readonly door: string;
    readonly width: Length;
    readonly shrinks: Length;
    readonly swells: Length;
    readonly engagement: Length;
    readonly least: Length;
  };
  'door-wants-middle-rail': { readonly door: string; readonly height: Length; readonly from: Length };
  'door-beyond-hinge-table': { readonly door: string; readonly height: Length; readonly mass: Mass };
  'door-too-short-for-hinges': { readonly door: string; readonly height: Length; readonly hinges: number };
  'hinges-closer-than-width': { readonly door: string; readonly apart: Length; readonly width: Length };
  'hinge-on-rail-joint': { readonly door: string; readonly fromTop: Length; readonly shiftMax: Length };
  'pull-off-the-door': { readonly door: string; readonly fromLeft: Length; readonly fromBottom: Length };
  'pull-in-groove': { readonly door: string; readonly fromEdge: Length; readonly solid: Length };
  'overlay-wider-than-frame': {
    readonly door: string;
    readonly side: FrameSide;
    readonly overlay: Length;
    readonly member: Length;
  };
  'reveal-too-small': {
    readonly door: string;
    readonly neighbour: string;
    readonly side: FrameSide;
    readonly member: Length;
    readonly overlays: Length;
    readonly left: Length;
    readonly reveal: Length;
  };
  'neighbour-ambiguous': { readonly door: string; readonly neighbour: string };
  'groove-deeper-than-member': {
    readonly style: string;
    readonly member: GroovedMember;
    readonly width: Length;
    readonly grooves: Length;
  };
  'member-between-marks': {
    readonly style: string;
    readonly member: GroovedMember;
    readonly width: Length;
  };
  'groove-breaks-back': { readonly style: string; readonly reaches: Length; readonly frameThickness: Length };
  'tongue-longer-than-groove': { readonly style: string; readonly tongue: Length; readonly groove: Length };
  'panel-not-in-groove': { readonly style: string; readonly groove: Length; readonly allowance: Length };
  'panel-tongue-too-thin': { readonly style: string; readonly groove: Length; readonly fit: Length };
  'panel-loose-in-groove': { readonly style: string; readonly panel: Length; readonly groove: Length };
  'panel-proud-of-back': { readonly style: string; readonly proud: Length };
  'glass-without-stop': { readonly style: string; readonly left: Length };
  'stock-too-thin': { readonly style: string; readonly stock: string; readonly has: Length; readonly wants: Length };
  'sheet-thickness-differs': {
    readonly style: string;
    readonly stock: string;
    readonly has: Length;
    readonly wants: Length;
  };
  'cup-breaks-into-groove': { readonly style: string; readonly wants: Length; readonly has: Length };
  'cup-breaks-through': { readonly style: string; readonly left: Length; readonly least: Length };
  /** `known`: the species of the tables, by name. */
  'movement-unknown': {
    readonly style: string;
    readonly stock: string;
    readonly species: string;
    readonly known: string;
  };
  'moisture-beyond-table': { readonly style: string; readonly moisture: number };
  'species-unknown': { readonly stock: string; readonly species: string; readonly density: number };
  'barcode-clash': { readonly one: string; readonly other: string };
};

export type FrameSide = 'left' | 'right' | 'top' | 'bottom';
export type GroovedMember = 'stile' | 'rail-top' | 'rail-bottom' | 'rail-middle' | 'stile-middle';

export const calculateSeverity: { readonly [C in keyof CalculateProblems]: Severity } = {
  'door-has-no-size': 'error',
  'rail-has-no-length': 'error',
  'sight-has-no-width': 'error',
  'sight-has-no-height': 'error',
  'panel-leaves-groove': 'error',
  'panel-barely-held': 'warning',
  'door-wants-middle-rail': 'warning',
  'door-beyond-hinge-table': 'warning',
  'door-too-short-for-hinges': 'warning',
  'hinges-closer-than-width': 'warning',
  'hinge-on-rail-joint': 'warning',
  'pull-off-the-door': 'error',
  'pull-in-groove': 'warning',
  'overlay-wider-than-frame': 'error',
  'reveal-too-small': 'error',
  'neighbour-ambiguous': 'warning',
  'groove-deeper-than-member': 'error',
  'member-between-marks': 'note',
  'groove-breaks-back': 'error',
  'tongue-longer-than-groove': 'error',
  'panel-not-in-groove': 'error',
  'panel-tongue-too-thin': 'error',
  'panel-loose-in-groove': 'warning',
  'panel-proud-of-back': 'warning',
  'glass-without-stop': 'error',
  'stock-too-thin': 'error',
  'sheet-thickness-differs': 'warning',
  'cup-breaks-into-groove': 'error',
  'cup-breaks-through': 'error',
  'movement-unknown': 'error',
  'moisture-beyond-table': 'note',
  'species-unknown': 'warning',
  'barcode-clash': 'error',
};
