import type { Barcode, DoorCode } from '../codes/codes.ts';
import { doorCode, partCode } from '../codes/part-code.ts';
import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { BuiltLeaf } from './built-leaf.ts';
import type { Door, DoorSet, Part } from './door-set.ts';
import type { Piece } from './piece.ts';

type CodedDoor = { readonly door: Door; readonly parts: readonly Part[] };

/** One copy of a leaf as a door with its parts, each with its code and symbol. */
export function coded(leaf: BuiltLeaf, copy: number, barcodeOf: (code: string) => Barcode): CodedDoor {
  const { pieces, sights, ...rest } = leaf;
  const code = doorCode({ cabinet: leaf.cabinet, label: leaf.label, copy, leaf: leaf.leaf });
  const parts = pieces.map(piece => codedPart(piece, code, barcodeOf));
  const door: Door = {
    code,
    barcode: barcodeOf(code),
    copy,
    ...rest,
    sights: sights.map(({ mark, ...sight }) => ({ ...sight, infill: partCode(code, mark) })),
    parts: parts.map(part => part.code),
  };
  return { door, parts };
}

/** Written out field by field: of 100,000 parts, each copy of the rest would be made twice. */
function codedPart(piece: Piece, door: DoorCode, barcodeOf: (code: string) => Barcode): Part {
  const code = partCode(door, piece.mark);
  return {
    code,
    barcode: barcodeOf(code),
    door,
    role: piece.role,
    stock: piece.stock,
    length: piece.length,
    width: piece.width,
    thickness: piece.thickness,
    shoulder: piece.shoulder,
    place: piece.place,
    make: piece.make,
    mass: piece.mass,
    workings: piece.workings,
  };
}

/** Two codes of one symbol would be one piece to every scanner. Rare (see `barcodesOf`), so it is looked for. */
export function barcodeClashes({ doors, parts }: DoorSet): readonly Diagnostic[] {
  const codes = new Map<Barcode, string>();
  const clashes: Diagnostic[] = [];
  for (const { code, barcode } of [...doors, ...parts]) {
    const other = codes.get(barcode);
    if (other === undefined) codes.set(barcode, code);
    else clashes.push(problem('barcode-clash', { kind: 'part', code }, { one: other, other: code }));
  }
  return clashes;
}
