import type { DoorSet } from './calculate/door-set.ts';
import { calculate } from './calculate/index.ts';
import { type Diagnostic, isError } from './diagnostics/diagnostic.ts';
import { importJob } from './import/index.ts';
import type { Job } from './import/job.ts';
import type { Workbook } from './import/workbook.ts';
import { layOut } from './layout/index.ts';
import type { ShopPlan } from './layout/shop-plan.ts';
import type { Solver } from './layout/solver.ts';
import { type RenderAssets, type RenderOptions, render } from './render/index.ts';
import type { Packet, Revision } from './render/packet.ts';

/** A workbook's way through the program: its four stages on one page. Read this file first. */
export async function buildPacket(workbook: Workbook, tools: Tools): Promise<Built | Refused> {
  const planned = planJob(workbook, tools.solver);
  if (planned.kind === 'refused') return planned;
  const packet = await render(
    { ...planned, revision: tools.revision(planned), program: tools.program },
    await tools.assets(planned.job),
    tools.options,
  );
  const diagnostics = [...planned.diagnostics, ...packet.diagnostics];
  if (diagnostics.some(isError)) return { kind: 'refused', job: planned.job, diagnostics };
  return { ...planned, kind: 'built', packet: packet.value, diagnostics };
}

/** The three stages before paper: enough to say everything that is wrong with a workbook. */
export function planJob(workbook: Workbook, solver: Solver): Planned | Refused {
  const job = importJob(workbook);
  const doorSet = calculate(job.value);
  const found = [...job.diagnostics, ...doorSet.diagnostics];
  // Wood is cut from the packet, so one error anywhere means that nothing is laid out at all.
  if (found.some(isError)) return { kind: 'refused', job: job.value, diagnostics: found };
  const plan = layOut(job.value, doorSet.value, solver);
  const diagnostics = [...found, ...plan.diagnostics];
  if (diagnostics.some(isError)) return { kind: 'refused', job: job.value, diagnostics };
  return { kind: 'planned', job: job.value, doorSet: doorSet.value, plan: plan.value, diagnostics };
}

/** What the stages are given from outside, so that the same workbook with the same tools is the same packet. */
export type Tools = {
  readonly solver: Solver;
  readonly assets: (job: Job) => Promise<RenderAssets>;
  /** Asked once the job is planned: what changed since an earlier revision is known only then. */
  readonly revision: (planned: Planned) => Revision;
  /** The program's version, as the packet prints it. */
  readonly program: string;
  readonly options: RenderOptions;
};

export type Planned = {
  readonly kind: 'planned';
  readonly job: Job;
  readonly doorSet: DoorSet;
  readonly plan: ShopPlan;
  readonly diagnostics: readonly Diagnostic[];
};

export type Built = Omit<Planned, 'kind'> & { readonly kind: 'built'; readonly packet: Packet };

/** Nothing was built: what has to be mended first, and the job as far as it could be read. */
export type Refused = {
  readonly kind: 'refused';
  readonly job: Job;
  readonly diagnostics: readonly Diagnostic[];
};
