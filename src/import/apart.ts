import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Answers, Request } from './apart-worker.ts';

/** What one piece of work may take. The largest workbook within the limits of `xlsx/` takes about a third of it. */
export type Limits = { readonly seconds: number; readonly heapMegabytes: number };

export const LIMITS: Limits = { seconds: 8, heapMegabytes: 320 };

/** What became of work that was done apart: its answer, or the limit that it met. */
export type Apart<T> = { readonly kind: 'done'; readonly answer: T } | { readonly kind: 'too-late' | 'too-much' };

/** Threads that wait for the next work: starting one, with the library, takes longer than most of it. */
const idle: Worker[] = [];

/** Starts a thread before its work is known: its library loads while the program does. */
export function standBy(): void {
  const worker = startWorker(LIMITS);
  worker.unref();
  idle.push(worker);
}

/**
 * Does work with the spreadsheet library in a thread of its own, so that what takes too long or too much memory can be
 * given up, and nothing else with it.
 */
export async function apart<R extends Request>(request: R, limits: Limits): Promise<Apart<Answers[R['task']]>> {
  const isUsual = limits.heapMegabytes === LIMITS.heapMegabytes;
  const worker = (isUsual ? idle.pop() : undefined) ?? startWorker(limits);
  const became = await answerOf<Answers[R['task']]>(worker, request, limits);
  worker.unref();
  if (became.kind === 'done' && isUsual) idle.push(worker);
  else void worker.terminate();
  return became;
}

function answerOf<T>(worker: Worker, request: Request, limits: Limits): Promise<Apart<T>> {
  return new Promise((resolve, reject) => {
    const stopListening = (): void => {
      clearTimeout(deadline);
      worker.off('message', answered);
      worker.off('error', failed);
    };
    const answered = (answer: T): void => {
      stopListening();
      resolve({ kind: 'done', answer });
    };
    const late = (): void => {
      stopListening();
      resolve({ kind: 'too-late' });
    };
    const failed = (failure: Error): void => {
      stopListening();
      if ('code' in failure && failure.code === 'ERR_WORKER_OUT_OF_MEMORY') resolve({ kind: 'too-much' });
      else reject(failure);
    };
    const deadline = setTimeout(late, limits.seconds * 1000);
    worker.on('message', answered);
    worker.on('error', failed);
    worker.ref();
    worker.postMessage(request);
  });
}

/** The compiled thread beside this file, or its source where this file itself is run from source. */
function startWorker(limits: Limits): Worker {
  const resourceLimits = { maxOldGenerationSizeMb: limits.heapMegabytes };
  if (!import.meta.url.endsWith('.ts')) {
    return new Worker(new URL('./apart-worker.js', import.meta.url), { resourceLimits });
  }
  const source = fileURLToPath(new URL('./apart-worker.ts', import.meta.url));
  const typescript = createRequire(import.meta.url).resolve('tsx/cjs/api');
  const start = `require(${JSON.stringify(typescript)}).register(); require(${JSON.stringify(source)});`;
  return new Worker(start, { eval: true, resourceLimits });
}
