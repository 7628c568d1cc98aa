import type { Operation, Reminder } from '../../layout/shop-plan.ts';
import type { Draft } from '../draft.ts';
import { REMINDER_DRAWINGS } from '../drawings/reminder-drawings.ts';
import type { Figure } from '../figure.ts';
import { grouped } from '../order.ts';

/** A caution as it stands at the head of a sheet. */
export type Caution = {
  readonly text: string;
  /** "Here: …", where pieces call for it; else empty. */
  readonly pieces: string;
  /** Name of its drawing, or empty. */
  readonly figure: string;
};

/** The head of a sheet: what its pieces and its work call for, beside the machine's own cautions. */
export type Careful = {
  readonly called: readonly Caution[];
  /** The name of the one drawing, which stands beside the words; else empty. */
  readonly beside: string;
  /** Names of several, which stand in a row below them. */
  readonly below: readonly string[];
};

/**
 * What an operation calls for: its own cautions, and those of its pieces, each said once with all pieces that call for
 * it. Set-ups differ in their figures; the smallest, which is the sharpest, is the one that is said. Undefined where
 * there is nothing to say. `drawing` is one more that the sheet has, or empty.
 */
export function carefulWith(
  operation: Operation,
  drawing: string,
  draft: Draft,
  figures: Map<string, Figure>,
): Careful | undefined {
  const reminders = [
    ...operation.reminders.filter(reminder => !isGeneral(reminder)),
    ...operation.setups.flatMap(setup => setup.reminders),
  ];
  const called = [...grouped(reminders, reminder => reminder.id).values()].map(alike => ({
    text: draftReminder({ ...alike[0], facts: sharpest(alike) }, draft),
    pieces: here([...new Set(alike.flatMap(reminder => reminder.pieces))], draft),
    figure: drawingOf(alike[0], draft, figures),
  }));
  const drawings = [...new Set([...called.map(caution => caution.figure), drawing].filter(Boolean))];
  const [only = '', ...others] = drawings;
  if (called.length === 0) return undefined;
  return others.length === 0 ? { called, beside: only, below: [] } : { called, beside: '', below: drawings };
}

/** The cautions of a machine, whatever lies on it. */
export const generalCautions = (operations: readonly Operation[], draft: Pick<Draft, 'say'>): readonly string[] => [
  ...new Set(
    operations.flatMap(({ reminders }) => reminders.filter(isGeneral).map(reminder => draftReminder(reminder, draft))),
  ),
];

export const isGeneral = ({ id }: Reminder): boolean => id.startsWith('general-') || GENERAL.has(id);

function sharpest(alike: readonly Reminder[]): Reminder['facts'] {
  const facts: { [name: string]: Reminder['facts'][string] } = {};
  for (const [name, fact] of alike.flatMap(reminder => Object.entries(reminder.facts))) {
    const known = facts[name];
    if (known === undefined || (typeof fact === 'number' && typeof known === 'number' && fact < known))
      facts[name] = fact;
  }
  return facts;
}

/** A caution with its drawing and without its pieces: for the safety sheet. */
export const cautionOnce = (reminder: Reminder, draft: Draft, figures: Map<string, Figure>): Caution => ({
  text: draftReminder(reminder, draft),
  pieces: '',
  figure: drawingOf(reminder, draft, figures),
});

export const draftReminder = (reminder: Reminder, draft: Pick<Draft, 'say'>): string =>
  draft.say(`reminder.${reminder.id}`, reminder.facts);

/** The first pieces by name, and how many more. */
function here(codes: readonly string[], { say }: Draft): string {
  if (codes.length === 0) return '';
  const named = codes.slice(0, NAMED_MAX).join(', ');
  const more = codes.length > NAMED_MAX ? ` ${say('and-more', { count: codes.length - NAMED_MAX })}` : '';
  return say('route.here', { pieces: named + more });
}

/** Two cautions that are drawn alike share their drawing. */
function drawingOf(reminder: Reminder, { say }: Draft, figures: Map<string, Figure>): string {
  const drawing = REMINDER_DRAWINGS[reminder.id];
  if (drawing === undefined) return '';
  const name = `reminder-${drawing.name}`;
  figures.set(
    name,
    drawing(key => say(`drawing.${key}`)),
  );
  return name;
}

const GENERAL: ReadonlySet<string> = new Set(['ears', 'dust', 'ventilation']);
/** A caution that names half the job is not read. */
const NAMED_MAX = 4;
