import * as z from 'zod';
import { LANGUAGES } from '../diagnostics/languages.ts';

/** All the paper of a job, and what the stations read. Bytes are whole files. */
export type Packet = {
  readonly packetPdf: Uint8Array;
  readonly tagsPdf: Uint8Array;
  readonly partsXlsx: Uint8Array;
  readonly partsCsv: string;
  readonly remnantsCsv: string;
  readonly manifest: Manifest;
  readonly pages: { readonly packet: number; readonly tags: number };
};

/** Which revision of the job the packet is, and what changed since the one before, by code. */
export type Revision = {
  readonly letter: string;
  readonly inputHash: string;
  readonly changes:
    | {
        readonly since: string;
        readonly added: readonly string[];
        readonly removed: readonly string[];
        readonly changed: readonly string[];
      }
    | undefined;
};

export const MANIFEST_SCHEMA_VERSION = 1;

const length = z.object({ nm: z.int(), text: z.string() }).readonly();

/** `name` is `of` in the words of the job's language: "Rip fence". */
const settings = z
  .array(z.object({ of: z.string(), name: z.string(), value: length, sets: z.string() }).readonly())
  .readonly();

const reminder = z.object({ id: z.string(), text: z.string(), pieces: z.array(z.string()).readonly() }).readonly();

/** A working day of the plan, from 0; its date where the job has a start. */
const moment = z.object({ day: z.int(), date: z.string().nullable() }).readonly();

/** What the stations read: the packet as data, with a version. Lengths as `{ nm, text }`. */
export const manifestSchema = z
  .object({
    schemaVersion: z.literal(MANIFEST_SCHEMA_VERSION),
    program: z.string(),
    job: z
      .object({
        number: z.string(),
        name: z.string(),
        customer: z.string(),
        revision: z.string(),
        units: z.enum(['inch', 'mm']),
        language: z.enum(LANGUAGES),
        dueDate: z.string().nullable(),
        inputHash: z.string(),
      })
      .readonly(),
    doors: z
      .array(
        z
          .object({
            code: z.string(),
            barcode: z.string(),
            cabinet: z.string(),
            label: z.string(),
            room: z.string(),
            copy: z.int(),
            leaf: z.string(),
            front: z.string(),
            hand: z.string().nullable(),
            mounting: z.string(),
            style: z.string(),
            width: length,
            height: length,
            thickness: length,
            massKg: z.number(),
            hinges: z.array(z.object({ fromTop: length, fromEdge: length }).readonly()).readonly(),
            gaps: z
              .object({ left: length, right: length, top: length, bottom: length, between: length.nullable() })
              .readonly(),
            route: z.array(z.string()).readonly(),
          })
          .readonly(),
      )
      .readonly(),
    parts: z
      .array(
        z
          .object({
            code: z.string(),
            barcode: z.string(),
            door: z.string(),
            role: z.string(),
            /** The role in words: "left stile". */
            name: z.string(),
            stock: z.string().nullable(),
            length,
            width: length,
            thickness: length,
            route: z.array(z.string()).readonly(),
            cutFrom: z.string().nullable(),
            /** Its rough size before it is milled: what a remake needs of a board or an offcut. Null for what is bought to size. */
            rough: z.object({ length, width: length }).readonly().nullable(),
          })
          .readonly(),
      )
      .readonly(),
    operations: z
      .array(
        z
          .object({
            id: z.string(),
            name: z.string(),
            station: z.string(),
            stationName: z.string(),
            minutes: z.object({ setup: z.number(), pieces: z.number() }).readonly(),
            /** Time that passes without work. Where `minutes` are zero too, nobody scans the operation: the next one implies it. */
            waitMinutes: z.number(),
            reminders: z.array(reminder).readonly(),
            setups: z
              .array(
                z
                  .object({
                    code: z.string(),
                    barcode: z.string(),
                    /** How a piece is laid to the machine, in words: "Tag up, inside edge to the fence". Empty where it is all one. */
                    facing: z.string(),
                    settings,
                    pieces: z.array(z.string()).readonly(),
                    reminders: z.array(reminder).readonly(),
                  })
                  .readonly(),
              )
              .readonly(),
          })
          .readonly(),
      )
      .readonly(),
    cutPlans: z
      .array(
        z
          .object({
            stock: z.string(),
            kind: z.enum(['board', 'sheet']),
            bins: z.int(),
            bound: z.int(),
            offcuts: z
              .array(z.object({ code: z.string(), barcode: z.string(), length, width: length }).readonly())
              .readonly(),
          })
          .readonly(),
      )
      .readonly(),
    batches: z.array(z.object({ number: z.int(), doors: z.array(z.string()).readonly() }).readonly()).readonly(),
    /** The days as planned, for the people that the shop has: what a forecast starts from. Null where nobody works. */
    schedule: z
      .object({
        /** What a task may have to wait for. One of two people or more is the helper. */
        limits: z.object({ people: z.int(), clamps: z.int(), sprayPlaces: z.int(), rackSlots: z.int() }).readonly(),
        /** `08:00`; hours a day; ISO weekdays on which the shop works, 1 = Monday, and dates on which it does not. */
        hours: z
          .object({
            startsAt: z.string(),
            hoursPerDay: z.number(),
            weekdays: z.array(z.int()).readonly(),
            daysOff: z.array(z.string()).readonly(),
          })
          .readonly(),
        ends: moment,
        tasks: z
          .array(
            z
              .object({
                id: z.string(),
                operation: z.string(),
                /** None: all pieces of the operation. */
                doors: z.array(z.string()).readonly(),
                people: z.int(),
                helperAlone: z.boolean(),
                /** Spray places while somebody works; clamps and rack slots until the wait is over. */
                takes: z.object({ clamps: z.int(), sprayPlaces: z.int(), rackSlots: z.int() }).readonly(),
                /** Seconds of work, and of the wait after it. */
                work: z.int(),
                wait: z.int(),
                after: z.array(z.string()).readonly(),
                starts: moment,
                ends: moment,
              })
              .readonly(),
          )
          .readonly(),
      })
      .readonly()
      .nullable(),
    shopping: z
      .array(
        z
          .object({ kind: z.string(), item: z.string(), unit: z.string(), needed: z.number(), buy: z.number() })
          .readonly(),
      )
      .readonly(),
    diagnostics: z
      .array(
        z
          .object({ severity: z.string(), code: z.string(), at: z.string(), what: z.string(), mend: z.string() })
          .readonly(),
      )
      .readonly(),
  })
  .readonly();

export type Manifest = z.infer<typeof manifestSchema>;
