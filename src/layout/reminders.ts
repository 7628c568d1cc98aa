import type { Door } from '../calculate/door-set.ts';
import { LIFT_MAX_KG, PUSH_BLOCK_FROM, PUSH_BLOCK_NARROW_FROM } from '../trade/machining.ts';
import type { Shop } from '../trade/shop.ts';
import type { Length } from '../units/length.ts';
import type { CutPlan, OperationId, Reminder, ReminderId, Setup, SetupPiece, Station } from './shop-plan.ts';
import type { Work } from './work.ts';

/** Those of the machine, whatever lies on it: they stand once at the head of the sheet and name no piece. */
export function operationReminders(
  id: OperationId,
  station: Station,
  work: Work,
  cutPlans: readonly CutPlan[],
): readonly Reminder[] {
  return [
    ...GENERAL[station].map(plain),
    ...(STOPPED.has(id) ? [plain('stop-block')] : []),
    ...(id === 'cope' ? [plain('coping-sled')] : []),
    ...(id === 'cope' && work.shop.router.order === 'groove-first' ? [plain('backer-block')] : []),
    ...(id === 'rabbet-panel' && station === 'saw' ? [plain('sacrificial-fence')] : []),
    ...(id === 'finish' ? finishReminders(work) : []),
    ...(id === 'fit-glass' ? [plain('glass-edges')] : []),
    ...heavyStock(id, cutPlans),
  ];
}

const plain = (id: ReminderId): Reminder => ({ id, pieces: [], facts: {} });

/** Rags are a fire only where something is wiped. */
const finishReminders = ({ job }: Work): readonly Reminder[] => [
  plain('test-board'),
  ...(job.finish.some(step => step.kind === 'stain') ? [plain('rags')] : []),
];

/** Boards meet the saw at the crosscut, sheets when they are broken down. */
function heavyStock(id: OperationId, cutPlans: readonly CutPlan[]): readonly Reminder[] {
  const kind = id === 'crosscut-rough' ? 'board' : id === 'break-sheet' ? 'sheet' : undefined;
  return cutPlans
    .filter(plan => plan.kind === kind)
    .flatMap(plan => {
      const masses = plan.bins.map(bin => bin.mass as number).filter(mass => mass > LIFT_MAX_KG);
      if (masses.length === 0) return [];
      const kg = Math.ceil(Math.max(...masses));
      return [{ id: 'two-people' as const, pieces: [], facts: { stock: plan.stock, count: masses.length, kg } }];
    });
}

/** Those that pieces of this very set-up call for: each names its pieces. */
export function setupReminders(
  id: OperationId,
  station: Station,
  draft: Drafted,
  { shop, doors }: Work,
): readonly Reminder[] {
  return [
    ...pushBlock(id, draft),
    ...(FED.has(id) ? naming('outfeed', over(draft, shop.saw.tableLength), { over: shop.saw.tableLength }) : []),
    ...(isShortRisk(id, station)
      ? naming('short-piece', under(draft, shop.router.shortPiece), { under: shop.router.shortPiece })
      : []),
    ...(id === 'cope'
      ? naming('sled-too-narrow', wider(draft, shop.router.sledWidth), { over: shop.router.sledWidth })
      : []),
    ...rimSpeed(id, station, shop),
    ...(id === 'cut-stops' ? naming('narrow-offcut', draft.pieces, {}) : []),
    ...(LOOSE.has(id)
      ? naming(
          'do-not-glue-panel',
          draft.pieces.filter(piece => hasSolidPanel(piece, doors)),
          {},
        )
      : []),
    ...heavyDoors(draft, doors),
  ];
}

type Drafted = Pick<Setup, 'settings' | 'pieces'>;

const naming = (id: ReminderId, pieces: readonly SetupPiece[], facts: Reminder['facts']): readonly Reminder[] =>
  pieces.length === 0 ? [] : [{ id, pieces: pieces.map(piece => piece.code), facts }];

/** A hand beside the blade needs six inches; below that a block goes between fence and blade instead of it. */
function pushBlock(id: OperationId, draft: Drafted): readonly Reminder[] {
  if (!RIPPED.has(id)) return [];
  const fences = draft.settings.filter(setting => setting.sets === 'fence').map(setting => setting.value);
  const [narrowest] = fences.sort((a, b) => a - b);
  if (narrowest === undefined || narrowest >= PUSH_BLOCK_FROM) return [];
  const which = narrowest < PUSH_BLOCK_NARROW_FROM ? 'push-block-narrow' : 'push-block';
  return naming(which, draft.pieces, { fence: narrowest });
}

