import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type Diagnosed, problem } from '../diagnostics/diagnostic.ts';
import type { Problems } from '../diagnostics/problems.ts';
import type { Request } from './read-xlsx-worker.ts';
import type { Workbook } from './workbook.ts';
import { sniff } from './xlsx/sniff.ts';

/** Without pictures, a workbook of thousands of openings has less than one. */
const BYTES_MAX = 25_000_000;
/** What one workbook may take. The largest within the limits of `xlsx/` takes about a third of it. */
export type Limits = { readonly seconds: number; readonly heapMegabytes: number };
const LIMITS: Limits = { seconds: 8, heapMegabytes: 320 };

/**
 * Reads the bytes of an .xlsx file into plain cells; undefined, with a diagnosis, where they are no such file, or one
 * that is damaged, locked, or larger than a job can be. Time and memory are bounded whatever the bytes are.
 */
export async function readXlsx(
  bytes: Uint8Array,
  file: string,
  limits: Limits = LIMITS,
): Promise<Diagnosed<Workbook | undefined>> {
  if (bytes.length > BYTES_MAX) {
    return refuse(file, 'file-too-large', { size: megabytes(bytes.length), limit: megabytes(BYTES_MAX) });
  }
  const unfit = sniff(bytes);
  if (unfit !== undefined) return { value: undefined, diagnostics: [unfit.diagnose(file)] };
  return readApart({ bytes, file }, limits);
}

const refuse = <C extends keyof Problems>(file: string, code: C, facts: Problems[C]): Diagnosed<undefined> => ({
  value: undefined,
  diagnostics: [problem(code, { kind: 'file', file }, facts)],
});

const megabytes = (bytes: number): string => `${Math.ceil(bytes / 1_000_000)} MB`;

/** Threads that wait for the next workbook: starting one takes longer than most reading. */
const idle: Worker[] = [];

async function readApart(request: Request, limits: Limits): Promise<Diagnosed<Workbook | undefined>> {
  const worker = (limits === LIMITS ? idle.pop() : undefined) ?? startWorker(limits);
  const answer = await answerOf(worker, request, limits);
  if (answer === 'too late' || answer === 'too much') {
    void worker.terminate();
    return answer === 'too late'
      ? refuse(request.file, 'file-takes-too-long', { seconds: limits.seconds })
      : refuse(request.file, 'file-takes-too-much-memory', {});
  }
  worker.unref();
  if (limits === LIMITS) idle.push(worker);
  else void worker.terminate();
  return answer;
}

type Answer = Diagnosed<Workbook | undefined> | 'too late' | 'too much';

function answerOf(worker: Worker, request: Request, limits: Limits): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const stopListening = (): void => {
      clearTimeout(deadline);
      worker.off('message', answered);
      worker.off('error', failed);
    };
    const answered = (answer: Answer): void => {
      stopListening();
      resolve(answer);
    };
    const failed = (failure: Error): void => {
      stopListening();
      if ('code' in failure && failure.code === 'ERR_WORKER_OUT_OF_MEMORY') resolve('too much');
      else reject(failure);
    };
    const deadline = setTimeout(() => answered('too late'), limits.seconds * 1000);
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
    return new Worker(new URL('./read-xlsx-worker.js', import.meta.url), { resourceLimits });
  }
  const source = fileURLToPath(new URL('./read-xlsx-worker.ts', import.meta.url));
  const typescript = createRequire(import.meta.url).resolve('tsx/cjs/api');
  const start = `require(${JSON.stringify(typescript)}).register(); require(${JSON.stringify(source)});`;
  return new Worker(start, { eval: true, resourceLimits });
}
