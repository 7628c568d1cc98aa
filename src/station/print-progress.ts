import type { Progress } from './floor/progress.ts';

/** Pieces that hold up a glue-up, at most so many: the pages show them all. */
const BLOCKING_MAX = 10;

/** How far a job is, for a terminal. */
export const printProgress = (progress: Progress): string =>
  [
    `${progress.job} ${progress.name}, revision ${progress.revision}`,
    `doors ${progress.doors.done}/${progress.doors.total}   steps ${progress.steps.done}/${progress.steps.total}   minutes left ${progress.minutesLeft}`,
    '',
    ...table(
      ['operation', 'station', 'done', 'minutes left'],
      progress.operations.map(each => [
        each.name,
        each.stationName,
        `${each.done}/${each.total}`,
        String(each.minutesLeft),
      ]),
    ),
    '',
    ...batchLines(progress),
    ...progress.remakes.map(({ code, reason }) => `to be made again: ${code}${reason === '' ? '' : ` (${reason})`}`),
  ].join('\n');

function batchLines({ batch }: Progress): readonly string[] {
  if (batch === undefined) return ['everything is glued up'];
  const { blocking } = batch;
  const more = blocking.length - BLOCKING_MAX;
  return [
    `next glue-up: batch ${batch.number}, ${batch.doors.join(', ')}`,
    ...(blocking.length === 0 ? ['  ready'] : []),
    ...blocking.slice(0, BLOCKING_MAX).map(({ code, operations }) => `  waits for ${code}: ${operations.join(', ')}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  const widths = head.map((title, at) => Math.max(title.length, ...rows.map(row => row[at]?.length ?? 0)));
  return [head, ...rows].map(row =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
