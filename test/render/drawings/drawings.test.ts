import { beforeAll, describe, expect, it } from 'vitest';
import type { Door, Joint } from '../../../src/calculate/door-set.ts';
import { packagedWords } from '../../../src/packaged.ts';
import type { Draft } from '../../../src/render/draft.ts';
import { boringMap } from '../../../src/render/drawings/boring-map.ts';
import { cupTag } from '../../../src/render/drawings/cup-tag.ts';
import { cutDrawing } from '../../../src/render/drawings/cut-bin.ts';
import { dayChart } from '../../../src/render/drawings/day-chart.ts';
import { doorElevation } from '../../../src/render/drawings/door-elevation.ts';
import { jointSection } from '../../../src/render/drawings/joint-section.ts';
import { partInDoor } from '../../../src/render/drawings/part-in-door.ts';
import type { Pen } from '../../../src/render/drawings/pen.ts';
import { REMINDER_DRAWINGS, tagUp } from '../../../src/render/drawings/reminder-drawings.ts';
import { roomElevations } from '../../../src/render/drawings/room-elevation.ts';
import type { Figure, Mark } from '../../../src/render/figure.ts';
import { cutting } from '../../../src/render/views/cutting.ts';
import { tagWords } from '../../../src/render/views/tag-words.ts';
import { printLength } from '../../../src/units/print-length.ts';
import { aJob } from '../../support/a-job.ts';
import { judgeFigure } from '../../support/judge-figure.ts';
import { length } from '../../support/length.ts';
import { drafted, laidOut } from '../../support/packet.ts';
import { FONTS } from '../../support/typeset.ts';

const pen: Pen = {
  measure: FONTS.measure,
  print: size => printLength(size, { units: 'inch', increment: length('1/32') }),
};
const ROOM = { width: 160, height: 200 };

let job: Draft;
beforeAll(async () => {
  job = drafted(await laidOut(aJob()));
});

const faultsIn = (figures: readonly Figure[]) => figures.flatMap(figure => judgeFigure(figure, FONTS.measure));
const wordsOf = (figure: Figure | undefined) =>
  (figure?.marks ?? []).flatMap(mark => (mark.kind === 'text' ? [mark.text] : []));
const of = <K extends Mark['kind']>(figure: Figure | undefined, kind: K) =>
  (figure?.marks ?? []).filter((mark): mark is Extract<Mark, { kind: K }> => mark.kind === kind);

describe('the elevation of a door', () => {
  it('keeps to its sheet, whatever the door', () => {
    expect(faultsIn(job.doorSet.doors.map(door => doorElevation(door, job.partsOf(door), pen, ROOM)))).toEqual([]);
  });

  it('says the door’s size, and that of every member and clear opening', () => {
    for (const door of job.doorSet.doors) {
      const words = wordsOf(doorElevation(door, job.partsOf(door), pen, ROOM));
      const sizes = [door.width.value, door.height.value, ...door.sights.flatMap(sight => [sight.width, sight.height])];
      expect(words, door.code).toEqual(expect.arrayContaining(sizes.map(pen.print)));
    }
  });

  it('is to scale: the outline is as wide to its height as the door', () => {
    for (const door of job.doorSet.doors) {
      const outline = of(doorElevation(door, job.partsOf(door), pen, ROOM), 'polygon').find(
        mark => mark.weight === 1.4,
      );
      const [[x0 = 0, y0 = 0] = [], , [x1 = 0, y1 = 0] = []] = outline?.points ?? [];
      expect((x1 - x0) / (y1 - y0)).toBeCloseTo(door.width.value / door.height.value, 6);
    }
  });

  it('points its dashed lines at the hinge side', () => {
    const [left, right] = (['left', 'right'] as const).map(side => {
      const door = job.doorSet.doors.find(each => each.hingeSide === side) as Door;
      const figure = doorElevation(door, job.partsOf(door), pen, ROOM);
      const outline = of(figure, 'polygon').find(mark => mark.weight === 1.4);
      const xs = (outline?.points ?? []).map(([x]) => x);
      const [sign] = of(figure, 'line').filter(mark => mark.dash !== undefined);
      return { meets: sign?.x2, left: Math.min(...xs), right: Math.max(...xs) };
    });
    expect(left?.meets).toBe(left?.left);
    expect(right?.meets).toBe(right?.right);
  });
});

