import { barcodesOf } from '../../codes/barcode.ts';
import type { SetupCode } from '../../codes/codes.ts';
import type { OperationId, RunName, Setup, SetupPiece } from '../shop-plan.ts';
import { type Pass, settingKey } from './pass.ts';

/** In which order set-ups are made and pieces are run. */
export type Order = 'longest' | 'setting' | 'cabinet' | 'group';

/** A set-up before it is named: one setting, and all the passes that ask for it. */
export type Draft = Omit<Setup, 'code' | 'barcode' | 'testPieces' | 'reminders'> & {
  readonly key: string;
};

/**
 * Passes that ask for the same setting become one set-up, made once. Longest first, at the pieces and at the set-ups:
 * a spoiled long piece can still become a short one. For a fence or a stop, that is its largest value first.
 */
export function draftsOf(passes: readonly Pass[], order: Order): readonly Draft[] {
  const groups = new Map<string, Pass[]>();
  for (const pass of passes) {
    const key = settingKey(pass.machine) + (pass.group === undefined ? '' : ` / ${pass.group.kind} ${pass.group.name}`);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [pass]);
    else group.push(pass);
  }
  return [...groups].map(([key, group]) => draft(key, group, order)).sort(inOrder(order));
}

function draft(key: string, passes: readonly Pass[], order: Order): Draft {
  const sorted = [...passes].sort((a, b) => beforePiece(order)(a.piece, b.piece));
  const [first] = sorted;
  if (first === undefined) throw new Error(`${key} has no pieces`);
  return {
    ...first.machine,
    notes: [...new Set(sorted.flatMap(pass => pass.machine.notes))],
    pieces: merged(sorted.map(pass => pass.piece)),
    key,
    group: first.group,
  };
}

/** A piece that asks for the setting twice (both ends, two hinges) is listed once, with both runs. */
function merged(pieces: readonly SetupPiece[]): readonly SetupPiece[] {
  const byCode = new Map<string, SetupPiece>();
  for (const piece of pieces) {
    const seen = byCode.get(piece.code);
    byCode.set(piece.code, seen === undefined ? piece : { ...seen, runs: [...seen.runs, ...piece.runs] });
  }
  return [...byCode.values()];
}

/** Longest first; on site and in the clamps by cabinet, as the rooms are walked. Ties end with the code. */
const beforePiece =
  (order: Order) =>
  (a: SetupPiece, b: SetupPiece): number =>
    (order === 'cabinet' ? 0 : b.length - a.length || b.width - a.width) ||
    compare(natural(a.code), natural(b.code)) ||
    compare(a.code, b.code) ||
    runOrder(a.runs) - runOrder(b.runs);

function inOrder(order: Order): (a: Draft, b: Draft) => number {
  switch (order) {
    case 'setting':
      return (a, b) => bySetting(a, b) || compare(a.key, b.key);
    case 'group':
    case 'cabinet':
      return (a, b) => compare(natural(a.group?.name ?? ''), natural(b.group?.name ?? '')) || compare(a.key, b.key);
    case 'longest':
      return (a, b) => longestPiece(b) - longestPiece(a) || bySetting(a, b) || compare(a.key, b.key);
  }
}

function bySetting(a: Draft, b: Draft): number {
  for (let at = 0; at < a.settings.length; at += 1) {
    const difference = (b.settings[at]?.value ?? 0) - (a.settings[at]?.value ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

const longestPiece = ({ pieces }: Draft): number => pieces[0]?.length ?? 0;
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
/** B10 after B9. */
const natural = (text: string): string => text.replace(/\d+/g, digits => digits.padStart(9, '0'));
const runOrder = (runs: readonly RunName[]): number => (runs[0]?.startsWith('top') ? 0 : 1);

/**
 * A set-up's code tells its operation and is made from its setting, not from its number: while the setting stays, a
 * scan of an older revision's sheet still means the same.
 */
export function setupCodes(jobNumber: string): (id: OperationId, key: string) => SetupCode {
  const barcodeOf = barcodesOf(jobNumber);
  const taken = new Map<string, string>();
  return (id, key) => {
    const mark = barcodeOf(`${id} ${key}`).slice(3);
    let characters = 4;
    let code = `${LETTERS[id]}-${mark.slice(0, characters)}`;
    while (taken.has(code) && characters < mark.length) {
      characters += 1;
      code = `${LETTERS[id]}-${mark.slice(0, characters)}`;
    }
    taken.set(code, key);
    return code as SetupCode;
  };
}

const LETTERS: { readonly [Id in OperationId]: string } = {
  'crosscut-rough': 'XR',
  'rip-rough': 'RR',
  rest: 'RE',
  'plane-thickness': 'PL',
  'joint-edge': 'JE',
  'rip-width': 'RW',
  'cut-length': 'CL',
  inspect: 'IN',
  groove: 'GR',
  cope: 'CO',
  'break-sheet': 'BS',
  'glue-panel': 'GP',
  'cure-panel': 'CP',
  'flatten-panel': 'FP',
  'rip-panel': 'RP',
  'cut-panel': 'XP',
  'rabbet-panel': 'RB',
  'sand-panel': 'SP',
  'cut-stops': 'ST',
  'dry-fit': 'DF',
  'glue-up': 'GU',
  cure: 'CU',
  'cut-horns': 'HO',
  'rabbet-glass': 'RG',
  'flush-sand': 'FS',
  'bore-hinges': 'BH',
  'hang-and-fit': 'HF',
  'take-down': 'TD',
  'ease-edges': 'EE',
  finish: 'FI',
  'cure-finish': 'CF',
  'fit-glass': 'FG',
  'drill-pulls': 'DP',
  hang: 'HG',
};
