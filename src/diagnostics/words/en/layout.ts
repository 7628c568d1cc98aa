import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

const BITS = { sticking: 'sticking', coping: 'coping', rabbet: 'rabbeting' };

export const layout: Words<LayoutProblems> = {
  'rail-wider-than-sled': ({ style, width, sled }, size) => ({
    what: `${style} has rails ${size(width)} wide and the coping sled holds ${size(sled)}.`,
    mend: 'Make a deeper sled and set its width in Shop, or cope these rails before they are ripped to width.',
  }),
  'bit-too-fast': ({ bit, diameter, speed, most }, size) => ({
    what: `The ${BITS[bit]} bit (${size(diameter)}) turns at ${speed} a minute: its rim is over the limit.`,
    mend: `Set the router speed to ${most} or less in Shop, and never over what is marked on the bit.`,
  }),
  'clamps-too-few': ({ door, needs, clamps }) => ({
    what: `${door} takes ${needs} clamps and the shop has ${clamps}.`,
    mend: 'Borrow clamps for this door, or correct their number in Shop.',
  }),
  'board-thinner-than-part': ({ stock, thickness, part, style }, size) => ({
    what: `${stock} is ${size(thickness)} thick and ${style} wants parts of ${size(part)} from it.`,
    mend: 'Name a thicker stock in Styles, or correct its thickness in Stock.',
  }),
  'fence-out-of-reach': ({ code, size: wanted, reach, pieces }, size) => ({
    what: `${code}${others(pieces)} wants the fence at ${size(wanted)} and it reaches ${size(reach)}.`,
    mend: 'Cut to a clamped straightedge, or correct the rip capacity in Shop.',
  }),
  'stop-out-of-reach': ({ code, size: wanted, reach, pieces }, size) => ({
    what: `${code}${others(pieces)} wants the stop at ${size(wanted)} and it reaches ${size(reach)}.`,
    mend: 'Lengthen the stop, or mark these by tape; correct the crosscut capacity in Shop if it is wrong.',
  }),
  'barcode-shared': ({ code, other }) => ({
    what: `${code} and ${other} came out with the same barcode.`,
    mend: 'Add a character to the job number: all barcodes change with it.',
  }),
  'pot-too-small': ({ step, door, litres, pot }) => ({
    what: `One coat of ${step} on ${door} takes ${litres.toFixed(2)} l and the pot holds ${pot.toFixed(2)} l.`,
    mend: 'Set a larger pot in Shop, or fill it twice and keep a wet edge.',
  }),
  'rack-too-small': ({ step, wet, slots }) => ({
    what: `In ${step}, ${wet} doors are wet at once and the rack holds ${slots}.`,
    mend: 'The day plan coats them in several loads. Set more rack slots in Shop if there are more.',
  }),
  'prices-missing': ({ items }) => ({
    what: `The total lacks the price of ${items.join(', ')}.`,
    mend: 'Write the missing prices in Stock, Hardware, Finish and Shop.',
  }),
  'no-working-time': () => ({
    what: 'Nobody works on any day.',
    mend: 'Give working days and hours a day in Shop.',
  }),
  'due-date-missed': ({ due, done, days, people, by }) => ({
    what: `${people === 1 ? 'One person is' : `${people} people are`} done on ${done}, ${days} working ${days === 1 ? 'day' : 'days'} after ${due}. ${BOTTLENECKS[by]}.`,
    mend: 'Start earlier, agree on a later date, or give the job more of what holds it up.',
  }),
  'hardware-not-listed': ({ use, count }) => ({
    what: `The job needs ${count} ${use}${count === 1 ? '' : 's'} and Hardware lists none.`,
    mend: `Add a row to Hardware with the use ${use}.`,
  }),
  'piece-fits-no-stock': ({ code, stock, length, width }, size) => ({
    what: `${code} needs ${size(length)} × ${size(width)} and no ${stock} is that large.`,
    mend: 'Add a larger board or sheet to Stock.',
  }),
  'stock-runs-out': ({ stock, pieces }) => ({
    what: `${stock} on hand is used up, and ${pieces} pieces are not cut yet.`,
    mend: 'Write yes in Buy for a size of it, or add what is on hand.',
  }),
};

const others = (pieces: number): string => (pieces === 1 ? '' : ` (and ${pieces - 1} more)`);

const BOTTLENECKS: { readonly [By in LayoutProblems['due-date-missed']['by']]: string } = {
  'critical-path': 'The longest chain of work and waits holds it up',
  people: 'The hours of the people hold it up',
  clamps: 'The number of clamps holds it up',
  spray: 'The places to spray hold it up',
  rack: 'The drying rack holds it up',
};
