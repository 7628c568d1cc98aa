import type { Filed } from './filed.ts';
import type { Drop, Phase } from './step.ts';

/** The folder at a glance, for any browser: what waits, what is to mend, which packets there are. It loads itself anew. */
export function statusPage(filed: readonly Filed[], drops: readonly Drop[]): string {
  const packets = filed.filter(({ kind }) => kind === 'packet').sort(byJob);
  const toMend = filed.filter(each => each.kind === 'to-mend' && !isMended(each, packets)).sort(byTime);
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="refresh" content="5">
<meta name="viewport" content="width=device-width"><title>Inbox</title><style>${STYLE}</style></head><body>
<h1>Inbox</h1>
${section(
  'In work',
  drops.map(drop => `<tr><td>${text(drop.name)}</td><td>${PHASES[drop.phase]}</td></tr>`),
  ['Workbook', ''],
)}
${section('To mend', toMend.map(mendRow), ['Workbook', 'Job', 'What is wrong'])}
${section('Packets', packets.map(packetRow), ['Job', 'Revision', 'Packet', 'Doors', 'Warnings', 'Filed'])}
</body></html>
`;
}

const PHASES: { readonly [P in Phase]: string } = {
  settling: 'being copied',
  reading: 'being read',
  queued: 'waits for its turn',
  building: 'being built',
  stuck: 'could not be read or filed; it will be tried again',
};

const section = (title: string, rows: readonly string[], headings: readonly string[]): string =>
  rows.length === 0
    ? `<h2>${title}</h2><p>Nothing.</p>`
    : `<h2>${title}</h2><table><thead><tr>${headings.map(each => `<th scope="col">${each}</th>`).join('')}</tr></thead><tbody>
${rows.join('\n')}
</tbody></table>`;

const FINDINGS_SHOWN = 12;

function mendRow({ folder, name, job, findings }: Filed): string {
  const shown = findings
    .slice(0, FINDINGS_SHOWN)
    .map(each => `<li>${text(each)}</li>`)
    .join('');
  const more = findings.length > FINDINGS_SHOWN ? `<li>and ${findings.length - FINDINGS_SHOWN} more</li>` : '';
  return `<tr><td><a href="${link(folder)}/">${text(name)}</a></td><td>${text(job)}</td><td><ul>${shown}${more}</ul></td></tr>`;
}

const packetRow = ({ folder, job, revision, doors, warnings, filedAt }: Filed): string =>
  `<tr><td>${text(job)}</td><td>${text(revision)}</td><td><a href="${link(folder)}/packet.pdf">packet</a>, ` +
  `<a href="${link(folder)}/tags.pdf">tags</a>, <a href="${link(folder)}/">folder</a></td><td>${doors}</td><td>${warnings}</td>` +
  `<td>${text(filedAt.slice(0, 16).replace('T', ' '))}</td></tr>`;

/** A workbook that came back is done with once a packet of its job was filed after it. */
const isMended = (one: Filed, packets: readonly Filed[]): boolean =>
  one.job !== '' && packets.some(each => each.job === one.job && each.filedAt > one.filedAt);

const byJob = (a: Filed, b: Filed): number =>
  compare(a.job, b.job) || b.revision.length - a.revision.length || compare(b.revision, a.revision);
const byTime = (a: Filed, b: Filed): number => compare(b.filedAt, a.filedAt) || compare(a.folder, b.folder);
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Names are whatever somebody typed. */
const text = (written: string): string =>
  written.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

const link = (folder: string): string => text(folder.split(/[\\/]/).map(encodeURIComponent).join('/'));

const STYLE =
  'body{font:16px/1.4 sans-serif;margin:2em auto;max-width:70em;padding:0 1em;color:#111;background:#fff}' +
  'table{border-collapse:collapse;width:100%}th,td{border:1px solid #999;padding:.4em .6em;text-align:left;vertical-align:top}' +
  'td:nth-child(2){white-space:nowrap}ul{margin:0;padding-left:1.2em}th{background:#eee}';
