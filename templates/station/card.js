import { sign } from './signs.js';

/** @typedef {import('../../src/station/web/card.ts').Card} Card */
/** @typedef {{ [key: string]: string }} Words */

/**
 * Shows a card in `place`. Everything is put in as text: what a workbook says is never markup.
 * @param {HTMLElement} place
 * @param {Card} card
 * @param {Words} words
 * @param {{ yes: (reason: string) => void, no: () => void, job: (job: string) => void, undo?: () => void }} act
 */
export function showCard(place, card, words, act) {
  place.dataset['tone'] = card.tone;
  place.setAttribute('aria-label', [card.title, card.headline].filter(each => each !== '').join(': '));
  const title = make('h2', '', sign(card.tone), make('span', '', card.title));
  const body = make('div', 'body');
  if (card.headline !== '') body.append(make('p', 'headline', card.headline));
  if (card.size !== '') body.append(make('p', 'size', card.size));
  if (card.next !== '') body.append(make('p', 'next', `${words['card.next']}: ${card.next}`));
  if (card.settings.length > 0) body.append(facts('settings', card.settings));
  if (card.reminders.length > 0) body.append(list('reminders', card.reminders));
  if (card.facts.length > 0) body.append(facts('facts', card.facts));
  if (card.lines.length > 0) body.append(list('lines', card.lines));
  const ways = waysOf(card, words, act);
  if (ways.childElementCount > 0) body.append(ways);
  place.replaceChildren(title, body);
}

/** What a screen reader says of it. @param {Card} card */
export const spoken = card => [card.title, card.headline, card.size, card.next].filter(each => each !== '').join('. ');

/**
 * @param {Card} card
 * @param {Words} words
 * @param {Parameters<typeof showCard>[3]} act
 */
function waysOf(card, words, act) {
  const ways = make('div', 'ways');
  if (card.question !== undefined) {
    const { yes, no, reasons } = card.question;
    if (reasons.length === 0) ways.append(button(yes, () => act.yes('')));
    else
      ways.append(
        make('p', 'why', `${yes}. ${words['card.reason']}`),
        ...reasons.map(each => button(each, () => act.yes(each))),
        otherReason(words, act.yes),
      );
    ways.append(button(no, act.no));
  }
  for (const { job, label } of card.jobs) ways.append(button(label, () => act.job(job)));
  for (const { href, label } of card.links) {
    const link = make('a', 'button', label);
    link.setAttribute('href', href);
    link.setAttribute('target', '_blank');
    ways.append(link);
  }
  if (card.kept && act.undo !== undefined) ways.append(button(words['card.undo'] ?? '', act.undo));
  return ways;
}

/** @param {Words} words @param {(reason: string) => void} yes */
function otherReason(words, yes) {
  const form = make('form', 'row');
  const input = document.createElement('input');
  input.type = 'text';
  input.maxLength = 200;
  input.setAttribute('aria-label', words['card.otherReason'] ?? '');
  input.placeholder = words['card.otherReason'] ?? '';
  form.append(
    input,
    button(words['card.yes'] ?? '', () => undefined, 'submit'),
  );
  form.addEventListener('submit', event => {
    event.preventDefault();
    if (input.value.trim() !== '') yes(input.value.trim());
  });
  return form;
}

/** @param {string} label @param {() => void} act @param {'button' | 'submit'} type */
function button(label, act, type = 'button') {
  const made = document.createElement('button');
  made.type = type;
  made.textContent = label;
  made.addEventListener('click', act);
  return made;
}

/** @param {string} name @param {readonly { label: string, text: string }[]} all */
const facts = (name, all) =>
  make('dl', name, ...all.map(({ label, text }) => make('div', '', make('dt', '', label), make('dd', '', text))));

/** @param {string} name @param {readonly string[]} lines */
const list = (name, lines) => make('ul', name, ...lines.map(line => make('li', '', line)));

/** @param {string} tag @param {string} name @param {...(string | Node)} content */
export function make(tag, name, ...content) {
  const made = document.createElement(tag);
  if (name !== '') made.className = name;
  made.append(...content);
  return made;
}
