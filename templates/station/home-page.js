import { listenForCodes, tidy } from './wedge.js';

/** A poster scanned on the first page picks its station. */
const page = document.getElementById('home');
/** @type {{ [barcode: string]: { kind: string, station?: string } }} */
const posters = JSON.parse(page?.dataset['posters'] ?? '{}');
const input = document.createElement('input');

listenForCodes(input, code => {
  const poster = posters[tidy(code)];
  if (poster?.station !== undefined) location.assign(`/station/${encodeURIComponent(poster.station)}`);
});

const last = localStorage.getItem('station');
for (const link of document.querySelectorAll('a.station')) {
  if (last === null || link.getAttribute('href') !== `/station/${encodeURIComponent(last)}`) continue;
  link.setAttribute('aria-current', 'true');
  // A device that is opened anew goes on at its station; whoever comes from there wants another one.
  if (sessionStorage.getItem('tab') === null) location.replace(`/station/${encodeURIComponent(last)}`);
}
