import { type Length, nm } from '../units/length.ts';
import type { FactWorking } from './door-set.ts';

/** A fact that is a length. */
type LengthFact = FactWorking & { readonly value: { readonly unit: 'length'; readonly value: Length } };

/**
 * √(W² + H²), to the nearest nanometre: what the tape must show from corner to corner when the door is square.
 * Worked out in whole numbers, since the squares of nanometres are far beyond what a float holds exactly.
 */
export function diagonal(door: { readonly width: Length; readonly height: Length }): LengthFact {
  return {
    kind: 'fact',
    of: 'diagonal',
    formula: '√(W² + H²)',
    inputs: [
      { symbol: 'W', value: { unit: 'length', value: door.width } },
      { symbol: 'H', value: { unit: 'length', value: door.height } },
    ],
    value: { unit: 'length', value: rootOfSquares(door.width, door.height) },
  };
}

export function rootOfSquares(width: Length, height: Length): Length {
  const squared = BigInt(width) * BigInt(width) + BigInt(height) * BigInt(height);
  let root = BigInt(Math.round(Math.sqrt(Number(squared))));
  while (root * root > squared) root -= 1n;
  while ((root + 1n) * (root + 1n) <= squared) root += 1n;
  // (root + 1/2)² = root² + root + 1/4: beyond it the next whole number is nearer.
  return nm(Number(squared - root * root > root ? root + 1n : root));
}
