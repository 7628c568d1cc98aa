/** @typedef {{ [key: string]: string }} Words */

/**
 * Whether the host can be reached, in the bar at the top.
 * @param {'ok' | 'lost' | 'unpaired'} state
 * @param {Words} words
 */
export function showLink(state, words) {
  const link = document.getElementById('link');
  const text = document.getElementById('link-words');
  if (link === null || text === null || link.dataset['state'] === state) return;
  link.dataset['state'] = state;
  text.textContent = words[`link.${state}`] ?? '';
  const pair = document.getElementById('pair-link');
  if (pair !== null) pair.hidden = state !== 'unpaired';
}

/**
 * Hears from the host when something changed (in `job`, or anywhere) and when it is back after a break.
 * @param {string} job
 * @param {Words} words
 * @param {() => void} changed
 */
export function followHost(job, words, changed) {
  const source = new EventSource(`/live?job=${encodeURIComponent(job)}`);
  source.addEventListener('open', () => {
    showLink('ok', words);
    changed();
  });
  source.addEventListener('changed', changed);
  source.addEventListener('error', () => showLink('lost', words));
}
