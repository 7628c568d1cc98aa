import { forShortWork } from '../engine.ts';
import type { Order, Result } from '../inbox/ports.ts';
import { buildDropped } from './inbox-build.ts';

/** One order to a builder, and what it answers: the result, or why there is none. */
export type Asked = { readonly order: Order; readonly templates: string | undefined };
export type Answered =
  | { readonly kind: 'result'; readonly result: Result }
  | { readonly kind: 'broken'; readonly reason: string };

forShortWork();

// A process of its own, so that many are built at once, and none can take the inbox with it.
process.on('message', ({ order, templates }: Asked) => {
  void buildDropped(order, templates).then(
    result => answer({ kind: 'result', result }),
    (failure: unknown) =>
      answer({ kind: 'broken', reason: failure instanceof Error ? failure.message : String(failure) }),
  );
});
process.on('disconnect', () => process.exit());

const answer = (answered: Answered): void => void process.send?.(answered);
