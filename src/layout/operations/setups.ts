import { barcodesOf } from '../../codes/barcode.ts';
import type { SetupCode } from '../../codes/codes.ts';
import type { OperationId, RunName, Setup, SetupNote, SetupPiece } from '../shop-plan.ts';
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
export function draftsOf(passes: Iterable<Pass>, order: Order, places: Places): readonly Draft[] {
  const asked = new Map<string, Asked>();
  for (const { machine, group, piece } of passes) {
    const key = settingKey(machine) + (group === undefined ? '' : ` / ${group.kind} ${group.name}`);
    const same = asked.get(key);
    const run = { piece, notes: machine.notes };
    if (same === undefined) asked.set(key, { key, machine, group, runs: [run] });
    else same.runs.push(run);
  }
  return [...asked.values()].map(each => draft(each, order, places)).sort(inOrder(order));
}

/** A setting, and all that ask for it. Notes may differ among them: some pieces are grooved on both edges. */
type Asked = Pick<Pass, 'machine' | 'group'> & { readonly key: string; readonly runs: Run[] };
type Run = { readonly piece: SetupPiece; readonly notes: readonly SetupNote[] };

function draft({ key, machine, group, runs }: Asked, order: Order, places: Places): Draft {
  const sorted = sortedRuns(runs, order, places);
  const notes = new Set<SetupNote>();
  for (const run of sorted) for (const note of run.notes) notes.add(note);
  return { ...machine, notes: [...notes], pieces: merged(sorted), key, group };
}

/** The place of each code among those of a job, B10 after B9: ties are many, and every operation has them. */
export type Places = ReadonlyMap<string, number>;

export function placesOf(codes: Iterable<string>): Places {
  const names = [...new Set(codes)].map(code => ({ code, name: natural(code) }));
  names.sort((a, b) => compare(a.name, b.name) || compare(a.code, b.code));
  return new Map(names.map(({ code }, place) => [code, place]));
}

/** Longest first; on site and in the clamps by cabinet, as the rooms are walked. Ties end with the code. */
function sortedRuns(runs: readonly Run[], order: Order, places: Places): readonly Run[] {
  const byLength = order !== 'cabinet';
  return runs
    .map(run => ({ run, piece: run.piece, place: places.get(run.piece.code) ?? 0 }))
    .sort(
      (a, b) =>
        (byLength ? b.piece.length - a.piece.length || b.piece.width - a.piece.width : 0) ||
        a.place - b.place ||
        runOrder(a.piece.runs) - runOrder(b.piece.runs),
    )
    .map(({ run }) => run);
}

/** A piece that asks for the setting twice (both ends, two hinges) is listed once, with both runs. */
function merged(runs: readonly Run[]): readonly SetupPiece[] {
  const pieces: SetupPiece[] = [];
  for (const { piece } of runs) {
    const before = pieces.at(-1);
    if (before?.code === piece.code) pieces[pieces.length - 1] = { ...before, runs: [...before.runs, ...piece.runs] };
    else pieces.push(piece);
  }
  return pieces;
}

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
const natural = (text: string): string => text.replace(FIGURES, digits => digits.padStart(9, '0'));
const FIGURES = /\d+/g;
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