describe('the boring map', () => {
  const hinged = (side: 'left' | 'right') => job.doorSet.doors.find(each => each.hingeSide === side) as Door;

  it('keeps to its sheet, alone and beside its mirror image', () => {
    const maps = job.doorSet.doors.flatMap(door => boringMap([{ door, title: 'TOP' }], pen, ROOM) ?? []);
    const pair = boringMap(
      [hinged('left'), hinged('right')].map(door => ({ door, title: 'TOP · left' })),
      pen,
      ROOM,
    );
    expect(faultsIn([...maps, ...(pair === undefined ? [] : [pair])])).toEqual([]);
  });

  it('is seen from the back: what hangs on the left has its cups on the right', () => {
    for (const side of ['left', 'right'] as const) {
      const map = boringMap([{ door: hinged(side), title: '' }], pen, ROOM);
      const xs = (of(map, 'polygon').find(mark => mark.weight === 1.4)?.points ?? []).map(([x]) => x);
      const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
      const cups = of(map, 'circle').map(({ x }) => x);
      expect(cups.length).toBe(hinged(side).hinges.length);
      expect(cups.every(x => (side === 'left' ? x > middle : x < middle))).toBe(true);
    }
  });

  it('says how far each cup is from the top, and from the edge', () => {
    for (const door of job.doorSet.doors) {
      if (door.hinges.length === 0) continue;
      const sizes = door.hinges.flatMap(hinge => [hinge.fromTop, hinge.fromEdge]).map(pen.print);
      expect(wordsOf(boringMap([{ door, title: '' }], pen, ROOM)), door.code).toEqual(expect.arrayContaining(sizes));
    }
  });

  it('is not drawn for what hangs on nothing', () => {
    const fixed = job.doorSet.doors.find(each => each.hingeSide === undefined) as Door;
    expect(boringMap([{ door: fixed, title: '' }], pen, ROOM)).toBeUndefined();
  });
});

describe('the drawings on a large tag', () => {
  const stileOf = (door: Door) => job.partsOf(door).find(({ role }) => role === 'stile-left');
  const widthOf = (points: readonly (readonly [x: number, y: number])[]) => points.map(([x]) => x);

  it('keep to their sheet, whatever the piece and its name', () => {
    const pieces = tagWords(job).flatMap(({ shows }) =>
      shows?.part === undefined ? [] : [partInDoor(shows.part, shows.door, shows.up, ROOM)],
    );
    const cups = ['I1', 'B1.A.1L', 'W'.repeat(80)].map(code => cupTag(code, 'J'.repeat(80), length('1 3/8'), pen));
    expect(faultsIn([...pieces, ...cups])).toEqual([]);
  });

  it('show a left stile on the right, as it lies with its tag up, and its tag looking to the middle', () => {
    for (const door of job.doorSet.doors) {
      const stile = stileOf(door);
      if (stile === undefined) continue;
      const { marks, width } = partInDoor(stile, door, 'inside', ROOM);
      const [piece, head] = [marks.find(mark => 'fill' in mark && mark.fill === 0), marks.at(-1)];
      if (piece?.kind !== 'polygon' || head?.kind !== 'polygon') throw new Error('no piece, or no arrow');
      expect(Math.min(...widthOf(piece.points)), door.code).toBeGreaterThan(width / 2);
      expect(Math.min(...widthOf(head.points)), door.code).toBeLessThan(Math.min(...widthOf(piece.points)));
    }
  });

  it('leave a door’s code whole where a cup has room for it', () => {
    expect(wordsOf(cupTag('B1.A.1L', 'J-101', length('1 3/8'), pen))).toEqual(['B1.A.1L', 'J-101']);
    expect(wordsOf(cupTag('W'.repeat(80), 'J-101', length('1 3/8'), pen))[0]).toMatch(/^W+…W+$/);
  });
});

describe('the section of a joint', () => {
  const words = { face: 'Show face', back: 'Back', stile: 'stile', infill: 'panel' };
  const joints = () => job.doorSet.doors.flatMap(({ joint }) => joint ?? []);

  it('keeps to its sheet and says every size of the joint', () => {
    for (const joint of joints()) {
      const figure = jointSection(joint, words, pen, 250);
      expect(judgeFigure(figure, FONTS.measure)).toEqual([]);
      const sizes = [joint.frameThickness, joint.faceToGroove, joint.grooveWidth, joint.grooveDepth];
      const rabbet = joint.rabbet === undefined ? [] : [joint.rabbet.depth, joint.rabbet.width, joint.rabbet.tongue];
      expect(wordsOf(figure)).toEqual(expect.arrayContaining([...sizes, ...rabbet].map(pen.print)));
    }
  });

  it('shows a panel that stands proud of the frame beyond the frame’s back', () => {
    const [joint] = joints() as [Joint];
    const backs = ['-1/8', '1/8'].map(projection => {
      const thickness = length(projection === '1/8' ? '5/8' : '3/8');
      const figure = jointSection(
        { ...joint, infillThickness: thickness, backProjection: length(projection), rabbet: undefined },
        words,
        pen,
        250,
      );
      const [stile, panel] = of(figure, 'polygon').filter(mark => mark.weight === 1.4);
      const foot = (mark: typeof stile) => Math.max(...(mark?.points ?? []).map(([, y]) => y));
      return foot(panel) - foot(stile);
    });
    expect(backs[0]).toBeLessThan(0);
    expect(backs[1]).toBeGreaterThan(0);
  });
});

