/** What a number format says of the number in a cell: whether it is a date, and what it writes beside it. */
export type NumberFormat = { readonly isDate: boolean; readonly written: string };

const GENERAL: NumberFormat = { isDate: false, written: '' };

/** Formats 14–22 and 45–47 are dates and times, 9 and 10 percentages: ECMA-376 part 1, 18.8.30. 27–36 and 50–58 dates, too. */
export function builtInFormat(id: number): NumberFormat {
  const isDate = (id >= 14 && id <= 22) || (id >= 27 && id <= 36) || (id >= 45 && id <= 47) || (id >= 50 && id <= 58);
  if (isDate) return { isDate, written: '' };
  return id === 9 || id === 10 ? { isDate: false, written: '%' } : GENERAL;
}

/** `0" mm"` writes ` mm`; `yyyy-mm-dd` is a date; `# ?/?` neither. Only the form for positive numbers counts. */
export function readFormat(code: string): NumberFormat {
  let written = '';
  let rest = '';
  const parts = /"([^"]*)"|\\(.)|_.|\*.|\[[^\]]*\]|(.)/gsu;
  for (const [part, quoted, escaped, plain] of (code.split(';')[0] ?? '').matchAll(parts)) {
    // What is escaped or quoted is written as it stands; elapsed time in brackets is a time.
    if (quoted !== undefined || escaped !== undefined) written += quoted ?? escaped;
    else if (plain !== undefined) rest += plain;
    else if (/^\[(h+|m+|s+)\]$/i.test(part)) rest += 'h';
  }
  if (/general|standard/i.test(rest)) return { isDate: false, written };
  if (/[ymdhs]/i.test(rest.replace(/e[+-]/gi, ''))) return { isDate: true, written: '' };
  return { isDate: false, written: rest.includes('%') ? `${written}%` : written };
}
