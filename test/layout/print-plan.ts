import type { Operation, OperationId, Setup } from '../../src/layout/shop-plan.ts';
import type { WoodAndWork } from '../../src/layout/wood-and-work.ts';
import type { Length } from '../../src/units/length.ts';
import { printLength } from '../../src/units/print-length.ts';
import { length } from '../support/length.ts';

/** A set-up as one line: its settings with where they are measured from, then its pieces with what is done to each. */
export const printSetup = ({ settings, group, pieces }: Setup): string => {
  const set = settings.map(({ of, value, from }) => `${of} ${print(value)} from ${from}`).join(', ');
  const run = pieces.map(({ code, runs }) => `${code}${runs[0] === 'once' ? '' : ` (${runs.join(', ')})`}`).join(' · ');
  const where = group === undefined ? '' : `${group.kind} ${group.name}, `;
  return `${where}${set || 'nothing set'}: ${run}`;
};

export const setupsOf = (plan: Pick<WoodAndWork, 'operations'>, id: OperationId): readonly Setup[] =>
  operationOf(plan, id)?.setups ?? [];

export const operationOf = (plan: Pick<WoodAndWork, 'operations'>, id: OperationId): Operation | undefined =>
  plan.operations.find(operation => operation.id === id);

export const print = (value: Length): string => printLength(value, { units: 'inch', increment: length('1/64') });
