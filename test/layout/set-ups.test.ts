import { describe, expect, it } from 'vitest';
import type { Job } from '../../src/import/job.ts';
import type { OperationId } from '../../src/layout/shop-plan.ts';
import { loadSolver } from '../../src/layout/solver.ts';
import { planWoodAndWork, type WoodAndWork } from '../../src/layout/wood-and-work.ts';
import type { Shop } from '../../src/trade/shop.ts';
import { aFrameStyle, aJob, aShop } from '../support/a-job.ts';
import { length } from '../support/length.ts';
import { aPull, doorSetOf, glassDoor, gridDoor, plainDoor, type Sizes, slabDoor, solidDoor } from './a-door-set.ts';
import { aFinishStep } from './finishing/a-finish-step.ts';
import { operationOf, print, printSetup, setupsOf } from './print-plan.ts';

const solver = await loadSolver();

const SHOP = aShop();
const ALL_STRIPS =
  'B1.1-STILE-LEFT0 · B1.1-STILE-RIGHT1 · SPARE-STILE-1 · TEST-C1.1 · TEST-C1.2 · TEST-G1.1 · TEST-G1.2 · ' +
  'B1.1-RAIL-BOTTOM3 · B1.1-RAIL-TOP2 · SPARE-RAIL-1';
// 21.5 mm is a little over 27/32 in; 12.5 mm over 31/64; 35 mm over 1 3/8; 5 mm over 3/16.
const BORING =
  'from bit-centre-to-stop, hinge-from-edge 27/32+ from bit-centre-to-fence, ' +
  'cup-depth 31/64+ from work-face, cup-diameter 1 3/8+ from cutter';
const HOLE = 'hole-diameter 13/64− from cutter';

// All numbers are worked by hand from the cutting lists in a-door-set.ts; allowances are the shop's defaults.
type Table = readonly (readonly [OperationId, ...string[]])[];

