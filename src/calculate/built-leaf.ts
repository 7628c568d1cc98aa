import { type Diagnosed, isError } from '../diagnostics/diagnostic.ts';
import type { Opening, Style } from '../import/job.ts';
import type { Shop } from '../trade/shop.ts';
import { areaOf } from '../units/area.ts';
import type { Length } from '../units/length.ts';
import { kg, type Mass } from '../units/mass.ts';
import type { Bench } from './bench.ts';
import { type Body, frameBody, type MarkedSight, middleRailsOf, slabBody } from './body.ts';
import { diagonal } from './diagonal.ts';
import { doorFindings } from './door-checks.ts';
import type { Door, FactWorking } from './door-set.ts';
import { constant, type Fact, fact, lengthInput, product, sum } from './formula.ts';
import { divisionOf } from './grid.ts';
import { type Hanging, hangingOf } from './hinges.ts';
import type { Leaf, LeafSide } from './leaves.ts';
import { massOf, type Piece } from './piece.ts';
import { pullOf } from './pull.ts';
import { frameHasRoom, leafHasSize } from './sizes.ts';

/** A door with everything but its codes: the copies of an opening differ in nothing else, the leaves of a pair as they hang. */
export type BuiltLeaf = Omit<Door, 'code' | 'barcode' | 'copy' | 'parts' | 'sights' | keyof HungLeaf> & {
  readonly leaves: readonly HungLeaf[];
  readonly pieces: readonly Piece[];
  readonly sights: readonly MarkedSight[];
};

/** What the leaves of a pair do not share. */
export type HungLeaf = LeafSide & Pick<Door, 'pull'>;

/** Undefined where the door cannot be made; the findings then say why. */
export function builtLeaf(opening: Opening, leaf: Leaf, style: Style, bench: Bench): Diagnosed<BuiltLeaf | undefined> {
  const body = bodyOf(opening, leaf, style, bench);
  if (body.value === undefined) return { value: undefined, diagnostics: body.diagnostics };
  const built = assembled(opening, leaf, style, body.value, bench);
  const findings = doorFindings(built, opening, bench.shop);
  return { value: findings.some(isError) ? undefined : built, diagnostics: findings };
}

function bodyOf(opening: Opening, leaf: Leaf, style: Style, bench: Bench): Diagnosed<Body | undefined> {
  const sizeless = leafHasSize(opening, leaf);
  if (sizeless.length > 0) return { value: undefined, diagnostics: sizeless };
  if (style.build === 'slab') return { value: slabBody(leaf, style, bench), diagnostics: [] };
  const division = divisionOf(leaf, style, opening.grid, bench.shop.doors.increment);
  const cramped = frameHasRoom(opening, leaf, style, division);
  return { value: cramped.length > 0 ? undefined : frameBody(leaf, style, division, bench), diagnostics: cramped };
}

function assembled(opening: Opening, leaf: Leaf, style: Style, body: Body, bench: Bench): BuiltLeaf {
  const { shop } = bench;
  const size = { width: leaf.width.value, height: leaf.height.value };
  const mass = massOfAll(body.pieces, bench);
  const finish = fact(FINISH_AREA, { W: size.width, H: size.height, F: body.thickness });
  const hung = hanging(opening, leaf, kg(mass.value.value), body, shop);
  const corners = diagonal(size);
  return {
    cabinet: opening.cabinet,
    label: opening.label,
    room: opening.room,
    leaves: leaf.sides.map(side => hungLeaf(side, opening, size, shop)),
    front: opening.kind,
    mounting: opening.mounting.kind,
    style: style.name,
    build: style.build,
    opening: { width: opening.width, height: opening.height },
    width: leaf.width,
    height: leaf.height,
    thickness: body.thickness,
    gaps: leaf.gaps,
    diagonal: { length: corners.value.value, tolerance: squareness(leaf, shop) },
    sights: body.sights,
    joint: body.joint,
    hinges: hung.hinges,
    mass: kg(mass.value.value),
    finishArea: areaOf(finish.value.value),
    edgeEasing: style.edgeEasing,
    workings: leaf.workings.concat(body.workings, [corners, mass, finish], hung.workings),
    note: opening.note,
    from: opening.from,
    pieces: body.pieces,
  };
}

function hungLeaf({ leaf, hingeSide }: LeafSide, opening: Opening, { width, height }: Size, shop: Shop): HungLeaf {
  return { leaf, hingeSide, pull: pullOf(opening, { width, height, hingeSide }, shop) };
}

type Size = { readonly width: Length; readonly height: Length };

/** How far the diagonals of a door may differ: a tall door is allowed more. */
const squareness = (leaf: Leaf, { doors }: Shop): Length =>
  leaf.height.value <= doors.squareTallFrom ? doors.squareShort : doors.squareTall;

function massOfAll(pieces: readonly Piece[], { doorMass }: Bench): FactWorking {
  const given: Record<string, Mass> = {};
  for (const { mark, mass } of pieces) given[massOf(mark)] = mass;
  return fact(doorMass(pieces.map(({ mark }) => mark).join(' ')), given);
}

/** Both faces and the four edges. */
const FINISH_AREA: Fact<'W' | 'H' | 'F'> = {
  of: 'finish-area',
  unit: 'm²',
  formula: sum(
    product(constant(2), lengthInput('W'), lengthInput('H')),
    product(constant(2), sum(lengthInput('W'), lengthInput('H')), lengthInput('F')),
  ),
};

/** What swings is hung; drawer fronts, false fronts and end panels are not. */
const hanging = (opening: Opening, leaf: Leaf, mass: Mass, body: Body, shop: Shop): Hanging =>
  opening.hanging.kind === 'fixed'
    ? { hinges: [], workings: [] }
    : hangingOf({ height: leaf.height.value, mass }, middleRailsOf(body), shop);
