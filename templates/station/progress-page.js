import { followHost } from './link.js';

/** Not more often than this, however fast the shop scans. */
const PAUSE_MS = 500;

const page = document.getElementById('progress');
const live = document.getElementById('live');
const job = page?.dataset['job'] ?? '';
const words = JSON.parse(page?.dataset['words'] ?? '{}');
let timer = 0;

if (live !== null && job !== '') followHost(job, words, soon);

function soon() {
  if (timer !== 0) return;
  timer = window.setTimeout(async () => {
    timer = 0;
    await refresh().catch(() => undefined);
  }, PAUSE_MS);
}

async function refresh() {
  const response = await fetch(`/progress/${encodeURIComponent(job)}/body`);
  if (!response.ok || live === null) return;
  const fresh = new DOMParser().parseFromString(await response.text(), 'text/html');
  live.replaceChildren(...fresh.body.childNodes);
}
