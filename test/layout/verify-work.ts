import type { Door, DoorSet, Part } from '../../src/calculate/door-set.ts';
import type { Job } from '../../src/import/job.ts';
import type { Blank, Operation, Setup, SetupPiece } from '../../src/layout/shop-plan.ts';
import type { WoodAndWork } from '../../src/layout/wood-and-work.ts';

/**
 * Says what is wrong with the work of a plan. Written from the helper's point of view and without a line of the
 * planner: it picks up each part and each door and carries it from machine to machine.
 */
export function verifyWork(plan: WoodAndWork, job: Job, doorSet: DoorSet): readonly string[] {
  const doors = new Map<string, Door>(doorSet.doors.map(door => [door.code, door]));
  const shop: Shop = { plan, job, doors, parts: new Map(doorSet.parts.map(part => [part.code, part])) };
  const codes = [...doorSet.parts, ...doorSet.doors, ...plan.blanks].map(({ code }) => code as string);
  return [
    ...[...new Set(codes)].flatMap(code => carried(code, shop)),
    ...plan.operations.flatMap(operation => [
      ...uninvited(operation, shop),
      ...madeOnce(operation),
      ...longestFirst(operation),
      ...operation.setups.flatMap(setup => setFor(operation, setup, shop)),
    ]),
    ...blanks(shop),
    ...clamped(shop),
  ];
}

type Shop = {
  readonly plan: WoodAndWork;
  readonly job: Job;
  readonly doors: ReadonlyMap<string, Door>;
  readonly parts: ReadonlyMap<string, Part>;
};

/**
 * Each operation of its route has it once, in order; boring has it once for each hinge. Before it is cut from a blank
 * of another code, or glued up from strips, it is those that are carried.
 */
function carried(code: string, { plan, doors }: Shop): readonly string[] {
  const route = plan.routes[code];
  if (route === undefined) return [`${code} has no route`];
  const order = route.map(id => plan.operations.findIndex(operation => operation.id === id));
  const wrong = order.some((at, step) => at < 0 || at <= (order[step - 1] ?? -1)) ? [`${code} is carried back`] : [];
  const wood = plan.blanks.filter(blank => blank.code !== code && blank.parts.some(part => part === code));
  const runs = route.flatMap(id => {
    const pieces = plan.operations.find(operation => operation.id === id)?.setups.flatMap(setup => setup.pieces) ?? [];
    const lies = wood.length > 0 && wood.every(blank => plan.routes[blank.code]?.includes(id));
    const hinges = id === 'bore-hinges' ? (doors.get(code)?.hinges.length ?? 0) : undefined;
    return (lies ? wood.map(blank => blank.code as string) : [code]).flatMap(name => {
      const found = pieces.filter(piece => piece.code === name);
      const right = hinges === undefined ? found.length === 1 : found.flatMap(piece => piece.runs).length === hinges;
      return right ? [] : [`${name} is at ${id} ${found.length} times`];
    });
  });
  return [...wrong, ...runs];
}

/** Nothing lies on a machine that has no business there. */
const uninvited = ({ id, setups }: Operation, { plan }: Shop): readonly string[] =>
  setups
    .flatMap(setup => setup.pieces)
    .filter(({ code }) => !plan.routes[code]?.includes(id))
    .map(({ code }) => `${code} has no business at ${id}`);

function madeOnce({ id, setups }: Operation): readonly string[] {
  const seen = new Set<string>();
  const codes = new Set(setups.map(setup => setup.code));
  const twice = setups.flatMap(({ settings, group }) => {
    const key = JSON.stringify([settings, group]);
    const again = seen.has(key) ? [`${id} is set twice to ${key}`] : [];
    seen.add(key);
    return again;
  });
  return codes.size === setups.length ? twice : [...twice, `${id} has one code for two set-ups`];
}

const BY_CABINET = ['inspect', 'dry-fit', 'cure', 'flush-sand', 'hang-and-fit', 'take-down', 'finish', 'cure-finish'];
const BY_PLACE: readonly string[] = [...BY_CABINET, 'fit-glass', 'hang'];
const BY_GROUP: readonly string[] = ['glue-up', 'break-sheet', ...BY_PLACE];
const BY_STOP: readonly string[] = [
  'rip-rough',
  'rip-width',
  'rip-panel',
  'cut-length',
  'cut-panel',
  'cut-stops',
  'bore-hinges',
  'drill-pulls',
];

function longestFirst({ id, setups }: Operation): readonly string[] {
  const falls = (sizes: readonly number[]) => sizes.every((size, at) => size <= (sizes[at - 1] ?? size));
  const pieces = setups.filter(setup => !falls(setup.pieces.map(piece => piece.length)));
  const first = setups.map(setup => (BY_STOP.includes(id) ? setup.settings[0]?.value : setup.pieces[0]?.length) ?? 0);
  return [
    ...(BY_PLACE.includes(id)
      ? []
      : pieces.map(setup => `${setup.code} of ${id} does not run its longest piece first`)),
    ...(BY_GROUP.includes(id) || BY_THICKNESS.includes(id) || falls(first) ? [] : [`${id} is not set longest first`]),
  ];
}

const BY_THICKNESS: readonly string[] = ['plane-thickness', 'flatten-panel', 'ease-edges'];

