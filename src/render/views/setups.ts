import type { Setting, Setup, SetupPiece } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import { grouped, inRows } from '../order.ts';

/** A setting as it is set: `Width 2 1/4, fence to blade`. */
export type SettingLine = { readonly name: string; readonly value: string; readonly from: string };

export const settingLines = (settings: readonly Setting[], { say, size }: Draft): readonly SettingLine[] =>
  settings.map(setting => ({
    name: say(`setting.${setting.of}`),
    value: size(setting.value),
    from: say(`datum.${setting.from}`),
  }));

/** How a piece is laid to the machine, in words; empty where it is all one. */
export function facing({ orientation }: Pick<Setup, 'orientation'>, { say }: Pick<Draft, 'say'>): string {
  if (orientation === undefined) return '';
  return [
    ...(orientation.face === 'either' ? [] : [say(`face.${orientation.face}`)]),
    ...(orientation.edge === 'either' ? [] : [say(`edge.${orientation.edge}`)]),
  ].join(', ');
}

export const measuredCheck = ({ check }: Setup, { say, size }: Draft): string =>
  check === undefined
    ? ''
    : say('route.check', {
        of: say(`setting.${check.of}`),
        length: size(check.length),
        tolerance: size(check.tolerance),
        every: check.every,
      });

/** Pieces that are alike at a set-up: what they are called together, and their codes in rows. */
export type PieceGroup = {
  readonly label: string;
  readonly count: number;
  readonly rows: readonly (readonly string[])[];
};

/** Pieces under their size, passes and figures; `columns` codes to a row. */
export const pieceGroups = (pieces: readonly SetupPiece[], columns: number, draft: Draft): readonly PieceGroup[] =>
  [...grouped(pieces, piece => pieceLabel(piece, draft))].map(([label, alike]) => ({
    label,
    count: alike.length,
    rows: inRows(
      alike.map(piece => piece.code),
      columns,
    ),
  }));

function pieceLabel(piece: SetupPiece, { say, size }: Draft): string {
  const runs = piece.runs.map(run => say(`run.${run}`)).join(', ');
  const figures = piece.figures
    .map(({ of, length, count }) => `${count === undefined ? '' : `${count} × `}${say(`figure.${of}`)} ${size(length)}`)
    .join(', ');
  return [say('route.size', { length: size(piece.length), width: size(piece.width) }), runs, figures]
    .filter(Boolean)
    .join(' · ');
}

/** As many columns of codes as go into `room` points, each code with its box to tick. */
export function codeColumns(codes: readonly string[], room: number, { pen }: Draft): number {
  const widest = codes.reduce((most, code) => Math.max(most, pen.measure(code, CODE_SIZE, false)), 1);
  return Math.max(1, Math.min(COLUMNS_MAX, Math.floor(room / (widest + BOX_ROOM))));
}

const CODE_SIZE = 10;
/** The box, its space and the cell's own. */
const BOX_ROOM = 24;
const COLUMNS_MAX = 8;
