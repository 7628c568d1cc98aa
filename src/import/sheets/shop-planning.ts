import { at, type Setting } from '../setting.ts';
import { CHOICE, COUNT, NUMBER, SHARE, SIZE } from '../setting-kinds.ts';

const COLOUR_MATCH = CHOICE<'none' | 'stiles' | 'door'>([
  ['none', 'none', 'no'],
  ['stiles', 'stiles'],
  ['door', 'door', 'doors', 'whole door'],
]);
/** How cutting plans are looked for, and what is worth what in them. */
export const PLANNING_SETTINGS: readonly Setting[] = [
  at(
    'planning',
    'seconds',
    'Planning seconds',
    NUMBER(0, 600),
    'How long the planner may look for a better cutting plan.',
  ),
  at(
    'planning',
    'patience',
    'Planning patience',
    NUMBER(0, 600),
    'Seconds, for each hundred pieces, that the planner goes on without finding a better plan.',
  ),
  at(
    'planning',
    'seed',
    'Planning seed',
    COUNT(0, 1_000_000_000),
    'Another number gives another plan that is as good.',
    ['Seed'],
  ),
  at('planning', 'colourMatch', 'Colour match', COLOUR_MATCH, 'Parts that are seen together come from one board.', [
    'Color match',
  ]),
  at(
    'planning',
    'colourMatchWaste',
    'Colour match waste',
    SHARE(100),
    'Share of waste that colour matching may cost.',
    ['Color match waste'],
  ),
  at('planning', 'remnantLength', 'Remnant length', SIZE, 'Offcuts at least this long are kept.'),
  at('planning', 'remnantWidth', 'Remnant width', SIZE, 'Offcuts at least this wide are kept.'),
  at(
    'planning',
    'remnantForSetting',
    'Remnant for a setting',
    NUMBER(0.01, 100),
    'How much of a board or sheet must stay in one piece to be worth one more setting of fence or stop.',
  ),
  at(
    'planning',
    'boardsForSetting',
    'Boards for a setting',
    NUMBER(0, 10),
    'How much of a board or sheet one setting of fence or stop fewer may cost.',
  ),
];
