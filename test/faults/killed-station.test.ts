import { expect, it } from 'vitest';
import { killInBurst } from './killed-station.ts';

it('a host that is killed in a burst of scans has kept every scan that it answered', async () => {
  for (const chance of [0.3, 0.8]) {
    const { scans, resent, lost } = await killInBurst(600, () => chance);
    expect(lost).toEqual([]);
    expect(scans).toBe(600);
    // The kill has to hit somebody, or it tried nothing.
    expect(resent).toBeGreaterThan(0);
  }
});
