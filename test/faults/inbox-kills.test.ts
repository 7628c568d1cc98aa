import { expect, it } from 'vitest';
import { killInbox } from './inbox-kills.ts';

it('an inbox that is killed eight times files every workbook exactly once', async () => {
  const { lost } = await killInbox(8, 1);
  expect(lost).toEqual([]);
});
