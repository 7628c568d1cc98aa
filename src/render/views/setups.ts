import type { PartCode } from '../../codes/codes.ts';
import type { MeasuredCheck, Setting, Setup, SetupPiece } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import { grouped, type Some } from '../order.ts';
import { type CellGrid, cellGrid, type Spanning } from './cell-grid.ts';

/** A setting as it is set, and how far a measured piece may be off: `Width 2 1/4, fence to blade; ± 1/64, 1 in 10`. */
export type SettingLine = {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  /** Empty where this setting is not the one that is measured. */
  readonly check: string;
};

export const settingLines = ({ settings, check }: Setup, { say, exact }: Draft): readonly SettingLine[] =>
  settings.map(setting => ({
    name: say(`setting.${setting.of}`),
    value: exact(setting.value),
    from: say(`datum.${setting.from}`),
    check:
      check !== undefined && measures(check, setting)
        ? say('route.within', { tolerance: exact(check.tolerance), every: check.every })
        : '',
  }));

const measures = (check: MeasuredCheck, setting: Setting): boolean =>
  check.of === setting.of && check.length === setting.value;

/** `Length, stop to blade`, where all set-ups have that one setting and lie alike; else empty. */
export function oneSetting(setups: readonly Setup[], draft: Draft): string {
  const [first] = setups;
  const [line] = first === undefined ? [] : settingLines(first, draft);
  const alike = setups.every(
    setup =>
      setup.settings.length === 1 &&
      setup.settings[0]?.of === first?.settings[0]?.of &&
      setup.settings[0]?.from === first?.settings[0]?.from &&
      facing(setup, draft) === (first === undefined ? '' : facing(first, draft)),
  );
  return alike && line !== undefined ? `${line.name}, ${line.from}` : '';
}

/** Settings that are the same at each of several set-ups: they are made once. */
export function sharedSettings(setups: readonly Setup[], draft: Draft): readonly SettingLine[] {
  const [first = [], ...others] = setups.map(setup => settingLines(setup, draft));
  if (others.length === 0) return [];
  return first.filter(line => others.every(lines => lines.some(each => isSame(each, line))));
}

/** Settings without those that were made before. */
export const withoutShared = (lines: readonly SettingLine[], shared: readonly SettingLine[]): readonly SettingLine[] =>
  lines.filter(line => !shared.some(each => isSame(each, line)));

const isSame = (one: SettingLine, other: SettingLine): boolean =>
  one.name === other.name && one.value === other.value && one.from === other.from && one.check === other.check;

/** How a piece is laid to the machine, in words; empty where it is all one. */
export function facing({ orientation }: Pick<Setup, 'orientation'>, { say }: Pick<Draft, 'say'>): string {
  if (orientation === undefined) return '';
  const ways = [
    ...(orientation.face === 'either' ? [] : [say(`face.${orientation.face}`)]),
    ...(orientation.edge === 'either' ? [] : [say(`edge.${orientation.edge}`)]),
  ].join(', ');
  return ways.slice(0, 1).toUpperCase() + ways.slice(1);
}

/** A measured check of what is no setting of the machine. */
export const measuredCheck = ({ check, settings }: Setup, { say, exact }: Draft): string =>
  check === undefined || settings.some(setting => measures(check, setting))
    ? ''
    : say('route.check', {
        of: say(`setting.${check.of}`),
        length: exact(check.length),
        tolerance: exact(check.tolerance),
        every: check.every,
      });

/** A cell of a set-up's pieces: a head (the size of those that follow), or pieces to tick; nothing fills up a row. */
export type PieceCell = Spanning<{ readonly kind: 'head' | 'tick' | 'nothing'; readonly text: string }>;

/** The pieces of a set-up as rows of cells; what all of them have in common stands before. */
export type PieceGrid = { readonly common: string } & CellGrid<PieceCell>;

