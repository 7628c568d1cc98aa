import type { Door, DoorSet } from '../../calculate/door-set.ts';
import { type Diagnosed, type Diagnostic, problem } from '../../diagnostics/diagnostic.ts';
import type { Hardware, Job } from '../../import/job.ts';
import { priceOf } from '../../units/money.ts';
import type { ShoppingLine } from '../shop-plan.ts';

/** Each item of the Hardware sheet by the pack; hinges and pulls that no row covers are listed all the same, and said. */
export function hardware(job: Job, doorSet: DoorSet): Diagnosed<readonly ShoppingLine[]> {
  const needed = needsOf(doorSet.doors);
  const uncovered = (['hinge', 'pull'] as const).filter(
    use => needed[use] > 0 && !job.hardware.some(item => item.use === use),
  );
  const lines = [
    ...job.hardware.map(item => lineFor(item, item.count * needed[item.per])),
    ...uncovered.map(use => lineFor({ item: use, pack: 1, onHand: 0, price: undefined }, needed[use])),
  ];
  return {
    value: lines.filter(line => line.needed > 0).sort((a, b) => (a.item < b.item ? -1 : a.item > b.item ? 1 : 0)),
    diagnostics: uncovered.map(use => notListed(use, needed[use])),
  };
}

/** How often each thing that hardware is counted by is there. What hangs on nothing still closes: bumpers and pulls. */
const needsOf = (doors: readonly Door[]): { readonly [P in Hardware['per']]: number } => ({
  door: doors.filter(door => door.front === 'door' || door.front === 'drawer-front').length,
  hinge: doors.reduce((sum, door) => sum + door.hinges.length, 0),
  pull: doors.filter(door => door.pull !== undefined).length,
  job: 1,
});

function lineFor(item: Pick<Hardware, 'item' | 'pack' | 'onHand' | 'price'>, pieces: number): ShoppingLine {
  const buy = Math.ceil(Math.max(0, pieces - item.onHand) / item.pack);
  return {
    kind: 'hardware',
    item: item.item,
    unit: item.pack === 1 ? 'piece' : 'pack',
    needed: pieces,
    onHand: Math.min(item.onHand, pieces),
    buy,
    detail: { kind: 'packs', pieces, pack: item.pack },
    amount: item.price && priceOf(buy, item.price),
  };
}

const notListed = (use: 'hinge' | 'pull', count: number): Diagnostic =>
  problem('hardware-not-listed', { kind: 'sheet', sheet: 'Hardware' }, { use, count });
