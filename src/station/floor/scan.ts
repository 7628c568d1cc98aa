import * as z from 'zod';

/** Nothing that a terminal, a database or a page could take for an order to itself. */
const plain = (max: number) =>
  z
    .string()
    .max(max)
    .regex(/^[^\p{Cc}\p{Cs}\u2028\u2029]*$/u, 'has control characters in it');

/** What somebody may be asked before a scan counts. */
export const QUESTIONS = ['order', 'changed', 'batch', 'spoil'] as const;
export type Question = (typeof QUESTIONS)[number];

/** One pull of the trigger, as a page sends it. Sent again with the same key where no answer came. */
export const scanSchema = z
  .strictObject({
    key: z.string().regex(/^[0-9a-f]{32}$/),
    act: z.enum(['done', 'spoiled', 'undo']),
    /** What was scanned or typed; for `undo`, the key of the event to undo. */
    code: plain(80),
    station: plain(40),
    /** The operation that is run there now; null to take the piece's next one at this station. */
    operation: plain(40).nullable(),
    /** The job that is worked on; null for any. */
    job: plain(80).nullable(),
    device: plain(40),
    /** The device's own time: kept, and never used to order anything. */
    at: z.iso.datetime().max(40),
    /** The questions that were answered with yes, and why. */
    agreed: z.array(z.enum(QUESTIONS)).max(QUESTIONS.length).readonly(),
    reason: plain(200),
  })
  .readonly();

export type Scan = z.infer<typeof scanSchema>;
