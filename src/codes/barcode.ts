import { hash } from 'node:crypto';
import { ALPHABET, checkCharacter } from './check-character.ts';
import type { Barcode } from './codes.ts';

/** Which job a tag belongs to: a foreign tag among the sticks is known at the first scan. */
const JOB_MARK_LENGTH = 3;
/** 36^7 marks: two of 3,000 codes of a job share one in fewer than one job in 17,000, and then it is reported. */
const CODE_MARK_LENGTH = 7;

/**
 * The symbol of anything that carries a code: part, door, set-up. Job mark and code mark are digests of the job number
 * and the code, so they stay when rows are sorted or added. 11 characters of Code 128 at a module of 0.25 mm with their
 * quiet zones take 44 mm: they fit a 50 mm label.
 */
export const barcodeFor = (jobNumber: string, code: string): Barcode => barcodesOf(jobNumber)(code);

/** The symbols of one job: its mark is worked out once, however many codes it has. */
export function barcodesOf(jobNumber: string): (code: string) => Barcode {
  const job = jobMark(jobNumber);
  return code => {
    const payload = job + mark(`code ${jobNumber} ${code}`, CODE_MARK_LENGTH);
    return (payload + (checkCharacter(payload) ?? '')) as Barcode;
  };
}

export const jobMark = (jobNumber: string): string => mark(`job ${jobNumber}`, JOB_MARK_LENGTH);

/** `length` characters that depend on every character of `text`: its digest modulo 36^length, lowest figure first. */
function mark(text: string, length: number): string {
  let rest = remainder(hash('sha256', text, 'binary'), 36 ** length);
  let characters = '';
  while (characters.length < length) {
    characters += PAIRS[rest % PAIRS.length];
    rest = Math.floor(rest / PAIRS.length);
  }
  // Of an odd length, the last pair ends in a nought that is none of its characters.
  return characters.slice(0, length);
}

/** Two figures at a time: half as many strings are made and thrown away. */
const PAIRS = [...ALPHABET].flatMap(second => [...ALPHABET].map(first => first + second));

/**
 * Bytes as one number, modulo a divisor below 2^37: two at a time, so that every step is exact. So is the quotient, which
 * is below 2^16 and never so near to a whole number that it is rounded up to it; `%` of such numbers takes twice as long.
 */
function remainder(bytes: string, divisor: number): number {
  let rest = 0;
  for (let at = 0; at < bytes.length; at += 2) {
    const next = rest * 0x10000 + bytes.charCodeAt(at) * 0x100 + bytes.charCodeAt(at + 1);
    rest = next - Math.floor(next / divisor) * divisor;
  }
  return rest;
}