describe('one plain door, 15 3/8 × 31', () => {
  expectSetups(
    () => planOf([plainDoor()]),
    [
      [
        'crosscut-rough',
        // Stiles 31 + 1, and a spare like them; test pieces 16 + 1; rails 12 1/8 + 1.
        'rough-length 32 from blade-to-stop: B1.1-STILE-LEFT0 · B1.1-STILE-RIGHT1 · SPARE-STILE-1',
        'rough-length 17 from blade-to-stop: TEST-C1.1 · TEST-C1.2 · TEST-G1.1 · TEST-G1.2',
        'rough-length 13 1/8 from blade-to-stop: B1.1-RAIL-BOTTOM3 · B1.1-RAIL-TOP2 · SPARE-RAIL-1',
      ],
      [
        'rip-rough',
        // Stiles, rails, test pieces and spares are all 2 in wide, and 2 + 1/4 rough.
        `rough-width 2 1/4 from blade-to-fence: ${ALL_STRIPS}`,
      ],
      // 1 in boards, 3/4 in frame.
      ['plane-thickness', `planed-thickness 3/4 from table: ${ALL_STRIPS}`],
      ['rip-width', `final-width 2 from blade-to-fence: ${ALL_STRIPS}`],
      [
        'cut-length',
        // No spare and no test piece: they are cut when it is known what they become.
        'final-length 31 from blade-to-stop: B1.1-STILE-LEFT0 · B1.1-STILE-RIGHT1',
        'final-length 12 1/8 from blade-to-stop: B1.1-RAIL-BOTTOM3 · B1.1-RAIL-TOP2',
      ],
      [
        'groove',
        'groove-height 1/4 from table, groove-depth 3/8 from fence-face, groove-width 1/4 from cutter: ' +
          'SPARE-STILE-1 (inside-edge) · B1.1-STILE-LEFT0 (inside-edge) · B1.1-STILE-RIGHT1 (inside-edge) · ' +
          'SPARE-RAIL-1 (inside-edge) · B1.1-RAIL-BOTTOM3 (inside-edge) · B1.1-RAIL-TOP2 (inside-edge)',
      ],
      [
        'cope',
        'tongue-height 1/4 from sled-base, tongue-length 3/8 from fence-face, tongue-thickness 1/4 from cutter: ' +
          'B1.1-RAIL-BOTTOM3 (left-end, right-end) · B1.1-RAIL-TOP2 (left-end, right-end)',
      ],
      // The offcut for the rabbet comes off the sheet but no fence is set for it.
      ['break-sheet', 'sheet SH1, nothing set: B1.1-PANEL4 · TEST-R1.1'],
      ['rip-panel', 'final-width 12 1/16 from blade-to-fence: B1.1-PANEL4'],
      ['cut-panel', 'final-length 27 11/16 from blade-to-stop: B1.1-PANEL4'],
      // 0.224 in deep (7/32 is 0.21875), 3/8 wide.
      ['rabbet-panel', 'rabbet-depth 7/32+ from table, rabbet-width 3/8 from fence-face: B1.1-PANEL4 (four-edges)'],
      ['ease-edges', 'easing-radius 1/8 from cutter: B1.1 (around)'],
    ],
  );

  it('tries each bit on its own test pieces', () => {
    const plan = planOf([plainDoor()]);
    expect(setupsOf(plan, 'groove').map(setup => setup.testPieces)).toEqual([['TEST-G1.1', 'TEST-G1.2']]);
    expect(setupsOf(plan, 'cope').map(setup => setup.testPieces)).toEqual([['TEST-C1.1', 'TEST-C1.2']]);
    expect(setupsOf(plan, 'rabbet-panel').map(setup => setup.testPieces)).toEqual([['TEST-R1.1']]);
    expect(setupsOf(plan, 'cut-length').flatMap(setup => setup.testPieces)).toEqual([]);
  });

  it.each<[OperationId, string, string]>([
    // The tag is on the back: at both bits it is up.
    ['groove', 'show-down', 'inside'],
    ['cope', 'show-down', 'either'],
    // What the dado stack takes away is next to the table, and that is the back.
    ['rabbet-panel', 'show-up', 'each'],
    // Teeth leave a sheet at its underside, so the show face is up.
    ['cut-panel', 'show-up', 'sawn'],
    ['rip-width', 'either', 'jointed'],
    ['bore-hinges', 'show-down', 'hinge'],
  ])('%s: %s, %s edge to the fence', (id, face, edge) => {
    expect(setupsOf(planOf([plainDoor()]), id)[0]?.orientation).toEqual({ face, edge });
  });

  it.each<[OperationId, string, string, string]>([
    ['rip-width', 'final-width', '2', '1/64'],
    ['cut-length', 'final-length', '31', '1/64'],
    ['groove', 'groove-height', '1/4', '1/64'],
    ['cope', 'tongue-length', '3/8', '1/64'],
    // 0.25 − 0.004 = 0.246 in, a little under 1/4; and it may be off by its play, 0.004.
    ['rabbet-panel', 'rabbet-tongue', '1/4−', '0+'],
    ['bore-hinges', 'cup-depth', '31/64+', '1/64'],
  ])('%s: one in ten is measured, %s %s ± %s', (id, of, value, tolerance) => {
    const check = setupsOf(planOf([plainDoor()]), id)[0]?.check;
    expect(check && [check.of, print(check.length), check.every, print(check.tolerance)]).toEqual([
      of,
      value,
      10,
      tolerance,
    ]);
  });
});

