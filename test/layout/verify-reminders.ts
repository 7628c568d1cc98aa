import type { DoorSet } from '../../src/calculate/door-set.ts';
import type { Job } from '../../src/import/job.ts';
import type { Operation, Setup } from '../../src/layout/shop-plan.ts';
import type { WoodAndWork } from '../../src/layout/wood-and-work.ts';
import { length } from '../support/length.ts';

/**
 * Says which cautions are missing, and which are there for nothing. Written as a list of what can happen at a machine,
 * with its limits in inches (common practice; 23 kg is the load constant of the NIOSH lifting equation), and without a
 * line of the planner.
 */
export function verifyReminders(plan: WoodAndWork, job: Job, doorSet: DoorSet): readonly string[] {
  return plan.operations.flatMap(operation => [
    ...operation.setups.flatMap(setup => {
      const said = setup.reminders.map(({ id, pieces }) => `${id}: ${[...pieces].sort().join(' ')}`).sort();
      const due = dueAt(operation, setup, job, doorSet).sort();
      return difference(`${operation.id} ${setup.code}`, said, due);
    }),
    ...difference(operation.id, operation.reminders.map(({ id }) => id).sort(), generalAt(operation, plan, job).sort()),
  ]);
}

const difference = (where: string, said: readonly string[], due: readonly string[]): readonly string[] => [
  ...due.filter(each => !said.includes(each)).map(each => `${where} does not say ${each}`),
  ...said.filter(each => !due.includes(each)).map(each => `${where} says ${each} for nothing`),
];

function dueAt({ id, station }: Operation, setup: Setup, job: Job, doorSet: DoorSet): string[] {
  const { saw, router } = job.shop;
  const doors = new Map<string, DoorSet['doors'][number]>(doorSet.doors.map(door => [door.code, door]));
  const due: string[] = [];
  const names = (what: string, which: (piece: Setup['pieces'][number]) => boolean) => {
    const codes = setup.pieces.filter(which).map(piece => piece.code as string);
    if (codes.length > 0) due.push(`${what}: ${codes.sort().join(' ')}`);
  };
  // The hand's way between fence and blade.
  const ripped = ['rip-rough', 'rip-width', 'rip-panel', 'cut-stops'].includes(id);
  const gap = Math.min(...setup.settings.filter(each => each.from === 'blade-to-fence').map(each => each.value));
  if (ripped && gap < length('3')) names('push-block-narrow', () => true);
  else if (ripped && gap < length('6')) names('push-block', () => true);
  if (id === 'cut-stops') names('narrow-offcut', () => true);
  // What is pushed along a table and hangs over its end.
  const fed = [
    'rip-rough',
    'rip-width',
    'rip-panel',
    'plane-thickness',
    'flatten-panel',
    'joint-edge',
    'groove',
    'rabbet-panel',
  ];
  if (fed.includes(id)) names('outfeed', piece => piece.length > saw.tableLength);
  // Fingers near a cutter that a short piece does not keep away.
  const cutters = [
    'plane-thickness',
    'joint-edge',
    'groove',
    'cope',
    ...(station === 'router' ? ['rabbet-panel'] : []),
  ];
  if (cutters.includes(id)) names('short-piece', piece => piece.length < router.shortPiece);
  if (id === 'cope') names('sled-too-narrow', piece => piece.width > router.sledWidth);
  if (station === 'router' && id !== 'ease-edges') due.push('rim-speed: ');
  if (id === 'glue-up' || id === 'dry-fit') {
    names('do-not-glue-panel', ({ code }) =>
      doorSet.parts.some(part => part.door === code && part.make.kind === 'solid-panel'),
    );
  }
  names('two-people', ({ code }) => (doors.get(code)?.mass ?? 0) > 23);
  return due;
}

const MACHINES: { readonly [station: string]: readonly string[] } = {
  saw: ['general-saw', 'ears', 'dust'],
  jointer: ['general-jointer', 'ears', 'dust'],
  planer: ['general-planer', 'ears', 'dust'],
  router: ['general-router', 'ears', 'dust'],
  sander: ['general-sander', 'ears', 'dust'],
  drill: ['general-drill'],
  spray: ['general-spray', 'ventilation'],
};

function generalAt({ id, station }: Operation, plan: WoodAndWork, job: Job): string[] {
  const kind = id === 'crosscut-rough' ? 'board' : id === 'break-sheet' ? 'sheet' : '';
  const heavy = plan.cutPlans.filter(each => each.kind === kind && each.bins.some(bin => bin.mass > 23));
  const cases: readonly (readonly [string, boolean])[] = [
    ['stop-block', ['crosscut-rough', 'cut-length', 'cut-panel', 'cut-stops', 'cut-horns'].includes(id)],
    ['coping-sled', id === 'cope'],
    ['backer-block', id === 'cope' && job.shop.router.order === 'groove-first'],
    ['sacrificial-fence', id === 'rabbet-panel' && station === 'saw'],
    ['test-board', id === 'finish'],
    ['rags', id === 'finish' && job.finish.some(step => step.kind === 'stain')],
    ['glass-edges', id === 'fit-glass'],
  ];
  return [
    ...(MACHINES[station] ?? []),
    ...cases.filter(([, applies]) => applies).map(([name]) => name),
    ...heavy.map(() => 'two-people'),
  ];
}
