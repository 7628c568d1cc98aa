import { barcodesOf } from '../codes/barcode.ts';
import type { Diagnosed } from '../diagnostics/diagnostic.ts';
import type { Job, Opening, Style } from '../import/job.ts';
import { type Bench, benchOf } from './bench.ts';
import { type BuiltLeaf, builtLeaf } from './built-leaf.ts';
import { barcodeClashes, coded } from './coded.ts';
import type { Door, DoorSet, Part } from './door-set.ts';
import { leavesOf } from './leaves.ts';
import { materialsOf, unknownSpecies } from './materials.ts';
import { moistures } from './moisture.ts';
import { revealFindings } from './reveals.ts';
import { withKnownMovement } from './solid-wood.ts';
import { usableStyles } from './styles.ts';

/**
 * Every door of the job and every part of every door, each number with its working. Total: a door that cannot be made
 * is reported at the row and column that cause it and left out, and the others go on; so are all doors of a style that
 * cannot be made, which is said once, at the style. Doors come in the order of the openings.
 */
export function calculate(job: Job): Diagnosed<DoorSet> {
  const bench = benchOf(job.shop, materialsOf(job), moistures(job.shop));
  const sound = usableStyles(job);
  const styles = withKnownMovement(sound.value, bench.materials, bench.air);
  const openings = namedOnce(job.openings);
  const styleOf = new Map(styles.value.map(style => [style.name, style]));
  const built = openings.map(opening => leavesBuilt(opening, styleOf.get(opening.style), bench));
  const doorSet = codedAll(
    job,
    openings.map(({ quantity }, at) => ({ quantity, leaves: built[at]?.value ?? [] })),
  );
  return {
    value: doorSet,
    diagnostics: [
      ...sound.diagnostics,
      ...styles.diagnostics,
      ...unknownSpecies(job, styles.value),
      ...built.flatMap(each => each.diagnostics),
      ...revealFindings(openings, job.shop),
      ...barcodeClashes(doorSet),
    ],
  };
}

/** Two openings of one name would share their codes, which the import has reported. The first keeps them. */
function namedOnce(openings: readonly Opening[]): readonly Opening[] {
  const names = new Set<string>();
  return openings.filter(({ cabinet, label }) => {
    const name = JSON.stringify([cabinet, label]);
    const isNew = !names.has(name);
    names.add(name);
    return isNew;
  });
}

/** The leaves of an opening, or none where it cannot be closed: half a pair closes nothing. */
function leavesBuilt(opening: Opening, style: Style | undefined, bench: Bench): Diagnosed<readonly BuiltLeaf[]> {
  // What is wrong with the style, or that there is none, was said at its own row.
  if (style === undefined) return { value: [], diagnostics: [] };
  const built = leavesOf(opening, bench.shop).map(leaf => builtLeaf(opening, leaf, style, bench));
  const leaves = built.map(each => each.value).filter(leaf => leaf !== undefined);
  // The leaves of a pair are mirror images: what is wrong with one is wrong with both, and said once.
  return { value: leaves.length === built.length ? leaves : [], diagnostics: built[0]?.diagnostics ?? [] };
}

/** Copy by copy, so that the doors of an opening follow each other as they will hang. */
function codedAll(
  job: Job,
  openings: readonly { readonly quantity: number; readonly leaves: readonly BuiltLeaf[] }[],
): DoorSet {
  const barcodeOf = barcodesOf(job.number);
  const doors: Door[] = [];
  const parts: Part[] = [];
  for (const { quantity, leaves } of openings) {
    for (let copy = 1; copy <= quantity; copy += 1) {
      for (const leaf of leaves) {
        const made = coded(leaf, copy, barcodeOf);
        doors.push(made.door);
        parts.push(...made.parts);
      }
    }
  }
  return { doors, parts };
}
