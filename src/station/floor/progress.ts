import type { OperationId } from '../../trade/operations.ts';
import type { Count, Missing } from './answer.ts';
import type { Book, Piece } from './book.ts';
import type { KeptEvent } from './event.ts';
import { type Forecast, forecastOf } from './forecast.ts';
import { type JobState, pieceState } from './job-state.ts';
import { currentCode, nextStep, stepOf } from './piece-facts.ts';
import { isDone, left, undoneBefore } from './route.ts';
import { remakeCode } from './shelf.ts';

/** How far a job is. Minutes are those of the packet's plan: work of one pair of hands, without waits. */
export type Progress = {
  readonly job: string;
  readonly name: string;
  readonly revision: string;
  readonly doors: Count;
  readonly steps: Count;
  readonly minutesLeft: number;
  readonly forecast: Forecast | undefined;
  readonly operations: readonly OperationProgress[];
  readonly stations: readonly StationProgress[];
  readonly cabinets: readonly CabinetProgress[];
  readonly doorList: readonly DoorProgress[];
  /** The next doors that go into clamps together, and what they still wait for; undefined once all are glued. */
  readonly batch: BatchProgress | undefined;
  readonly remakes: readonly { readonly code: string; readonly reason: string }[];
  readonly recent: readonly RecentEvent[];
};

export type OperationProgress = Count & {
  readonly id: string;
  readonly name: string;
  readonly station: string;
  readonly stationName: string;
  readonly minutesLeft: number;
};

export type StationProgress = {
  readonly station: string;
  readonly name: string;
  readonly pieces: number;
  readonly minutes: number;
};

export type CabinetProgress = {
  readonly cabinet: string;
  readonly room: string;
  readonly doors: Count;
  readonly steps: Count;
};

export type DoorProgress = {
  readonly code: string;
  readonly cabinet: string;
  readonly parts: Count;
  readonly steps: Count;
  /** What the door itself has next; empty where it is complete. */
  readonly next: string;
};

export type BatchProgress = {
  readonly number: number;
  readonly doors: readonly string[];
  /** Every piece that it waits for, with all that the piece still needs. */
  readonly blocking: readonly Missing[];
  /** The same pieces by what each needs next. */
  readonly waitsFor: readonly {
    readonly operation: string;
    readonly station: string;
    readonly pieces: readonly string[];
  }[];
};

export type RecentEvent = {
  readonly at: string;
  readonly kind: 'done' | 'spoiled';
  readonly operation: string;
  readonly station: string;
  readonly device: string;
  readonly pieces: readonly string[];
};

/** `now` is what a forecast counts from. */
export function progressOf(book: Book, state: JobState, now: Date): Progress {
  const doorPieces = [...book.pieces.values()].filter(piece => piece.kind === 'door');
  const doorList = doorPieces.map(door => doorProgress(book, state, door));
  const operations = operationsOf(book, state);
  return {
    job: book.job,
    name: book.manifest.job.name,
    revision: book.revision,
    doors: countWhere(doorList, isComplete),
    steps: sumOf(doorList.map(each => each.steps)),
    minutesLeft: operations.reduce((total, each) => total + each.minutesLeft, 0),
    forecast: forecastOf(book, state, now),
    operations,
    stations: stationsOf(operations),
    cabinets: cabinetsOf(doorList, book),
    doorList,
    batch: nextBatch(book, state),
    remakes: remakesOf(book, state),
    recent: state.recent.flatMap(event => recentOf(book, event)),
  };
}

function doorProgress(book: Book, state: JobState, door: Piece): DoorProgress {
  const parts = book.partsOfDoor.get(door.code) ?? [];
  const steps = [door, ...parts].map(piece => ({
    done: piece.route.length - left(state, piece).length,
    total: piece.route.length,
  }));
  return {
    code: currentCode(state, door),
    cabinet: door.cabinet,
    parts: countWhere(parts, part => left(state, part).length === 0),
    steps: sumOf(steps),
    next: nextStep(book, state, door)?.operation ?? '',
  };
}

const isComplete = (door: DoorProgress): boolean => door.steps.done === door.steps.total;