/** What the machine is set to is what each of its pieces wants. */
function setFor({ id }: Operation, { settings, pieces }: Setup, shop: Shop): readonly string[] {
  const value = (name: string) => settings.find(setting => setting.of === name)?.value;
  return pieces.flatMap(piece =>
    wanted(id, piece, shop)
      .filter(([name, size]) => value(name) !== size)
      .map(([name, size]) => `${piece.code} wants ${name} ${size} and ${id} is set to ${value(name)}`),
  );
}

function wanted(
  id: string,
  piece: SetupPiece,
  { plan, job, parts, doors }: Shop,
): readonly (readonly [string, number])[] {
  const blank = plan.blanks.find(each => each.code === piece.code);
  if (id === 'crosscut-rough') return [['rough-length', blank?.length ?? 0]];
  if (id === 'rip-rough') return [['rough-width', blank?.width ?? 0]];
  const part = parts.get(piece.code);
  const door = doors.get(part?.door ?? piece.code);
  switch (id) {
    case 'rip-width':
    case 'rip-panel':
      return [['final-width', part?.width.value ?? (blank?.width ?? 0) - job.shop.rough.widthAllowance]];
    case 'cut-length':
    case 'cut-panel':
      return [['final-length', part?.length.value ?? 0]];
    case 'groove':
      return door?.joint === undefined
        ? []
        : [
            ['groove-height', door.joint.faceToGroove],
            ['groove-depth', door.joint.grooveDepth],
          ];
    case 'cope':
      return [
        ['tongue-height', door?.joint?.faceToGroove ?? 0],
        ['tongue-length', door?.joint?.tongueLength ?? 0],
      ];
    case 'rabbet-panel':
      return part !== undefined && 'rabbet' in part.make ? [['rabbet-depth', part.make.rabbet?.depth ?? 0]] : [];
    case 'ease-edges':
      return [['easing-radius', door?.edgeEasing ?? 0]];
    default:
      return [];
  }
}

/** Every part that is cut from something has its wood, enough of it, and all wood has a purpose. */
function blanks({ plan, parts, job }: Shop): readonly string[] {
  const forNothing = plan.blanks
    .filter(({ purpose, parts: codes }) => {
      const known = codes.length > 0 && codes.every(code => parts.has(code));
      return purpose === 'test' || purpose === 'spare' ? codes.length > 0 : !known;
    })
    .map(blank => `${blank.code} is for nothing`);
  const twice = plan.blanks.length - new Set(plan.blanks.map(blank => blank.code)).size;
  const without = [...parts.values()].flatMap(part => {
    if (part.stock === undefined) return [];
    const own = plan.blanks.filter(blank => blank.parts.includes(part.code));
    const strips = part.make.kind === 'solid-panel' ? part.make.glueUp.strips : 1;
    return own.length === strips ? [] : [`${part.code} has ${own.length} blanks`];
  });
  return [
    ...forNothing,
    ...without,
    ...plan.blanks.flatMap(blank => tooSmall(blank, parts, job)),
    ...(twice === 0 ? [] : ['two blanks have one code']),
  ];
}

/** End to end (stops side by side), a blade between each two, there is room for all that is to come from it. */
function tooSmall(blank: Blank, parts: Shop['parts'], job: Job): readonly string[] {
  if (blank.purpose === 'strip') return [];
  const kinds = blank.parts.flatMap(code => parts.get(code) ?? []);
  const isSheet = job.stock.find(stock => stock.name === blank.stock)?.kind === 'sheet';
  const kerfs = job.shop.saw.kerf * Math.max(0, kinds.length - 1);
  const sum = (sizes: readonly number[]) => sizes.reduce((total, size) => total + size, 0) + kerfs;
  const most = (sizes: readonly number[]) => Math.max(0, ...sizes);
  const [lengths, widths] = [kinds.map(part => part.length.value), kinds.map(part => part.width.value)];
  const sides = blank.purpose === 'stops';
  const needs = { length: sides ? most(lengths) : sum(lengths), width: sides ? sum(widths) : most(widths) };
  const fits = isSheet
    ? blank.purpose === 'test' || (blank.length === needs.length && blank.width === needs.width)
    : blank.length > needs.length && blank.width > needs.width;
  // Jointer and planer hold nothing that is shorter.
  const held = isSheet || blank.length >= job.shop.router.shortPiece;
  return [...(fits ? [] : [`${blank.code} is too small`]), ...(held ? [] : [`${blank.code} is too short to machine`])];
}

/** Each frame is glued up once, and no batch takes more clamps than there are, unless one door alone does. */
function clamped({ plan, doors, job }: Shop): readonly string[] {
  const glued = plan.batches.flatMap(batch => batch.doors);
  const frames = [...doors.values()].filter(door => door.build === 'frame').map(door => door.code);
  const needs = (code: string) => {
    const door = doors.get(code);
    const rails = new Set(door?.sights.map(sight => sight.row)).size || 1;
    return rails + 1 + ((door?.height.value ?? 0) > job.shop.gluing.tallFrom ? 2 : 0);
  };
  return [
    ...(JSON.stringify([...glued].sort()) === JSON.stringify([...frames].sort())
      ? []
      : ['not each frame is glued once']),
    ...plan.batches.flatMap(({ number, doors: held, clamps }) => {
      const taken = held.reduce((sum, code) => sum + needs(code), 0);
      const over = taken > job.shop.gluing.clamps && held.length > 1;
      return taken === clamps && !over ? [] : [`batch ${number} takes ${taken} clamps and says ${clamps}`];
    }),
  ];
}