describe('one setting serves all that can share it', () => {
  it('shares the groove between frames of 3/4 and 13/16 in: both lie on their show faces', () => {
    const plan = planOf([plainDoor(), plainDoor({ code: 'B2.1', joint: { frameThickness: length('13/16') } })]);
    expect(setupsOf(plan, 'groove')).toHaveLength(1);
    expect(setupsOf(plan, 'cope')).toHaveLength(1);
  });

  it('sets the bit again where the groove stands deeper behind the face, and tries it again', () => {
    const plan = planOf([plainDoor(), plainDoor({ code: 'B2.1', joint: { faceToGroove: length('9/32') } })]);
    expect(setupsOf(plan, 'groove').map(setup => print(setup.settings[0]?.value ?? length('0')))).toEqual([
      '9/32',
      '1/4',
    ]);
    expect(setupsOf(plan, 'groove').map(setup => setup.testPieces.length)).toEqual([2, 2]);
    expect(new Set(setupsOf(plan, 'groove').flatMap(setup => setup.testPieces)).size).toBe(4);
  });

  it('leaves the tongue shorter than the groove is deep where the style says so', () => {
    const [setup] = setupsOf(planOf([plainDoor({ joint: { tongueLength: length('11/32') } })]), 'cope');
    expect(setup?.settings.map(({ of, value }) => `${of} ${print(value)}`)).toEqual([
      'tongue-height 1/4',
      'tongue-length 11/32',
      'tongue-thickness 1/4',
    ]);
  });

  it('sets the fence once for stiles of one door and rails of another', () => {
    const plan = planOf([plainDoor(), plainDoor({ code: 'B2.1', height: '20', parts: plainDoor().parts.slice(0, 4) })]);
    expect(setupsOf(plan, 'rip-width')).toHaveLength(1);
  });
});

describe('a door of two by two panels, 23 × 41', () => {
  expectSetups(
    () => planOf([gridDoor()]),
    [
      [
        'groove',
        'groove-height 1/4 from table, groove-depth 3/8 from fence-face, groove-width 1/4 from cutter: ' +
          'SPARE-STILE-1 (inside-edge) · P2.1-STILE-LEFT0 (inside-edge) · P2.1-STILE-RIGHT1 (inside-edge) · ' +
          'SPARE-RAIL-1 (inside-edge) · P2.1-RAIL-BOTTOM4 (inside-edge) · P2.1-RAIL-MIDDLE3 (both-edges) · ' +
          'P2.1-RAIL-TOP2 (inside-edge) · P2.1-STILE-MIDDLE5 (both-edges) · P2.1-STILE-MIDDLE6 (both-edges)',
      ],
      [
        'cope',
        'tongue-height 1/4 from sled-base, tongue-length 3/8 from fence-face, tongue-thickness 1/4 from cutter: ' +
          'P2.1-RAIL-BOTTOM4 (left-end, right-end) · P2.1-RAIL-MIDDLE3 (left-end, right-end) · ' +
          'P2.1-RAIL-TOP2 (left-end, right-end) · P2.1-STILE-MIDDLE5 (top-end, bottom-end) · ' +
          'P2.1-STILE-MIDDLE6 (top-end, bottom-end)',
      ],
      [
        'cut-length',
        'final-length 41 from blade-to-stop: P2.1-STILE-LEFT0 · P2.1-STILE-RIGHT1',
        // 23 − 4 + 3/4.
        'final-length 19 3/4 from blade-to-stop: P2.1-RAIL-BOTTOM4 · P2.1-RAIL-MIDDLE3 · P2.1-RAIL-TOP2',
        // (41 − 6) / 2 + 3/4.
        'final-length 18 1/4 from blade-to-stop: P2.1-STILE-MIDDLE5 · P2.1-STILE-MIDDLE6',
      ],
    ],
  );

  it('says that some pieces are grooved on both edges', () => {
    expect(setupsOf(planOf([gridDoor()]), 'groove')[0]?.notes).toContain('groove-both-edges');
    expect(setupsOf(planOf([plainDoor()]), 'groove')[0]?.notes).not.toContain('groove-both-edges');
  });
});

