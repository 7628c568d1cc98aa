/** How many words of 32 bits so many numbers take, one bit each. */
export const wordsFor = (count: number): number => (count + 31) >> 5;

/** Sets a piece's bit among those that begin at a place. */
export function add(bits: Int32Array, from: number, lie: number): void {
  bits[from + (lie >> 5)] = (bits[from + (lie >> 5)] ?? 0) | (1 << (lie & 31));
}

/** Whether a piece's bit is set among those that begin at a place. */
export const isAmong = (bits: Int32Array, from: number, lie: number): boolean =>
  ((bits[from + (lie >> 5)] ?? 0) & (1 << (lie & 31))) !== 0;

/** Takes a piece's bit away. */
export function strike(bits: Int32Array, from: number, lie: number): void {
  bits[from + (lie >> 5)] = (bits[from + (lie >> 5)] ?? 0) & ~(1 << (lie & 31));
}
