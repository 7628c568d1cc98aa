import type { Progress } from './floor/progress.ts';

/** As many pieces are named in a line; the pages name them all. */
const PIECES_MAX = 8;

/** How far a job is, for a terminal. */
export const printProgress = (progress: Progress): string =>
  [
    `${progress.job} ${progress.name}, revision ${progress.revision}`,
    `doors ${progress.doors.done}/${progress.doors.total}   steps ${progress.steps.done}/${progress.steps.total}   minutes left ${progress.minutesLeft}`,
    ...forecastLines(progress),
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

const forecastLines = ({ forecast }: Progress): readonly string[] =>
  forecast === undefined
    ? []
    : [
        `done about ${forecast.finish}, in ${forecast.days} working days${forecast.planned === '' ? '' : `; planned for ${forecast.planned}`}`,
      ];

function batchLines({ batch }: Progress): readonly string[] {
  if (batch === undefined) return ['everything is glued up'];
  return [
    `next glue-up: batch ${batch.number}, ${batch.doors.join(', ')}`,
    ...(batch.waitsFor.length === 0 ? ['  ready'] : []),
    ...batch.waitsFor.map(({ operation, pieces }) => `  waits for ${operation}: ${someOf(pieces)}`),
  ];
}

const someOf = (pieces: readonly string[]): string =>
  pieces.length <= PIECES_MAX
    ? pieces.join(', ')
    : `${pieces.slice(0, PIECES_MAX).join(', ')} and ${pieces.length - PIECES_MAX} more`;

function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  const widths = head.map((title, at) => Math.max(title.length, ...rows.map(row => row[at]?.length ?? 0)));
  return [head, ...rows].map(row =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}
