import { type Length, nm } from '../units/length.ts';
import type { Input } from './door-set.ts';
import type { LengthFact } from './formula.ts';

/**
 * √(W² + H²), to the nearest nanometre: what the tape must show from corner to corner when the door is square.
 * Worked out in whole numbers, since the squares of nanometres are far beyond what a float holds exactly.
 */
export const diagonal = (door: { readonly width: Length; readonly height: Length }): LengthFact => ({
  kind: 'fact',
  of: 'diagonal',
  formula: '√(W² + H²)',
  inputs: INPUTS,
  given: { W: door.width, H: door.height },
  value: { unit: 'length', value: rootOfSquares(door.width, door.height) },
});

const INPUTS: readonly Input[] = [
  { symbol: 'W', unit: 'length' },
  { symbol: 'H', unit: 'length' },
];

/** The whole number nearest to √(width² + height²), of which one at least is not nothing. */
export function rootOfSquares(width: Length, height: Length): Length {
  const squared = BigInt(width) * BigInt(width) + BigInt(height) * BigInt(height);
  // The float is off by some millionths at most, so the whole number above it is never below the nearest one.
  let root = BigInt(Math.floor(Math.sqrt(Number(squared)))) + 1n;
  // (root − 1/2)² = root² − root + 1/4, and no whole number lies between root² − root and that.
  while (root * root - root >= squared) root -= 1n;
  return nm(Number(root));
}
