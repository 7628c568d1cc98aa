import type { Opening } from '../import/job.ts';

/** How an opening is called in what is said to people: `B2`, or `B2/A` where the cabinet has several. */
export const openingName = ({ cabinet, label }: Pick<Opening, 'cabinet' | 'label'>): string =>
  label === '' ? cabinet : `${cabinet}/${label}`;
