import { barcodesOf } from '../codes/barcode.ts';
import type { Diagnosed, Diagnostic } from '../diagnostics/diagnostic.ts';
import type { Job, Opening, Style } from '../import/job.ts';
import { type Bench, benchOf } from './bench.ts';
import { builtLeaf } from './built-leaf.ts';
import { barcodeClashes, coded } from './coded.ts';
import type { Door, DoorSet, Part } from './door-set.ts';
import { leafOf } from './leaves.ts';
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
  const made = doorsMade(job, openings, styles.value, bench);
  return {
    value: made.value,
    diagnostics: [
      ...sound.diagnostics,
      ...styles.diagnostics,
      ...unknownSpecies(job, styles.value),
      ...made.diagnostics,
      ...revealFindings(openings, job.shop),
      ...barcodeClashes(made.value),
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

/** Opening by opening and copy by copy, so that doors follow each other as they will hang. */
function doorsMade(job: Job, openings: readonly Opening[], styles: readonly Style[], bench: Bench): Diagnosed<DoorSet> {
  const styleOf = new Map(styles.map(style => [style.name, style]));
  const barcodeOf = barcodesOf(job.number);
  const doors: Door[] = [];
  const parts: Part[] = [];
  const diagnostics: Diagnostic[] = [];
  for (const opening of openings) {
    const style = styleOf.get(opening.style);
    // What is wrong with the style, or that there is none, was said at its own row.
    if (style === undefined) continue;
    const built = builtLeaf(opening, leafOf(opening, bench.shop), style, bench);
    diagnostics.push(...built.diagnostics);
    if (built.value === undefined) continue;
    for (let copy = 1; copy <= opening.quantity; copy += 1) {
      for (const leaf of built.value.leaves) {
        const made = coded(built.value, leaf, copy, barcodeOf);
        doors.push(made.door);
        parts.push(...made.parts);
      }
    }
  }
  return { value: { doors, parts }, diagnostics };
}
