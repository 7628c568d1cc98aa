import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { barHeight, isLarge, type LabelGrid, labelGrid, moduleFor } from './label-grid.ts';
import { type LargeTag, largeTag } from './large-tags.ts';
import { type SmallTag, smallTag } from './small-tags.ts';
import { tagWords } from './tag-words.ts';

/** tags.hbs: a label for each part, each door and each offcut that is kept; `small` or `large`, as the labels are. */
export type TagsView = {
  readonly grid: LabelGrid;
  /** Width of a bar code's module, and height of its bars, as the markup takes them. */
  readonly module: string;
  readonly bars: string;
  readonly small: readonly SmallTag[];
  readonly large: readonly LargeTag[];
};

/** `codes`: only the tags of these, where some are printed again. */
export function tags(draft: Draft, codes: ReadonlySet<string> | undefined): View<TagsView> | undefined {
  const wanted = tagWords(draft).filter(({ code }) => codes === undefined || codes.has(code));
  if (wanted.length === 0) return undefined;
  const { labels } = draft.job.shop;
  const figures = new Map<string, Figure>();
  return {
    figures,
    data: {
      grid: labelGrid(labels),
      module: moduleFor(labels),
      bars: barHeight(labels),
      small: isLarge(labels) ? [] : wanted.map(words => smallTag(words, draft)),
      large: isLarge(labels) ? wanted.map(words => largeTag(words, figures, draft)) : [],
    },
  };
}
