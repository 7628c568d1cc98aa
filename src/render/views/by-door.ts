import type { Door } from '../../calculate/door-set.ts';
import type { Draft, View } from '../draft.ts';
import { grouped } from '../order.ts';
import { inRooms } from './schedule.ts';

/** hanging.hbs: which door goes where, room by room, with the gaps to set. */
export type HangingView = {
  readonly rooms: readonly { readonly name: string; readonly mountings: readonly HangingMounting[] }[];
};
export type HangingMounting = {
  /** Whether the figures are overlays or clearances. */
  readonly lead: string;
  readonly doors: readonly {
    readonly code: string;
    readonly place: string;
    readonly hung: string;
    readonly hinges: string;
    readonly left: string;
    readonly right: string;
    readonly top: string;
    readonly bottom: string;
    readonly between: string;
  }[];
};

export const hanging = (draft: Draft): View<HangingView> => ({
  figures: new Map(),
  data: {
    rooms: [...inRooms(draft)].map(([room, doors]) => ({
      name: room === '' ? draft.say('schedule.no-room') : room,
      mountings: (['overlay', 'inset'] as const)
        .map(mounting => ({
          lead: draft.say(`hanging.${mounting}`),
          doors: doors.filter(door => door.mounting === mounting).map(door => hung(door, draft)),
        }))
        .filter(({ doors: those }) => those.length > 0),
    })),
  },
});

function hung(door: Door, { say, size }: Draft): HangingMounting['doors'][number] {
  const { left, right, top, bottom, between } = door.gaps;
  return {
    code: door.code,
    place: [door.cabinet, door.label, say(`leaf.${door.leaf}`), door.front === 'door' ? '' : say(`front.${door.front}`)]
      .filter(Boolean)
      .join(' · '),
    hung: say(`hand.${door.hingeSide ?? 'none'}`),
    hinges: door.hinges.length === 0 ? '' : `${door.hinges.length}`,
    left: size(left),
    right: size(right),
    top: size(top),
    bottom: size(bottom),
    between: between === undefined ? '' : size(between),
  };
}

/** inspection.hbs: what each door should measure, and room for what it does. */
export type InspectionView = {
  readonly tolerance: string;
  /** Doors that should measure the same, to be measured one after the other. */
  readonly alike: readonly {
    readonly size: string;
    /** Whether it is in two units, and needs smaller type. */
    readonly isWide: boolean;
    readonly diagonal: string;
    readonly codes: readonly string[];
  }[];
};

export const inspection = (draft: Draft): View<InspectionView> => ({
  figures: new Map(),
  data: {
    tolerance: draft.say('inspection.tolerance', { tolerance: draft.size(draft.job.shop.doors.increment) }),
    alike: [...grouped([...inRooms(draft).values()].flat(), door => measures(door, draft).join()).values()].map(
      doors => {
        const [size = '', diagonal = ''] = measures(doors[0], draft);
        return { size, isWide: draft.hasTwoUnits, diagonal, codes: doors.map(({ code }) => code) };
      },
    ),
  },
});

const measures = (door: Door, { say, size }: Draft): readonly string[] => [
  say('doors.size', { width: size(door.width.value), height: size(door.height.value) }),
  size(door.diagonal.tolerance),
];