describe('a cutting drawing', () => {
  const drawn = () =>
    job.plan.cutPlans.flatMap(plan =>
      plan.bins.map(bin => ({
        bin,
        figure: cutDrawing(bin, 'length', code => ({ code, size: '' }), pen, { width: 540, height: 260 }),
      })),
    );

  it('keeps to its sheet', () => {
    expect(faultsIn(drawn().map(({ figure }) => figure))).toEqual([]);
  });

  it('has the number of every cut', () => {
    for (const { bin, figure } of drawn()) {
      const numbers = wordsOf(figure).filter(
        word => /^\d+$/.test(word) && bin.cuts.some(cut => `${cut.number}` === word),
      );
      for (const cut of bin.cuts) expect(numbers).toContain(`${cut.number}`);
    }
  });

  it.each([
    // 8 in of a board of 96 in are 44 points: too short for ten letters of 9 points, long enough for half of them.
    ['12', ['W8.1L-P1A']],
    ['8', ['W8.1L-', 'P1A']],
    ['1', []],
  ])('has the code of a piece of %s in. in one or in two, or not at all', (long, words) => {
    const [bin] = job.plan.cutPlans.flatMap(plan => plan.bins);
    if (bin === undefined) throw new Error('nothing is cut');
    const piece = {
      ...bin.pieces[0],
      along: length('0'),
      across: length('0'),
      length: length(long),
      width: length('6'),
    };
    const only = { ...bin, length: length('96'), pieces: [piece as (typeof bin.pieces)[0]], offcuts: [], cuts: [] };
    const figure = cutDrawing(only, 'none', () => ({ code: 'W8.1L-P1A', size: '' }), pen, { width: 540, height: 260 });
    expect(wordsOf(figure).filter(word => word !== '')).toEqual(words);
  });

  it('has the length and width of the board or sheet above it', () => {
    for (const kind of ['board', 'sheet'] as const) {
      const bins = job.plan.cutPlans.filter(plan => plan.kind === kind).flatMap(plan => plan.bins);
      const shown = cutting(job, kind)?.data.plans.flatMap(plan => plan.bins.map(({ size }) => size)) ?? [];
      expect(shown).toEqual(bins.map(bin => `${job.size(bin.length)} × ${job.size(bin.width)}`));
    }
  });
});

describe('the elevations of a room', () => {
  it('show every front once, all at one scale, standing on one line', () => {
    const { doors } = job.doorSet;
    const rows = roomElevations(doors, pen, 540);
    expect(faultsIn(rows)).toEqual([]);
    expect(rows.flatMap(row => wordsOf(row))).toEqual(doors.map(({ code }) => code));
  });
});

describe('the chart of days', () => {
  it('keeps to its sheet and has a bar for every task', () => {
    for (const schedule of job.plan.days.schedules) {
      const words = {
        row: (task: { operation: string }) => task.operation,
        day: ({ day }: { day: number }) => `${day + 1}`,
      };
      const chart = dayChart(schedule, 8 * 3600, words, pen, 540);
      expect(judgeFigure(chart, FONTS.measure)).toEqual([]);
      expect(of(chart, 'polygon').length).toBeGreaterThanOrEqual(schedule.tasks.length);
    }
  });
});

describe.each(['en', 'es'] as const)('the drawings of cautions in %s', language => {
  const words = packagedWords(language);
  const word = (key: string) => words[`drawing.${key}`] ?? '';
  it.each(Object.entries(REMINDER_DRAWINGS))('%s keeps to its sheet', (_, drawing) => {
    expect(judgeFigure(drawing(word), FONTS.measure)).toEqual([]);
  });
  it('tag up keeps to its sheet', () => {
    expect(judgeFigure(tagUp(word), FONTS.measure)).toEqual([]);
  });
});
