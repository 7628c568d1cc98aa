import type { Barcode, DoorCode } from '../codes/codes.ts';
import { doorCode, partCode } from '../codes/part-code.ts';
import { type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import type { MarkedSight } from './body.ts';
import type { BuiltLeaf, HungLeaf } from './built-leaf.ts';
import type { Door, DoorSet, Part, Sight } from './door-set.ts';
import type { Piece } from './piece.ts';

type CodedDoor = { readonly door: Door; readonly parts: readonly Part[] };

/**
 * One copy of a leaf as a door with its parts, each with its code and symbol. Doors and parts are written out field by
 * field: of 100,000 parts, each copy of the rest would be made twice.
 */
export function coded(leaf: BuiltLeaf, hung: HungLeaf, copy: number, barcodeOf: (code: string) => Barcode): CodedDoor {
  const code = doorCode({ cabinet: leaf.cabinet, label: leaf.label, copy, leaf: hung.leaf });
  const parts = leaf.pieces.map(piece => codedPart(piece, code, barcodeOf));
  const door: Door = {
    code,
    barcode: barcodeOf(code),
    copy,
    cabinet: leaf.cabinet,
    label: leaf.label,
    room: leaf.room,
    leaf: hung.leaf,
    front: leaf.front,
    hingeSide: hung.hingeSide,
    mounting: leaf.mounting,
    style: leaf.style,
    build: leaf.build,
    opening: leaf.opening,
    width: leaf.width,
    height: leaf.height,
    thickness: leaf.thickness,
    gaps: leaf.gaps,
    diagonal: leaf.diagonal,
    sights: leaf.sights.map(sight => codedSight(sight, code)),
    joint: leaf.joint,
    hinges: leaf.hinges,
    pull: hung.pull,
    mass: leaf.mass,
    finishArea: leaf.finishArea,
    edgeEasing: leaf.edgeEasing,
    parts: parts.map(part => part.code),
    workings: leaf.workings,
    note: leaf.note,
    from: leaf.from,
  };
  return { door, parts };
}

const codedSight = ({ place, column, row, mark }: MarkedSight, door: DoorCode): Sight => ({
  left: place.left,
  bottom: place.bottom,
  width: place.width,
  height: place.height,
  column,
  row,
  infill: partCode(door, mark),
});

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
  const tagged = [...doors, ...parts];
  const barcodes = new Set<Barcode>();
  const clashes: Diagnostic[] = [];
  for (const { code, barcode } of tagged) {
    const { size } = barcodes;
    if (barcodes.add(barcode).size > size) continue;
    const one = tagged.find(other => other.barcode === barcode)?.code ?? code;
    clashes.push(problem('barcode-clash', { kind: 'part', code }, { one, other: code }));
  }
  return clashes;
}
