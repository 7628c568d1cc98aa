import type { Draft, View } from './draft.ts';
import type { SheetName } from './sheet-names.ts';
import { hanging, inspection } from './views/by-door.ts';
import { cards } from './views/cards.ts';
import { cover } from './views/cover.ts';
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

/** What a view may look at beside the draft: which other sheets there are, and which tags are asked for. */
export type Asked = {
  readonly drafted: Draft;
  readonly contents: readonly SheetName[];
  readonly codes: ReadonlySet<string> | undefined;
};

/** The data of a sheet's template; undefined where the job gives it nothing to say, and it is not printed. */
export function viewOf(name: SheetName, { drafted, contents, codes }: Asked): View<object> | undefined {
  switch (name) {
    case 'cover':
      return cover(drafted, contents);
    case 'safety':
      return safety(drafted);
    case 'schedule':
      return schedule(drafted);
    case 'shopping':
      return shopping(drafted);
    case 'boards':
      return cutting(drafted, 'board');
    case 'sheets':
      return cutting(drafted, 'sheet');
    case 'cards':
      return cards(drafted);
    case 'routes':
      return routes(drafted);
    case 'glue-up':
      return glueUp(drafted);
    case 'finishing':
      return finishing(drafted);
    case 'inspection':
      return inspection(drafted);
    case 'hanging':
      return hanging(drafted);
    case 'doors':
      return doorSheets(drafted);
    case 'days':
      return days(drafted);
    case 'posters':
      return posters(drafted);
    case 'tags':
      return tags(drafted, codes);
  }
}
