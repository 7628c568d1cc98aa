import type { LabelSheet, Shop } from '../../trade/shop.ts';
import { THIRTY_ON_LETTER, TWENTY_ONE_ON_A4 } from '../../trade/shop-defaults.ts';
import { type Length, mm, ZERO } from '../../units/length.ts';
import type { LengthFormat } from '../../units/print-length.ts';
import { lengthOf } from '../../units/read-length.ts';
import { type Kind, made, type Setting } from '../setting.ts';
import { CHOICE, HINGE_LIMIT, MINUTES, SIZE } from '../setting-kinds.ts';

/** Settings that lie deeper in `Shop` than a field of a group. */
export const printed = <K extends keyof LengthFormat>(
  key: K,
  name: string,
  kind: Kind<LengthFormat[K]>,
  explains: string,
): Setting =>
  made(name, kind, explains, [], {
    get: shop => shop.printing.lengths[key],
    set: (shop, value) => ({
      ...shop,
      printing: { ...shop.printing, lengths: { ...shop.printing.lengths, [key]: value } },
    }),
  });

export const standardSize = (of: 'standardBoard' | 'standardSheet', side: 'width' | 'length', name: string): Setting =>
  made(name, SIZE, `Of a ${of === 'standardBoard' ? 'board' : 'sheet'} to buy where Stock names no ${side}.`, [], {
    get: shop => shop.rough[of][side],
    set: (shop, value: Length) => ({ ...shop, rough: { ...shop.rough, [of]: { ...shop.rough[of], [side]: value } } }),
  });

export const hingesUpTo = (hinges: number): Setting =>
  made(
    `Hinges ${hinges} up to`,
    HINGE_LIMIT,
    `As high and as heavy as a door on ${hinges} hinges may be.`,
    [`${hinges} hinges up to`],
    {
      get: shop => shop.hinges.counts.find(step => step.hinges === hinges),
      set: (shop, limit) => ({ ...shop, hinges: { ...shop.hinges, counts: withStep(shop, { ...limit, hinges }) } }),
    },
  );

const withStep = ({ hinges: { counts } }: Shop, step: (typeof counts)[number]): typeof counts =>
  [...counts.filter(each => each.hinges !== step.hinges), step].sort((a, b) => a.hinges - b.hinges);

export const minutesOf = (operation: string): Setting =>
  made(`Minutes: ${operation}`, MINUTES, 'Minutes to set up, and minutes for each piece.', [], {
    get: shop => shop.work.minutes[operation],
    set: (shop, minutes) => ({
      ...shop,
      work: { ...shop.work, minutes: { ...shop.work.minutes, [operation]: minutes } },
    }),
  });

const single = (width: Length, height: Length): LabelSheet => ({
  ...{ page: 'single', rows: 1, columns: 1, width, height, left: ZERO, top: ZERO, startAt: 1 },
  ...{ pitchAcross: width, pitchDown: height },
});

const PRESETS = CHOICE<LabelSheet>([
  [THIRTY_ON_LETTER, '30 on letter'],
  [TWENTY_ONE_ON_A4, '21 on A4'],
  [single(mm(50), mm(25)), 'single 50 x 25 mm'],
  [single(lengthOf('4'), lengthOf('6')), 'single 4 x 6 in'],
]);

export const labelPreset = (): Setting =>
  made(
    'Labels',
    PRESETS,
    'A usual sheet of labels, or a single label; the settings below change single numbers of it.',
    ['Label sheet'],
    {
      get: shop => shop.labels,
      set: (shop, labels) => ({ ...shop, labels }),
    },
  );
