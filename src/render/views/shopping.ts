import type { ShoppingLine } from '../../layout/shop-plan.ts';
import { printMoney } from '../../units/money.ts';
import type { Draft, View } from '../draft.ts';
import { grouped } from '../order.ts';
import { decimal } from '../quantities.ts';

/** shopping.hbs: what to buy, and what the job costs. */
export type ShoppingView = {
  readonly groups: readonly { readonly title: string; readonly lines: readonly ShoppingRow[] }[];
  readonly totals: readonly { readonly label: string; readonly amount: string }[];
  /** Empty where every line has its price. */
  readonly unpriced: string;
};
export type ShoppingRow = {
  readonly item: string;
  readonly unit: string;
  readonly needed: string;
  readonly onHand: string;
  readonly buy: string;
  readonly amount: string;
  readonly details: readonly string[];
};

export function shopping(draft: Draft): View<ShoppingView> | undefined {
  const { shopping: list } = draft.plan;
  if (list.lines.length === 0) return undefined;
  const totals = [
    { label: draft.say('shopping.materials'), amount: list.materials },
    {
      label: draft.say('shopping.labour', { hours: decimal(list.labour.minutes / 60, 1) }),
      amount: list.labour.amount,
    },
    { label: draft.say('shopping.margin'), amount: list.margin },
    { label: draft.say('shopping.total'), amount: list.total },
  ];
  return {
    figures: new Map(),
    data: {
      groups: [...grouped(list.lines, line => line.kind)].map(([kind, lines]) => ({
        title: draft.say(`kind.${kind}`),
        lines: lines.map(line => row(line, draft)),
      })),
      totals: totals.map(({ label, amount }) => ({ label, amount: printMoney(amount) })),
      unpriced: list.unpriced === 0 ? '' : draft.say('shopping.unpriced', { count: list.unpriced }),
    },
  };
}

const row = (line: ShoppingLine, draft: Draft): ShoppingRow => ({
  item: itemName(line, draft),
  onHand: line.onHand === 0 ? '' : decimal(line.onHand, 1),
  amount: line.amount === undefined ? '' : printMoney(line.amount),
  details: details(line, draft),
  ...amounts(line, draft),
});

/** What the workbook names has its name; what the job needs besides has a word. */
function itemName({ kind, item, detail }: ShoppingLine, { say, job }: Draft): string {
  if (kind === 'glue' || kind === 'glass') return say(`item.${kind}`);
  if (detail.kind === 'discs') return say('item.disc', { grit: detail.grit });
  const isUnlisted = kind === 'hardware' && !job.hardware.some(each => each.item === item);
  return isUnlisted ? say(`item.${item}`) : item;
}

/** Volumes in the units of the job, all else in the units that it is bought in. */
function amounts(line: ShoppingLine, { say, quantities }: Draft): Pick<ShoppingRow, 'needed' | 'buy' | 'unit'> {
  const { detail } = line;
  if (detail.kind !== 'volume') {
    return { needed: decimal(line.needed, 1), buy: decimal(line.buy, 1), unit: say(`unit.${line.unit}`) };
  }
  const bought = detail.containers.reduce((sum, { count, volume }) => sum + count * volume, 0);
  return { needed: quantities.volume(detail.volume), buy: quantities.volume(bought as typeof detail.volume), unit: '' };
}

function details({ detail }: ShoppingLine, { say, size, quantities }: Draft): readonly string[] {
  const sizes = (
    all: readonly {
      width: Parameters<typeof size>[0];
      length: Parameters<typeof size>[0];
      count: number;
      onHand: boolean;
    }[],
  ) =>
    all.map(each =>
      say(each.onHand ? 'shopping.size-on-hand' : 'shopping.size', {
        count: each.count,
        width: size(each.width),
        length: size(each.length),
      }),
    );
  switch (detail.kind) {
    case 'boards':
      return [
        say('shopping.boards', {
          net: decimal(detail.netBoardFeet, 1),
          bought: decimal(detail.boughtBoardFeet, 1),
          yield: decimal(detail.yield * 100, 0),
        }),
        ...sizes(detail.sizes),
      ];
    case 'sheets':
      return sizes(detail.sizes);
    case 'packs':
      return [say('shopping.pack', { pieces: detail.pieces, pack: detail.pack })];
    case 'volume':
      return detail.containers.map(({ count, volume }) =>
        say('shopping.containers', { count, volume: quantities.volume(volume) }),
      );
    case 'discs':
      return [say('shopping.discs', { area: quantities.area(detail.area) })];
    case 'panes':
      return detail.panes.map(pane =>
        say('shopping.pane', { count: pane.count, width: size(pane.width), height: size(pane.height) }),
      );
    case 'none':
      return [];
  }
}
