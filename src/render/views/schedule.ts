import type { Door } from '../../calculate/door-set.ts';
import type { Draft, View } from '../draft.ts';
import { roomElevations } from '../drawings/room-elevation.ts';
import type { Figure } from '../figure.ts';
import { grouped, inCabinetOrder } from '../order.ts';
import { doorSheetOf } from './door-sheets.ts';

/** schedule.hbs: every door, room by room in cabinet order. */
export type ScheduleView = {
  readonly rooms: readonly ScheduleRoom[];
  /** Whether sizes are in two units, and need smaller type. */
  readonly isWide: boolean;
};
export type ScheduleRoom = {
  readonly name: string;
  readonly bookmark: string;
  /** Names of the drawings: a row of elevations each. */
  readonly elevations: readonly string[];
  readonly doors: readonly ScheduleRow[];
};
export type ScheduleRow = {
  readonly code: string;
  readonly front: string;
  readonly opening: string;
  readonly width: string;
  readonly height: string;
  readonly hung: string;
  readonly mounting: string;
  readonly gaps: string;
  readonly style: string;
  readonly hinges: string;
  readonly mass: string;
  readonly note: string;
  /** The bookmark of its door sheet; empty where that is not in the document. */
  readonly sheet: string;
};

/** `withDoorSheets`: whether the same document holds them, so that rows can lead there. */
export function schedule(draft: Draft, withDoorSheets: boolean): View<ScheduleView> {
  const figures = new Map<string, Figure>();
  const rooms = [...inRooms(draft)].map(([name, doors], index) => {
    const elevations = roomElevations(doors, draft.pen, draft.paperWidth).map((figure, row) => {
      figures.set(`room-${index}-${row}`, figure);
      return `room-${index}-${row}`;
    });
    return {
      name: name === '' ? draft.say('schedule.no-room') : name,
      bookmark: `room-${index}`,
      elevations,
      doors: doors.map(door => ({
        ...scheduleRow(door, draft),
        sheet: withDoorSheets ? doorSheetOf(door, draft) : '',
      })),
    };
  });
  return { data: { rooms, isWide: draft.hasTwoUnits }, figures };
}

/** Rooms as the workbook first names them, and in each the doors in cabinet order. */
export const inRooms = ({ doorSet }: Draft): ReadonlyMap<string, readonly Door[]> =>
  new Map(
    [...grouped(doorSet.doors, door => door.room)].map(([room, doors]) => [
      room,
      [...doors].sort((a, b) => inCabinetOrder(a.code, b.code)),
    ]),
  );

const scheduleRow = (door: Door, draft: Draft): Omit<ScheduleRow, 'sheet'> => ({
  code: door.code,
  front: [door.front === 'door' ? '' : draft.say(`front.${door.front}`), draft.say(`leaf.${door.leaf}`)]
    .filter(Boolean)
    .join(', '),
  opening: `${draft.sizeInOne(door.opening.width)} × ${draft.sizeInOne(door.opening.height)}`,
  width: draft.size(door.width.value),
  height: draft.size(door.height.value),
  hung: draft.say(`hand.${door.hingeSide ?? 'none'}`),
  mounting: draft.say(`mounting.${door.mounting}`),
  gaps: printGaps(door, draft),
  style: door.style,
  hinges: door.hinges.length === 0 ? '' : `${door.hinges.length}`,
  mass: draft.quantities.mass(door.mass),
  note: door.note,
});

/** Left · right · top · bottom, and what is between the leaves of a pair. */
function printGaps(door: Door, draft: Draft): string {
  const { left, right, top, bottom, between } = door.gaps;
  const sides = [left, right, top, bottom].map(draft.sizeInOne).join(' · ');
  return between === undefined ? sides : `${sides} | ${draft.sizeInOne(between)}`;
}
