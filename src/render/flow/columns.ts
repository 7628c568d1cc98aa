/**
 * Widths of columns in points from what the markup says of them: lengths as they are, `auto` as wide as the longest
 * line of the column (narrower where there is no room), the rest of the room in shares, each wide enough for a few words
 * before `auto` is as wide as it likes. Columns never need more than the room; `reason` says why they are not as wide as
 * asked.
 */
export function columnWidths(
  asked: readonly string[],
  room: number,
  natural: (column: number) => number,
  pointsOf: (text: string) => number,
): { readonly widths: readonly number[]; readonly reason: string | undefined } {
  const kinds = asked.map(text => (text === 'auto' ? 'auto' : text.endsWith('*') ? 'share' : 'fixed'));
  const fixed = asked.map((text, column) => (kinds[column] === 'fixed' ? pointsOf(text) : 0));
  const shares = asked.map((text, column) => (kinds[column] === 'share' ? Number(text.slice(0, -1) || 1) : 0));
  const wished = asked.map((_, column) => (kinds[column] === 'auto' ? natural(column) : 0));

  const least = COLUMN_MIN * kinds.filter(kind => kind !== 'fixed').length;
  const free = room - sum(fixed);
  if (free < least - 0.01) {
    const widths = asked.map(() => room / asked.length);
    return {
      widths,
      reason: `its columns need ${Math.ceil(sum(fixed) + least)} points, and ${Math.floor(room)} are there`,
    };
  }
  const autosLeast = COLUMN_MIN * kinds.filter(kind => kind === 'auto').length;
  const kept = Math.min(forShares(shares, free - sum(wished), natural), free - autosLeast);
  const autos = squeezed(wished, free - kept);
  const rest = free - sum(autos);
  const widths = asked.map((_, column) => {
    const share = shares[column] ?? 0;
    return (fixed[column] ?? 0) + (autos[column] ?? 0) + (share === 0 ? 0 : (rest * share) / sum(shares));
  });
  return { widths, reason: undefined };
}

/** What columns of shares want at least: that of their longest line, or a few words of it. */
function forShares(shares: readonly number[], left: number, natural: (column: number) => number): number {
  const total = sum(shares);
  const least = shares.map((share, column) => {
    if (share === 0 || (left * share) / total >= SHARE_MIN) return 0;
    return Math.max(COLUMN_MIN, Math.min(SHARE_MIN, natural(column))) / share;
  });
  return total * Math.max(0, ...least);
}

/** A code, or the longest words of a role, in points. */
const SHARE_MIN = 80;

/** Room for a letter of any style but the largest, with padding. */
const COLUMN_MIN = 24;

/** What is wished where it fits; else the widest give way first, down to the same width for all of those. */
function squeezed(wished: readonly number[], room: number): readonly number[] {
  if (sum(wished) <= room) return wished;
  const widest = [...wished].sort((a, b) => b - a);
  for (const [count, next] of widest.entries()) {
    const narrower = widest.slice(count + 1);
    const limit = (room - sum(narrower)) / (count + 1);
    if (limit >= (narrower[0] ?? 0)) return wished.map(width => Math.min(width, limit));
    if (next === 0) break;
  }
  return wished.map(() => room / wished.length);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);
