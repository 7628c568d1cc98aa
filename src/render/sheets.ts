import type { Draft, View } from './draft.ts';
import type { SheetName } from './sheet-names.ts';
import { hanging, inspection } from './views/by-door.ts';
import { cards } from './views/cards.ts';
import { cutting } from './views/cutting.ts';
import { days } from './views/days.ts';
import { doorSheets } from './views/door-sheets.ts';
import { finishing } from './views/finishing.ts';
import { glueUp } from './views/glue-up.ts';
import { posters } from './views/posters.ts';
import { routes } from './views/routes.ts';
import { safety } from './views/safety.ts';
import { schedule } from './views/schedule.ts';
import { shopping } from './views/shopping.ts';
import { tags } from './views/tags.ts';

/** The sheets of a packet but its cover, which lists them. */
export type Inner = Exclude<SheetName, 'cover'>;

/** What a packet is to hold. */
export type Asked = {
  readonly sheets: readonly SheetName[];
  /** Only the tags of these; all of them where it is undefined. */
  readonly tagsOf?: ReadonlySet<string> | undefined;
};

/** The data of a sheet's template. A sheet to which the job gives nothing to say is not printed. */
export function viewOf(name: Inner, draft: Draft, { sheets, tagsOf }: Asked): View<object> | undefined {
  switch (name) {
    case 'safety':
      return safety(draft);
    case 'schedule':
      return schedule(draft, sheets.includes('doors'));
    case 'shopping':
      return shopping(draft);
    case 'boards':
      return cutting(draft, 'board');
    case 'sheets':
      return cutting(draft, 'sheet');
    case 'cards':
      return cards(draft);
    case 'routes':
      return routes(draft);
    case 'glue-up':
      return glueUp(draft);
    case 'finishing':
      return finishing(draft);
    case 'inspection':
      return inspection(draft);
    case 'hanging':
      return hanging(draft);
    case 'doors':
      return doorSheets(draft);
    case 'days':
      return days(draft);
    case 'posters':
      return posters(draft);
    case 'tags':
      return tags(draft, tagsOf);
  }
}