describe('hinge boring', () => {
  // Each distance is from the nearer end; with the back up and the hinge edge at the fence, the top of a door that
  // hangs on the left points to the left.
  expectSetups(
    () =>
      planOf([
        plainDoor(),
        plainDoor({ code: 'B2.1', hinge: 'right' }),
        // Three hinges: 3 1/2, the middle of 41, and 41 − 3 1/2 = 37 1/2.
        plainDoor({ code: 'B3.1', height: '41', hingesFromTop: ['3 1/2', '20 1/2', '37 1/2'] }),
        // Shifted off a rail joint: 4 1/2 from the bottom.
        plainDoor({ code: 'B4.1', hinge: 'right', hingesFromTop: ['3 1/2', '26 1/2'] }),
      ]),
    [
      [
        'bore-hinges',
        `hinge-from-end 20 1/2 ${BORING}: B3.1 (top-at-left-stop)`,
        `hinge-from-end 4 1/2 ${BORING}: B4.1 (bottom-at-left-stop)`,
        `hinge-from-end 3 1/2 ${BORING}: B3.1 (top-at-left-stop, bottom-at-right-stop) · ` +
          'B1.1 (top-at-left-stop, bottom-at-right-stop) · B2.1 (top-at-right-stop, bottom-at-left-stop) · ' +
          'B4.1 (top-at-right-stop)',
      ],
    ],
  );
});

describe('pulls', () => {
  const pullAt = (code: string, hinge: 'left' | 'right', ...pull: Parameters<typeof aPull>): Sizes =>
    plainDoor({ code, hinge, changes: { pull: aPull(...pull) } });
  expectSetups(
    () =>
      planOf([
        // On 15 3/8: 1 in from the free edge, so 14 3/8 from the left where the hinges are on the left.
        pullAt('W1.1', 'left', 'bottom', ['14 3/8', '2 1/2'], ['14 3/8', '6 1/2']),
        pullAt('W2.1', 'right', 'bottom', ['1', '2 1/2'], ['1', '6 1/2']),
        // On a base door from the top: 31 − 28 1/2 = 2 1/2, the other hole 4 in further down.
        pullAt('B1.1', 'left', 'top', ['14 3/8', '24 1/2'], ['14 3/8', '28 1/2']),
        // A knob has one hole.
        pullAt('B2.1', 'left', 'top', ['14 3/8', '28 1/2']),
      ]),
    [
      [
        'drill-pulls',
        `pull-from-edge 1 from free-edge, pull-from-end 2 1/2 from bottom-end, pull-spacing 4 from first-hole, ${HOLE}: ` +
          'W1.1 (pull-on-right) · W2.1 (pull-on-left)',
        `pull-from-edge 1 from free-edge, pull-from-end 2 1/2 from top-end, pull-spacing 4 from first-hole, ${HOLE}: ` +
          'B1.1 (pull-on-right)',
        `pull-from-edge 1 from free-edge, pull-from-end 2 1/2 from top-end, ${HOLE}: B2.1 (pull-on-right)`,
      ],
    ],
  );

  it('marks drawer fronts of any width at one setting, each from its own left end', () => {
    const front = (code: string, width: string, left: string, right: string): Sizes =>
      slabDoor({ code, width, height: '6', changes: { pull: aPull('middle', [left, '3'], [right, '3']) } });
    const [setup, ...others] = setupsOf(
      planOf([front('D1.1', '16', '6', '10'), front('D2.1', '20', '8', '12')]),
      'drill-pulls',
    );
    expect(others).toEqual([]);
    expect(setup && printSetup(setup)).toBe(
      `pull-from-end 3 from bottom-end, pull-spacing 4 from first-hole, ${HOLE}: D2.1 (pull-in-middle) · D1.1 (pull-in-middle)`,
    );
    expect(setup?.pieces.map(piece => piece.figures.map(figure => print(figure.length)))).toEqual([['8'], ['6']]);
  });
});

describe('the rabbet follows the caliper', () => {
  it('is set for the measured thickness: whatever the panel is thicker, the rabbet is deeper', () => {
    const adjustment = setupsOf(planOf([plainDoor()]), 'rabbet-panel')[0]?.adjustment;
    const decimal = (value: number) => (value / 25_400_000).toFixed(3);
    expect(adjustment?.rows.map(row => `${decimal(row.measured)} → ${decimal(row.set)}`)).toEqual([
      // Tongue 0.246: 0.450 − 0.246 = 0.204, and so on.
      '0.450 → 0.204',
      '0.460 → 0.214',
      '0.470 → 0.224',
      '0.480 → 0.234',
      '0.490 → 0.244',
    ]);
  });

  it('is cut at the router table where the shop does', () => {
    const plan = planOf([plainDoor()], { router: { ...SHOP.router, rabbetBy: 'router' } });
    expect([
      operationOf(plan, 'rabbet-panel')?.station,
      operationOf(planOf([plainDoor()]), 'rabbet-panel')?.station,
    ]).toEqual(['router', 'saw']);
  });
});

