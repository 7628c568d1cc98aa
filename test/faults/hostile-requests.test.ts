import { expect, it } from 'vitest';
import { sendHostile } from './hostile-requests.ts';

it('three hundred hostile requests break nothing, and nothing of them is kept', async () => {
  const { refused, lost } = await sendHostile(300, 1);
  expect(lost).toEqual([]);
  expect(refused).toBeGreaterThan(150);
});