const over = ({ pieces }: Drafted, limit: Length): readonly SetupPiece[] =>
  pieces.filter(piece => piece.length > limit);
const under = ({ pieces }: Drafted, limit: Length): readonly SetupPiece[] =>
  pieces.filter(piece => piece.length < limit);
const wider = ({ pieces }: Drafted, limit: Length): readonly SetupPiece[] =>
  pieces.filter(piece => piece.width > limit);

const isShortRisk = (id: OperationId, station: Station): boolean =>
  SHORT_RISK.has(id) || (id === 'rabbet-panel' && station === 'router');

/**
 * Rim speed is π · diameter · turns. The reminder says what it is at the shop's speed, and the most turns that keep it
 * under the shop's limit; the bit's own mark comes first.
 */
function rimSpeed(id: OperationId, station: Station, shop: Shop): readonly Reminder[] {
  const diameter = bitDiameter(id, station, shop);
  if (diameter === undefined) return [];
  const rim = Math.round(rimSpeedOf(diameter, shop.router.speed) * 10) / 10;
  const most = mostTurns(diameter, shop);
  return [{ id: 'rim-speed', pieces: [], facts: { bit: diameter, speed: shop.router.speed, rim, most } }];
}

/** Metres a second, from turns a minute. */
export const rimSpeedOf = (diameter: Length, turns: number): number => (Math.PI * diameter * turns) / 60e9;

/** Turns a minute at which the rim reaches the shop's limit, down to a whole hundred. */
export const mostTurns = (diameter: Length, shop: Shop): number =>
  Math.floor((shop.router.rimSpeedMax * 60e9) / (Math.PI * diameter) / 100) * 100;

/** The bit of an operation at the router; none where the bit is small or there is no bit. */
function bitDiameter(id: OperationId, station: Station, { router }: Shop): Length | undefined {
  if (station !== 'router') return undefined;
  switch (id) {
    case 'groove':
      return router.stickingBitDiameter;
    case 'cope':
      return router.copingBitDiameter;
    case 'rabbet-panel':
    case 'rabbet-glass':
      return router.rabbetBitDiameter;
    default:
      return undefined;
  }
}

const hasSolidPanel = (piece: SetupPiece, doors: ReadonlyMap<string, Door>): boolean =>
  doors.get(piece.code)?.joint?.infillKind === 'solid';

function heavyDoors({ pieces }: Drafted, doors: ReadonlyMap<string, Door>): readonly Reminder[] {
  const heavy = pieces.filter(piece => (doors.get(piece.code)?.mass ?? 0) > LIFT_MAX_KG);
  const kg = Math.ceil(Math.max(0, ...heavy.map(piece => doors.get(piece.code)?.mass ?? 0)));
  return naming('two-people', heavy, { kg });
}

const SAWDUST: readonly ReminderId[] = ['ears', 'dust'];

const GENERAL: { readonly [S in Station]: readonly ReminderId[] } = {
  saw: ['general-saw', ...SAWDUST],
  rack: [],
  jointer: ['general-jointer', ...SAWDUST],
  planer: ['general-planer', ...SAWDUST],
  bench: [],
  router: ['general-router', ...SAWDUST],
  clamps: [],
  sander: ['general-sander', ...SAWDUST],
  drill: ['general-drill'],
  spray: ['general-spray', 'ventilation'],
  site: [],
};

/** Cut to a stop. */
const STOPPED: ReadonlySet<OperationId> = new Set([
  'crosscut-rough',
  'cut-length',
  'cut-panel',
  'cut-stops',
  'cut-horns',
]);
/** Cut along the rip fence. */
const RIPPED: ReadonlySet<OperationId> = new Set(['rip-rough', 'rip-width', 'rip-panel', 'cut-stops']);
/** Pushed past the cutter lengthwise: a long end needs support before it leaves the table. */
const FED: ReadonlySet<OperationId> = new Set([
  'rip-rough',
  'plane-thickness',
  'joint-edge',
  'rip-width',
  'groove',
  'flatten-panel',
  'rip-panel',
  'rabbet-panel',
]);
const SHORT_RISK: ReadonlySet<OperationId> = new Set(['plane-thickness', 'joint-edge', 'groove', 'cope']);
const LOOSE: ReadonlySet<OperationId> = new Set(['dry-fit', 'glue-up']);
