import { inHours } from '../../units/duration.ts';
import type { Draft, View } from '../draft.ts';
import type { Figure } from '../figure.ts';
import { decimal } from '../quantities.ts';
import { clampsFor } from './door-sheets.ts';
import { clampSheets, type RouteSheet } from './routes.ts';

/** glue-up.hbs: what else is glued in the clamps, and then the doors that are in them together, batch by batch. */
export type GlueUpView = {
  readonly times: string;
  readonly panels: readonly RouteSheet[];
  readonly batches: readonly GlueUpBatchView[];
};
export type GlueUpBatchView = {
  readonly title: string;
  readonly clamps: string;
  readonly doors: readonly {
    readonly code: string;
    readonly size: string;
    readonly clamps: number;
    readonly diagonal: string;
    readonly tolerance: string;
    /** Holds a solid panel, which is never glued. */
    readonly loose: boolean;
  }[];
};

export function glueUp(draft: Draft): View<GlueUpView> | undefined {
  const { say, size, sizeInOne, plan, job } = draft;
  if (plan.batches.length === 0) return undefined;
  const { inClamps, beforeMachining } = job.shop.gluing;
  const figures = new Map<string, Figure>();
  const hours = (time: typeof inClamps): string => `${decimal(inHours(time), 1)} h`;
  return {
    figures,
    data: {
      panels: clampSheets(draft, figures),
      times: say('glue-up.in-clamps', { time: hours(inClamps), cure: hours(beforeMachining) }),
      batches: plan.batches.map(batch => ({
        title: say('glue-up.batch', { number: batch.number }),
        clamps: say('glue-up.clamps', { clamps: batch.clamps }),
        doors: batch.doors
          .flatMap(code => draft.doors.get(code) ?? [])
          .map(door => ({
            code: door.code,
            size: say('doors.size', { width: sizeInOne(door.width.value), height: sizeInOne(door.height.value) }),
            clamps: clampsFor(door, draft),
            diagonal: size(door.diagonal.length),
            tolerance: size(door.diagonal.tolerance),
            loose: draft.partsOf(door).some(part => part.make.kind === 'solid-panel'),
          })),
      })),
    },
  };
}
