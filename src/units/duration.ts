import assert from 'node:assert';

declare const seconds: unique symbol;

/** A stretch of time in whole seconds of work or of waiting. */
export type Duration = number & { readonly [seconds]: true };

/** Throws on a fraction of a second: that is a bug. */
export function duration(count: number): Duration {
  assert(Number.isSafeInteger(count), `${count} is not a whole number of seconds`);
  return (count + 0) as Duration;
}

export const minutes = (count: number): Duration => duration(Math.round(count * 60));
export const hours = (count: number): Duration => duration(Math.round(count * 3600));
export const addDurations = (all: readonly Duration[]): Duration =>
  duration(all.reduce((total, each) => total + each, 0));
export const timesDuration = (count: number, each: Duration): Duration => duration(count * each);
export const inMinutes = (value: Duration): number => value / 60;
export const inHours = (value: Duration): number => value / 3600;