describe('a solid panel', () => {
  const plan = () => planOf([solidDoor()]);
  expectSetups(plan, [
    // Four strips of 3 1/2 go through the rough saw; planed to 1/2 + 1/32, which the flattening takes.
    [
      'plane-thickness',
      'planed-thickness 3/4 from table: SPARE-STILE-1 · W3.1-STILE-LEFT0 · W3.1-STILE-RIGHT1 · TEST-C1.1 · ' +
        'TEST-C1.2 · TEST-G1.1 · TEST-G1.2 · SPARE-RAIL-1 · W3.1-RAIL-BOTTOM3 · W3.1-RAIL-TOP2',
      'planed-thickness 17/32 from table: W3.1-PANEL4.1 · W3.1-PANEL4.2 · W3.1-PANEL4.3 · W3.1-PANEL4.4 · TEST-R1.1',
    ],
    ['glue-panel', 'nothing set: W3.1-PANEL4'],
    ['flatten-panel', 'planed-thickness 1/2 from table: W3.1-PANEL4 · TEST-R1.1'],
    ['rip-panel', 'final-width 12 from blade-to-fence: W3.1-PANEL4'],
    ['cut-panel', 'final-length 27 11/16 from blade-to-stop: W3.1-PANEL4'],
    ['rabbet-panel', 'rabbet-depth 1/4+ from table, rabbet-width 3/8 from fence-face: W3.1-PANEL4 (four-edges)'],
  ]);

  it('begins as strips, which are jointed on both edges', () => {
    expect(plan().routes['W3.1-PANEL4.2']?.join(' ')).toBe('crosscut-rough rip-rough rest plane-thickness joint-edge');
    expect(
      setupsOf(plan(), 'joint-edge')
        .flatMap(setup => setup.pieces)
        .find(piece => piece.code === 'W3.1-PANEL4.2')?.runs,
    ).toEqual(['both-edges']);
  });

  it('goes glue-up, cure, flatten, size, rabbet, sand', () => {
    expect(plan().routes['W3.1-PANEL4']?.join(' ')).toBe(
      'crosscut-rough rip-rough rest plane-thickness joint-edge glue-panel cure-panel flatten-panel rip-panel cut-panel rabbet-panel sand-panel',
    );
  });

  it('comes to the saw as the glued-up blank, with its strips counted', () => {
    const [piece] = setupsOf(plan(), 'glue-panel')[0]?.pieces ?? [];
    expect(piece && [print(piece.length), print(piece.width), piece.figures]).toEqual([
      '28 3/16',
      '12 1/2',
      [{ of: 'strip', length: length('3 1/2'), count: 4 }],
    ]);
  });
});

describe('a glass frame', () => {
  const plan = () => planWoodAndWork(aJob({ finish: [aFinishStep()] }), doorSetOf(glassDoor()), solver).value;
  expectSetups(plan, [
    // 3/4 − 1/4 behind the groove's front wall; as wide as the groove is deep.
    ['rabbet-glass', 'glass-rabbet-depth 1/2 from table, glass-rabbet-width 3/8 from cutter: W2.1 (around)'],
    ['fit-glass', 'nothing set: W2.1 · W2.1-GLASS4'],
  ]);

  it('is rabbeted after the glue is dry, and glazed after the finish', () => {
    expect(plan().routes['W2.1']?.join(' ')).toBe(
      'dry-fit glue-up cure rabbet-glass flush-sand bore-hinges hang-and-fit take-down ease-edges finish cure-finish fit-glass hang',
    );
  });
});

