import * as z from 'zod';

/** A physical piece by its code, and which one of that code: 0 the first, 1 its first remake … */
export type PieceRef = z.infer<typeof pieceRef>;

const pieceRef = z.object({ code: z.string(), remake: z.int() }).readonly();
const pieces = z.array(pieceRef).readonly();

/** What the floor did, without who and when. Everything was looked up before it was kept, so it reads without a manifest. */
export const happeningSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('done'),
    operation: z.string(),
    pieces,
    /** Operations before this one that nobody had scanned, and that somebody vouched for with a reason. */
    skipped: z.array(z.object({ piece: pieceRef, operation: z.string() }).readonly()).readonly(),
    reason: z.string(),
    /** The set-up card that stood for its pieces; null where the piece itself was scanned. */
    setup: z.string().nullable(),
  }),
  z.object({ kind: z.literal('spoiled'), pieces, reason: z.string() }),
  z.object({ kind: z.literal('undone'), of: z.string(), pieces }),
]);

export type Happening = Readonly<z.infer<typeof happeningSchema>>;

/** What happened, where, and when by both clocks. `key` is made once, on the device: the same key is the same event. */
export type FloorEvent = {
  readonly key: string;
  readonly job: string;
  /** The revision of the job that the floor worked to. */
  readonly revision: string;
  readonly station: string;
  readonly device: string;
  readonly deviceTime: string;
  readonly serverTime: string;
  readonly what: Happening;
};

/** An event in its place: the ledger's order is the order of the job, whatever the devices' clocks say. */
export type KeptEvent = FloorEvent & { readonly seq: number };
