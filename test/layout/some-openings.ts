import fc from 'fast-check';
import type { Opening } from '../../src/import/job.ts';
import { nm } from '../../src/units/length.ts';
import { aGrid, anOpening, aSource } from '../support/a-job.ts';

/** Openings as kitchens have them, of every style that the tests' job knows: sizes in 64ths, one to three panels high. */
export const someOpenings = (most: number): fc.Arbitrary<readonly Opening[]> =>
  fc
    .array(
      fc.record({
        width: fc.integer({ min: 12 * 64, max: 24 * 64 }),
        height: fc.integer({ min: 14 * 64, max: 60 * 64 }),
        quantity: fc.integer({ min: 1, max: 3 }),
        style: fc.constantFrom('Plain', 'Slab', 'Solid', 'Glass'),
        hand: fc.constantFrom('left', 'right', 'pair'),
        high: fc.integer({ min: 1, max: 3 }),
        wide: fc.integer({ min: 1, max: 2 }),
        pull: fc.constantFrom(undefined, 'bottom' as const, 'top' as const),
      }),
      { minLength: 1, maxLength: most },
    )
    .map(all =>
      all.map(({ width, height, quantity, style, hand, high, wide, pull }, at) =>
        anOpening({
          cabinet: `C${at + 1}`,
          width: nm(width * SIXTY_FOURTH * (hand === 'pair' ? 2 : 1)),
          height: nm(height * SIXTY_FOURTH),
          quantity,
          style,
          hanging:
            hand === 'pair' ? { kind: 'pair', gap: nm(8 * SIXTY_FOURTH) } : { kind: 'single', hingeSide: sideOf(hand) },
          grid: style === 'Slab' ? aGrid(1, 1) : aGrid(high, wide),
          pull,
          from: aSource('Cabinets', at + 2),
        }),
      ),
    );

const sideOf = (hand: string): 'left' | 'right' => (hand === 'left' ? 'left' : 'right');

const SIXTY_FOURTH = 396_875;
