import type { Draft } from '../draft.ts';
import { boringMap } from '../drawings/boring-map.ts';
import { cupTag } from '../drawings/cup-tag.ts';
import type { Room } from '../drawings/door-elevation.ts';
import { partInDoor } from '../drawings/part-in-door.ts';
import type { Figure } from '../figure.ts';
import { roomOn } from './label-grid.ts';
import type { TagWords } from './tag-words.ts';

/** To be read from across the bench: large type, and a drawing of where the piece goes. */
export type LargeTag = {
  readonly code: string;
  readonly codeStyle: string;
  readonly barcode: string;
  readonly what: string;
  readonly size: string;
  readonly sizeStyle: string;
  readonly lies: readonly string[];
  readonly next: string;
  /** Names of drawings: the piece in its door or the door's borings, and a round tag to cut out; empty for none. */
  readonly figure: string;
  readonly cupTag: string;
};

export function largeTag(words: TagWords, figures: Map<string, Figure>, draft: Draft): LargeTag {
  const { code, barcode, size, what, lies, next, shows } = words;
  const room = roomOn(draft.job.shop.labels);
  const style = (said: string): string =>
    STYLES.find(([, type]) => draft.pen.measure(said, type, true) <= room.width)?.[0] ?? 'title';
  const named = (name: string, figure: Figure | undefined): string => {
    if (figure !== undefined) figures.set(name, figure);
    return figure === undefined ? '' : name;
  };
  const field = { width: room.width * FIGURE_SHARE, height: room.height - WORDS };
  const [hinge] = shows?.door.hinges ?? [];
  const hasCupTag = hinge !== undefined && shows?.part === undefined;
  return {
    code,
    codeStyle: style(code),
    barcode,
    what: what.join(' · '),
    size,
    // The code is what is looked for; the size is what is checked.
    sizeStyle: style(size) === 'title' ? 'title' : 'display',
    lies,
    next: next.join(' → '),
    figure: named(`tag-${code}`, drawing(shows, field, draft)),
    cupTag: hasCupTag ? named(`cup-${code}`, cupTag(code, draft.job.number, hinge.cupDiameter, draft.pen)) : '',
  };
}

function drawing(shows: TagWords['shows'], field: Room, draft: Draft): Figure | undefined {
  if (shows === undefined || field.height < LEAST) return undefined;
  const { door, part, up } = shows;
  if (part !== undefined) return partInDoor(part, door, up, field);
  const title = door.hingeSide === undefined ? '' : draft.say(`doors.back-${door.hingeSide}`);
  return boringMap([{ door, title }], draft.pen, field);
}

const STYLES = [
  ['huge', 44],
  ['display', 28],
] as const;
/** A drawing takes this share of a label's width, words and a cup's tag the rest. */
const FIGURE_SHARE = 0.58;
/** What code, words, size, symbol and the gaps of tags.hbs take of a label's height, in points, and the least drawn. */
const WORDS = 244;
const LEAST = 60;
