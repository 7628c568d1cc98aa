import type { Shop } from '../../trade/shop.ts';
import type { Length } from '../../units/length.ts';
import type {
  Adjustment,
  Blank,
  Datum,
  MeasuredCheck,
  Orientation,
  RunName,
  Setting,
  SettingName,
  SetupGroup,
  SetupNote,
  SetupPiece,
} from '../shop-plan.ts';
import type { Piece } from '../work.ts';

/** One machine setting as one piece asks for it. Pieces that ask for the same are run together, and it is made once. */
export type MachineSetting = {
  readonly settings: readonly Setting[];
  readonly orientation: Orientation | undefined;
  readonly notes: readonly SetupNote[];
  readonly adjustment: Adjustment | undefined;
  readonly check: MeasuredCheck | undefined;
};

/** A piece's way over a machine. `group` keeps apart what is not done together although nothing is set: rooms, clamps. */
export type Pass = {
  readonly machine: MachineSetting;
  readonly piece: SetupPiece;
  readonly group: SetupGroup | undefined;
};

/** Where nothing is set. */
export const BENCH: MachineSetting = {
  settings: [],
  orientation: undefined,
  notes: [],
  adjustment: undefined,
  check: undefined,
};

export const set = (of: SettingName, value: Length, sets: Setting['sets'], from: Datum): Setting => ({
  of,
  value,
  sets,
  from,
});

/** What is measured at a set-up, on one piece in so many, as the shop has it. */
export const checkOf = (of: SettingName, length: Length, shop: Shop): MeasuredCheck => ({
  of,
  length,
  tolerance: shop.testing.tolerance,
  every: shop.testing.measureEvery,
});

/** What tells one setting from another: each value, and how the piece lies. */
export function settingKey({ settings, orientation }: MachineSetting): string {
  let key = orientation === undefined ? '' : `${orientation.face} ${orientation.edge}`;
  for (const { of, value, from } of settings) key += `, ${of} ${value} ${from}`;
  return key;
}

export const passOf = (
  piece: Piece,
  size: { readonly length: Length; readonly width: Length },
  machine: MachineSetting,
  runs: readonly RunName[] = ONCE,
): Pass => {
  const { code, kind } = nameOf(piece);
  return {
    machine,
    piece: { code, kind, runs, length: size.length, width: size.width, figures: NO_FIGURES },
    group: undefined,
  };
};

/** One for all: a large job has a pass for every piece at every operation. */
const ONCE: readonly RunName[] = ['once'];
const NO_FIGURES: SetupPiece['figures'] = [];

/** A blank that becomes one part has the part's code: its tag is stuck on as soon as it is cut. */
export function nameOf(piece: Piece): Pick<SetupPiece, 'code' | 'kind'> {
  switch (piece.kind) {
    case 'blank':
      return { code: piece.blank.code, kind: isOnePart(piece.blank) ? 'part' : 'blank' };
    case 'part':
      return { code: piece.part.code, kind: 'part' };
    case 'door':
      return { code: piece.door.code, kind: 'door' };
  }
}

const isOnePart = (blank: Blank): boolean => blank.purpose === 'part' && blank.parts.length === 1;