/** A set-up is made again for whatever is left of its pieces, so its minutes count until the last of them. */
function operationsOf(book: Book, state: JobState): readonly OperationProgress[] {
  return [...book.operations.values()]
    .filter(({ pieces }) => pieces.length > 0)
    .map(({ operation, pieces, minutesEach }) => {
      const waiting = pieces.filter(piece => !isDone(state, piece, operation.id));
      const codes = new Set(waiting.map(piece => piece.code));
      const open = operation.setups.filter(setup => setup.pieces.some(code => codes.has(code))).length;
      const setupMinutes = (operation.minutes.setup * open) / Math.max(1, operation.setups.length);
      return {
        id: operation.id,
        name: operation.name,
        station: operation.station,
        stationName: operation.stationName,
        done: pieces.length - waiting.length,
        total: pieces.length,
        minutesLeft: Math.round(setupMinutes + minutesEach * waiting.length),
      };
    });
}

function stationsOf(operations: readonly OperationProgress[]): readonly StationProgress[] {
  const stations = [...new Set(operations.map(each => each.station))];
  return stations.map(station => {
    const own = operations.filter(each => each.station === station);
    return {
      station,
      name: own[0]?.stationName ?? station,
      pieces: own.reduce((total, each) => total + each.total - each.done, 0),
      minutes: own.reduce((total, each) => total + each.minutesLeft, 0),
    };
  });
}

function cabinetsOf(doors: readonly DoorProgress[], book: Book): readonly CabinetProgress[] {
  const cabinets = [...new Set(doors.map(door => door.cabinet))];
  return cabinets.map(cabinet => {
    const own = doors.filter(door => door.cabinet === cabinet);
    const room = book.manifest.doors.find(door => door.cabinet === cabinet)?.room ?? '';
    return { cabinet, room, doors: countWhere(own, isComplete), steps: sumOf(own.map(door => door.steps)) };
  });
}

const GLUE_UP: OperationId = 'glue-up';

function nextBatch(book: Book, state: JobState): BatchProgress | undefined {
  for (const { number, doors } of book.manifest.batches) {
    const waiting = doors
      .flatMap(code => book.pieces.get(code) ?? [])
      .filter(door => door.route.includes(GLUE_UP) && !isDone(state, door, GLUE_UP));
    if (waiting.length === 0) continue;
    const blocking = waiting.flatMap(door => undoneBefore(book, state, door, GLUE_UP));
    return {
      number,
      doors: waiting.map(door => currentCode(state, door)),
      blocking: blocking.map(({ piece, operations }) => ({
        code: currentCode(state, piece),
        operations: operations.map(id => stepOf(book, id).operation),
      })),
      waitsFor: byNextStep(book, state, blocking),
    };
  }
  return undefined;
}

function byNextStep(book: Book, state: JobState, blocking: ReturnType<typeof undoneBefore>): BatchProgress['waitsFor'] {
  const next = [...book.operations.keys()].filter(id => blocking.some(each => each.operations[0] === id));
  return next.map(id => ({
    ...stepOf(book, id),
    pieces: blocking.filter(each => each.operations[0] === id).map(({ piece }) => currentCode(state, piece)),
  }));
}

/** What was spoiled and is not finished again. */
const remakesOf = (book: Book, state: JobState): Progress['remakes'] =>
  [...book.pieces.values()].flatMap(piece => {
    const last = pieceState(state, piece.code).spoils.at(-1);
    if (last === undefined || left(state, piece).length === 0) return [];
    return [{ code: currentCode(state, piece), reason: last.reason }];
  });

function recentOf(book: Book, event: KeptEvent): readonly RecentEvent[] {
  const { what } = event;
  if (what.kind === 'undone') return [];
  return [
    {
      at: event.serverTime,
      kind: what.kind,
      operation: what.kind === 'done' ? stepOf(book, what.operation).operation : '',
      station: event.station,
      device: event.device,
      pieces: what.pieces.map(({ code, remake }) => remakeCode(code, remake)),
    },
  ];
}

const countWhere = <T>(all: readonly T[], holds: (each: T) => boolean): Count => ({
  done: all.filter(holds).length,
  total: all.length,
});

const sumOf = (counts: readonly Count[]): Count => ({
  done: counts.reduce((sum, each) => sum + each.done, 0),
  total: counts.reduce((sum, each) => sum + each.total, 0),
});
