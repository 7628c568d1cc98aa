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

/**
 * The data of the templates of some sheets, in their order. A sheet to which the job gives nothing to say is not printed;
 * the cover lists those that are. `codes`: only the tags of these.
 */
export function viewsOf(
  names: readonly SheetName[],
  draft: Draft,
  codes: ReadonlySet<string> | undefined,
): ReadonlyMap<SheetName, View<object>> {
  const printed = new Set(names);
  const rest = names.flatMap(name => {
    const view = name === 'cover' ? undefined : viewOf(name, draft, printed, codes);
    return view === undefined ? [] : [[name, view] as const];
  });
  return new Map(
    names.includes('cover')
      ? [
          [
            'cover',
            cover(
              draft,
              rest.map(([name]) => name),
            ),
          ],
          ...rest,
        ]
      : rest,
  );
}

function viewOf(
  name: Exclude<SheetName, 'cover'>,
  draft: Draft,
  printed: ReadonlySet<SheetName>,
  codes: ReadonlySet<string> | undefined,
): View<object> | undefined {
  switch (name) {
    case 'safety':
      return safety(draft);
    case 'schedule':
      return schedule(draft, printed.has('doors'));
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
      return tags(draft, codes);
  }
}