describe('horns', () => {
  it('are cut off to the height of the door after glue-up, from stiles that are longer by two of them', () => {
    const plan = planWoodAndWork(
      aJob({ styles: [aFrameStyle({ horn: length('1/2') })] }),
      doorSetOf(
        plainDoor({ parts: [['stile-left', '32', '2', { kind: 'stile', groovedEdges: 1, horn: length('1/2') }]] }),
      ),
      solver,
    ).value;
    const [setup] = setupsOf(plan, 'cut-horns');
    expect(setup && printSetup(setup)).toBe('door-height 31 from blade-to-stop: B1.1');
    expect(setup?.pieces.map(piece => print(piece.length))).toEqual(['32']);
    expect(plan.routes['B1.1']).toContain('cut-horns');
  });
});

describe('routes', () => {
  it.each<[string, string, Sizes, string]>([
    [
      'a stile has no cope',
      'B1.1-STILE-LEFT0',
      plainDoor(),
      'crosscut-rough rip-rough rest plane-thickness joint-edge rip-width cut-length inspect groove',
    ],
    [
      'a rail is grooved, then coped',
      'B1.1-RAIL-TOP2',
      plainDoor(),
      'crosscut-rough rip-rough rest plane-thickness joint-edge rip-width cut-length inspect groove cope',
    ],
    [
      'a sheet panel is of final size off the saw',
      'B1.1-PANEL4',
      plainDoor(),
      'break-sheet rip-panel cut-panel rabbet-panel sand-panel',
    ],
    ['a slab has no frame operations', 'D1.1', slabDoor(), 'flush-sand ease-edges hang'],
    ['and its sheet no more than the saw', 'D1.1-SLAB0', slabDoor(), 'break-sheet rip-panel cut-panel'],
    [
      'a door without hinges is not bored, and not hung for a fit',
      'B1.1',
      plainDoor({ hingesFromTop: [] }),
      'dry-fit glue-up cure flush-sand ease-edges hang',
    ],
    [
      'edges that stay sharp are not eased',
      'D1.1',
      slabDoor({ changes: { edgeEasing: length('0') } }),
      'flush-sand hang',
    ],
  ])('%s', (_reason, code, door, route) => {
    expect(planOf([door]).routes[code]?.join(' ')).toBe(route);
  });

  it('copes first where the shop does, and then needs no shaped backer', () => {
    const plan = planOf([plainDoor()], { router: { ...SHOP.router, order: 'cope-first' } });
    expect(plan.routes['B1.1-RAIL-TOP2']?.slice(-2)).toEqual(['cope', 'groove']);
    const ids = plan.operations.map(operation => operation.id);
    expect(ids.indexOf('cope')).toBeLessThan(ids.indexOf('groove'));
    expect(setupsOf(plan, 'cope')[0]?.notes).toEqual(['test-pieces-first', 'cope-before-groove']);
    expect(operationOf(plan, 'cope')?.reminders.map(reminder => reminder.id)).not.toContain('backer-block');
  });

  it('does not plane what was bought at its thickness', () => {
    const bought = aJob().stock.map(stock => ({ ...stock, thickness: length('3/4') }));
    const plan = planWoodAndWork(aJob({ stock: bought }), doorSetOf(plainDoor()), solver).value;
    expect(setupsOf(plan, 'plane-thickness')).toEqual([]);
  });
});

/** The plan is made in the test, not while tests are collected, so that a mistake in it fails the test that shows it. */
function expectSetups(plan: () => WoodAndWork, table: Table): void {
  it.each(table.map(([id, ...lines]) => [id, lines] as const))('%s', (id, lines) => {
    expect(setupsOf(plan(), id).map(printSetup)).toEqual(lines);
  });
}

function planOf(doors: readonly Sizes[], changes: Partial<Shop> = {}): WoodAndWork {
  const job: Job = aJob({ shop: { ...SHOP, ...changes } });
  return planWoodAndWork(job, doorSetOf(...doors), solver).value;
}
