import type { DoorCode, PartCode } from './codes.ts';

/** What names a door: never its row, so that its tags stay right when the sheet is sorted or a row is put in. */
export type DoorName = {
  readonly cabinet: string;
  readonly label: string;
  readonly copy: number;
  readonly leaf: 'single' | 'left' | 'right';
};

/**
 * `B7.A.2L`: cabinet, opening label where there is one, copy, and the leaf where there are two. Two doors share a code
 * only where all four are the same, whatever characters a cabinet's name is made of.
 */
export function doorCode({ cabinet, label, copy, leaf }: DoorName): DoorCode {
  const opening = label === '' ? plain(cabinet) : `${plain(cabinet)}.${plain(label)}`;
  return `${opening}.${copy}${LEAF_MARKS[leaf]}` as DoorCode;
}

/** `B7.A.2L-SL`: the door and the part's mark in it, a mark having neither dot nor hyphen. */
export const partCode = (door: DoorCode, mark: string): PartCode => `${door}-${mark}` as PartCode;

/** A place in the grid: row 2 from the bottom, column B from the left. */
export const placeMark = (row: number, column: number): string => `${row}${letters(column)}`;

const LEAF_MARKS = { single: '', left: 'L', right: 'R' } as const;

/**
 * A name with its spaces as `_`, and what could be taken for part of the code's own form as `~` and its number. Letters
 * and figures of all languages stand as they are, unless the same sight could be written in two ways.
 */
function plain(text: string): string {
  if (/^[A-Za-z0-9+-]+$/.test(text)) return text;
  const composed = text === text.normalize('NFC');
  const code = text.replace(composed ? /[^\p{L}\p{N}+-]/gu : /[^A-Za-z0-9+-]/gu, character =>
    character === ' ' ? '_' : `~${character.codePointAt(0)?.toString(16).toUpperCase()}~`,
  );
  // A cabinet without a name still has a code of three parts.
  return code === '' ? '~' : code;
}

/** A, B … Z, AA, AB … as the columns of a spreadsheet. */
function letters(column: number): string {
  const before = Math.floor((column - 1) / 26);
  return (before === 0 ? '' : letters(before)) + String.fromCharCode(65 + ((column - 1) % 26));
}
