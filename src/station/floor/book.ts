import type { Manifest } from '../../render/packet.ts';

export type Operation = Manifest['operations'][number];
export type Setup = Operation['setups'][number];

/** A manifest, opened at the places where a station looks. */
export type Book = {
  readonly manifest: Manifest;
  readonly job: string;
  readonly revision: string;
  readonly pieces: ReadonlyMap<string, Piece>;
  readonly partsOfDoor: ReadonlyMap<string, readonly Piece[]>;
  readonly operations: ReadonlyMap<string, BookedOperation>;
};

/** A part or a door, as a station sees it: something that carries a tag. */
export type Piece = {
  readonly kind: 'part' | 'door';
  readonly code: string;
  readonly barcode: string;
  /** The door that it goes into; of a door, itself. */
  readonly door: string;
  readonly cabinet: string;
  readonly room: string;
  /** "left stile"; empty for a door. */
  readonly name: string;
  /** Length, width, thickness as the shop writes them. */
  readonly size: readonly string[];
  /** Operations that are scanned, in order; waits are not among them. */
  readonly route: readonly string[];
  /** All that makes it another piece if it differs: sizes and stock. */
  readonly make: string;
  readonly part: Manifest['parts'][number] | undefined;
};

export type BookedOperation = {
  readonly operation: Operation;
  /** Its place in the order of the whole job. */
  readonly order: number;
  readonly setups: ReadonlyMap<string, Setup>;
  /** Those that have it on their route. */
  readonly pieces: readonly Piece[];
  readonly codes: ReadonlySet<string>;
  /** Minutes of work for one piece. */
  readonly minutesEach: number;
};

export function bookOf(manifest: Manifest): Book {
  const scanned = new Set(manifest.operations.filter(each => !onlyWaits(each)).map(each => each.id));
  const doors = manifest.doors.map(door => doorPiece(door, scanned));
  const byCode = new Map(doors.map(door => [door.code, door]));
  const parts = manifest.parts.map(part => partPiece(part, byCode.get(part.door), scanned));
  const pieces = [...doors, ...parts];
  return {
    manifest,
    job: manifest.job.number,
    revision: manifest.job.revision,
    pieces: new Map(pieces.map(piece => [piece.code, piece])),
    partsOfDoor: partsOfDoor(parts),
    operations: new Map(
      manifest.operations.map((operation, order) => [operation.id, booked(operation, order, pieces)]),
    ),
  };
}

/** A rest or a cure: no hand does it, so no hand scans it. */
export const onlyWaits = (operation: Operation): boolean =>
  operation.waitMinutes > 0 && operation.minutes.setup + operation.minutes.pieces === 0;

/** The set-up at which `code` is run in `operation`. */
export const setupOf = (book: Book, operation: string, code: string): Setup | undefined =>
  book.operations.get(operation)?.setups.get(code);

/** The later of two revisions: B after A, AA after Z. */
export const compareRevisions = (a: string, b: string): number => a.length - b.length || (a < b ? -1 : a > b ? 1 : 0);

function doorPiece(door: Manifest['doors'][number], scanned: ReadonlySet<string>): Piece {
  const sizes = [door.height, door.width, door.thickness];
  return {
    kind: 'door',
    code: door.code,
    barcode: door.barcode,
    door: door.code,
    cabinet: door.cabinet,
    room: door.room,
    name: '',
    size: sizes.map(each => each.text),
    route: door.route.filter(id => scanned.has(id)),
    make: sizes.map(each => each.nm).join(' '),
    part: undefined,
  };
}

function partPiece(part: Manifest['parts'][number], door: Piece | undefined, scanned: ReadonlySet<string>): Piece {
  const sizes = [part.length, part.width, part.thickness];
  return {
    kind: 'part',
    code: part.code,
    barcode: part.barcode,
    door: part.door,
    cabinet: door?.cabinet ?? '',
    room: door?.room ?? '',
    name: part.name,
    size: sizes.map(each => each.text),
    route: part.route.filter(id => scanned.has(id)),
    make: [...sizes.map(each => each.nm), part.stock].join(' '),
    part,
  };
}

function partsOfDoor(parts: readonly Piece[]): ReadonlyMap<string, readonly Piece[]> {
  const found = new Map<string, Piece[]>();
  for (const part of parts) {
    const those = found.get(part.door);
    if (those === undefined) found.set(part.door, [part]);
    else those.push(part);
  }
  return found;
}

function booked(operation: Operation, order: number, all: readonly Piece[]): BookedOperation {
  const setups = new Map(operation.setups.flatMap(setup => setup.pieces.map(code => [code, setup] as const)));
  const pieces = all.filter(piece => piece.route.includes(operation.id));
  const minutesEach = pieces.length === 0 ? 0 : operation.minutes.pieces / pieces.length;
  return { operation, order, setups, pieces, codes: new Set(pieces.map(piece => piece.code)), minutesEach };
}
