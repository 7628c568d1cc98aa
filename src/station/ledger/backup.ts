import * as z from 'zod';
import { type FloorEvent, happeningSchema, type KeptEvent } from '../floor/event.ts';
import { allEvents, type Ledger } from './ledger.ts';

/** The first line of a copy: what it is, so that nothing else is taken for one. */
const HEAD = { ledger: 'stilebook floor events', version: 1 } as const;

const headSchema = z.object({ ledger: z.literal(HEAD.ledger), version: z.literal(HEAD.version) });
const tailSchema = z.strictObject({ events: z.int() });
const eventSchema = z.strictObject({
  key: z.string(),
  job: z.string(),
  revision: z.string(),
  station: z.string(),
  device: z.string(),
  deviceTime: z.string(),
  serverTime: z.string(),
  what: happeningSchema,
});

/** Not a copy, or not a whole one. */
export class NoCopy extends Error {}

/**
 * A copy of a ledger, a line an event, that either engine can be filled from. Its last line counts the events: a copy
 * that was cut short is known.
 */
export async function* backUp(ledger: Ledger): AsyncGenerator<string> {
  yield `${JSON.stringify(HEAD)}\n`;
  let events = 0;
  for await (const page of allEvents(ledger)) {
    events += page.length;
    yield page.map(event => `${JSON.stringify(plain(event))}\n`).join('');
  }
  yield `${JSON.stringify({ events })}\n`;
}

/**
 * Brings the events of a copy into a ledger, in their order; those that are there already are left alone. `lines` is
 * read twice: nothing is brought in before the copy is known to be whole; `NoCopy` is thrown where it is not. Returns
 * how many events were new.
 */
export async function restore(ledger: Ledger, lines: () => AsyncIterable<string>): Promise<number> {
  for await (const _ of eventsIn(lines()));
  let fresh = 0;
  let batch: FloorEvent[] = [];
  const bring = async (): Promise<void> => {
    fresh += (await ledger.append(batch)).length;
    batch = [];
  };
  for await (const event of eventsIn(lines())) {
    batch.push(event);
    if (batch.length >= BROUGHT_AT_ONCE) await bring();
  }
  await bring();
  return fresh;
}

const BROUGHT_AT_ONCE = 500;

async function* eventsIn(lines: AsyncIterable<string>): AsyncGenerator<FloorEvent> {
  let number = 0;
  let counted: number | undefined;
  for await (const line of lines) {
    number += 1;
    const value = parsed(line);
    if (number === 1 && !headSchema.safeParse(value).success) throw new NoCopy('this file is no copy of a ledger');
    if (number === 1) continue;
    if (counted !== undefined) throw new NoCopy(`line ${number} of this copy stands behind its end`);
    const tail = tailSchema.safeParse(value);
    if (tail.success) {
      counted = tail.data.events;
      continue;
    }
    const event = eventSchema.safeParse(value);
    if (!event.success) throw new NoCopy(`line ${number} of this copy is no event`);
    yield event.data;
  }
  if (counted !== number - 2) throw new NoCopy('this copy of a ledger is not whole: its end is missing');
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

const plain = ({ seq: _, ...event }: KeptEvent): FloorEvent => event;
