import { expect, it } from 'vitest';
import { crashDatabase } from './crashed-database.ts';

it('a host outlives a database that is killed under it, and loses no scan that it answered', async () => {
  const { refused, lost } = await crashDatabase(1, 20);
  expect(lost).toEqual([]);
  expect(refused).toBeGreaterThan(0);
});
