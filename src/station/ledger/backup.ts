import { z } from 'zod';
import { type FloorEvent, happeningSchema, type KeptEvent } from '../floor/event.ts';
import { allEvents, type Ledger } from './ledger.ts';

/** The first line of a copy: what it is, so that nothing else is taken for one. */
const HEAD = { ledger: 'stilebook floor events', version: 1 } as const;

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

const headSchema = z.object({ ledger: z.literal(HEAD.ledger), version: z.literal(HEAD.version) });
const tailSchema = z.object({ events: z.int() });

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
 * Brings the events of a copy into a ledger, in their order; those that are there already are left alone. Throws
 * `NoCopy`, with nothing brought in, where the copy is not whole. Returns how many were new.
 */
export async function restore(ledger: Ledger, copy: string): Promise<number> {
  const events = eventsIn(copy);
  let fresh = 0;
  for (let at = 0; at < events.length; at += RESTORED_AT_ONCE)
    fresh += (await ledger.append(events.slice(at, at + RESTORED_AT_ONCE))).length;
  return fresh;
}

const RESTORED_AT_ONCE = 500;

function eventsIn(copy: string): readonly FloorEvent[] {
  const lines = copy.trimEnd().split('\n').map(parsed);
  if (!headSchema.safeParse(lines[0]).success) throw new NoCopy('this file is no copy of a ledger');
  const tail = tailSchema.safeParse(lines.at(-1));
  const body = lines.slice(1, -1);
  if (!tail.success || tail.data.events !== body.length)
    throw new NoCopy('this copy of a ledger is not whole: its end is missing');
  return body.map((line, at) => {
    const event = eventSchema.safeParse(line);
    if (!event.success) throw new NoCopy(`line ${at + 2} of this copy is no event`);
    return event.data;
  });
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    return undefined;
  }
}

const plain = ({ seq: _, ...event }: KeptEvent): FloorEvent => event;