/**
 * Pieces under their size (and their passes and figures, where these differ within the set-up), longest first; where
 * `sizes` do not matter, under what else differs. What all have in common stands before them where it goes into
 * `commonRoom`. What belongs to one door and has one head shares a box:
 * `B7.A.1L-SL SR` is ticked when both are done.
 */
export function pieceGrid(
  pieces: readonly SetupPiece[],
  { room, commonRoom, sizes }: { readonly room: number; readonly commonRoom: number; readonly sizes: boolean },
  draft: Draft,
): PieceGrid {
  const usual = usualRuns(pieces);
  const groups = [...grouped(pieces, piece => pieceLabel(piece, sizes, usual, draft))].map(([label, alike]) => ({
    label: groupLabel(label, alike.length),
    ticks: [...grouped(alike, piece => ownerOf(piece, draft)).values()].map(those => together(those)),
  }));
  const [only = '', ...others] = groups.map(({ label }) => label);
  const common = others.length === 0 && draft.pen.measure(only, CODE_SIZE, false) <= commonRoom ? only : '';
  const cells = groups.flatMap(({ label, ticks }) => [
    ...(label === '' || label === common ? [] : [{ kind: 'head' as const, text: label }]),
    ...ticks.map(text => ({ kind: 'tick' as const, text })),
  ]);
  const width = ({ kind, text }: Omit<PieceCell, 'span'>): number =>
    draft.pen.measure(text, CODE_SIZE, kind === 'head') + (kind === 'head' ? CELL_ROOM : BOX_ROOM);
  const nothing = { kind: 'nothing' as const, text: '' };
  return {
    common,
    ...cellGrid<Omit<PieceCell, 'span'>>(cells, room, { width, nothing, isHead: ({ kind }) => kind === 'head' }),
  };
}

/** The passes of most pieces of a set-up, in words; those of others stand with them. One pass goes without saying. */
export const runsOf = (pieces: readonly SetupPiece[], { say }: Draft): string =>
  usualRuns(pieces)
    .filter(run => run !== 'once')
    .map(run => say(`run.${run}`))
    .join(', ');

function usualRuns(pieces: readonly SetupPiece[]): SetupPiece['runs'] {
  const ways = [...grouped(pieces, piece => piece.runs.join()).values()];
  return ways.sort((a, b) => b.length - a.length)[0]?.[0].runs ?? [];
}

function pieceLabel(piece: SetupPiece, sized: boolean, usual: SetupPiece['runs'], { say, size }: Draft): string {
  const runs = piece.runs.join() === usual.join() ? '' : piece.runs.map(run => say(`run.${run}`)).join(', ');
  const figures = piece.figures
    .map(({ of, length, count }) => `${count === undefined ? '' : `${count} × `}${say(`figure.${of}`)} ${size(length)}`)
    .join(', ');
  // A door's size stands on its tag and its sheet; what is done to it here is in its passes and figures.
  const sizes =
    piece.kind === 'door' || !sized ? '' : say('route.size', { length: size(piece.length), width: size(piece.width) });
  return [sizes, runs, figures].filter(Boolean).join(' · ');
}

const groupLabel = (label: string, count: number): string =>
  label === '' || count === 1 ? label : `${label} (${count})`;

/** The door that a piece belongs to; a blank without one stands for itself. */
function ownerOf(piece: SetupPiece, { parts, blanks }: Draft): string {
  const part = piece.kind === 'blank' ? blanks.get(piece.code)?.parts[0] : (piece.code as PartCode);
  return (part === undefined ? undefined : parts.get(part)?.door) ?? piece.code;
}

/** The first code whole, and of the others what tells them from it. */
function together([first, ...others]: Some<SetupPiece>): string {
  const stem = first.code.slice(0, first.code.lastIndexOf('-') + 1);
  return [
    first.code,
    ...others.map(({ code }) => (stem !== '' && code.startsWith(stem) ? code.slice(stem.length) : code)),
  ].join(' ');
}

const CODE_SIZE = 9;
/** What a cell needs beside its words, and a box with its space. */
const CELL_ROOM = 10;
const BOX_ROOM = 23;
