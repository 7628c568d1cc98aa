import { type ChildProcess, fork } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { isError } from '../diagnostics/diagnostic.ts';
import { importJob } from '../import/index.ts';
import type { Reading, Result, Workbooks } from '../inbox/ports.ts';
import type { Answered, Asked } from './inbox-builder.ts';
import { type Rehearsal, rehearse } from './inbox-rehearsal.ts';
import { readWorkbook } from './workbook-file.ts';

/** A job that takes longer is broken: the largest takes a fraction of it. */
const BUILD_SECONDS_MAX = 300;

/** Reads workbooks here, and builds them in so many processes. */
export function openBuilders(builders: number, templates: string | undefined): Workbooks {
  const all = new Set<ChildProcess>();
  // One is ready before the first workbook comes: loading takes a part of the wait for its packet.
  const idle = [startBuilder(all)];
  const rehearsal = rehearseBeside(all, idle, templates);
  return {
    builders,
    read: (bytes, name) => {
      rehearsal.giveUp();
      return readDropped(bytes, name);
    },
    build: async order => {
      rehearsal.giveUp();
      const child = idle.pop() ?? startBuilder(all);
      try {
        const result = await ask(child, { order, templates });
        idle.push(child);
        return result;
      } catch (broken) {
        // It may be in any state; the next order gets another.
        child.kill();
        throw broken;
      }
    },
    close: async () => {
      rehearsal.giveUp();
      for (const child of all) child.kill();
    },
  };
}

/** In a builder beside the one that is ready, and takes its place once it has rehearsed: so no order ever waits for it. */
function rehearseBeside(all: Set<ChildProcess>, idle: ChildProcess[], templates: string | undefined): Rehearsal {
  let understudy: ChildProcess | undefined;
  return rehearse({
    read: readDropped,
    build: order => {
      understudy ??= startBuilder(all);
      return ask(understudy, { order, templates });
    },
    ready: () => {
      for (const child of idle.splice(0)) child.kill();
      if (understudy !== undefined) idle.push(understudy);
    },
    broken: () => void understudy?.kill(),
  });
}

/** What is damaged may be a copy that has not ended; what is unreadable otherwise stays so. */
async function readDropped(bytes: Uint8Array, name: string): Promise<Reading> {
  const { value, diagnostics } = await readWorkbook(name, bytes);
  if (value !== undefined) return { kind: 'workbook', job: importJob(value).value.number };
  const mayEnd = diagnostics.some(
    each => isError(each) && (each.code === 'file-damaged' || each.code === 'file-empty'),
  );
  return { kind: mayEnd ? 'half' : 'unreadable' };
}

function ask(child: ChildProcess, asked: Asked): Promise<Result> {
  return new Promise((resolve, reject) => {
    const settle = (): void => {
      clearTimeout(deadline);
      child.off('message', answered);
      child.off('exit', ended);
    };
    const answered = (answer: Answered): void => {
      settle();
      if (answer.kind === 'result') resolve(answer.result);
      else reject(new Error(answer.reason));
    };
    const ended = (): void => {
      settle();
      reject(new Error('the builder ended before its packet was done'));
    };
    const deadline = setTimeout(() => {
      settle();
      child.kill('SIGKILL');
      reject(new Error(`not built in ${BUILD_SECONDS_MAX} s`));
    }, BUILD_SECONDS_MAX * 1000);
    child.on('message', answered);
    child.on('exit', ended);
    child.send(asked);
  });
}

/** The compiled builder beside this file, or its source where this file itself is run from source. */
function startBuilder(all: Set<ChildProcess>): ChildProcess {
  const isSource = import.meta.url.endsWith('.ts');
  const program = fileURLToPath(new URL(`./inbox-builder.${isSource ? 'ts' : 'js'}`, import.meta.url));
  const execArgv = isSource ? ['--import', pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href] : [];
  const child = fork(program, { execArgv, serialization: 'advanced', stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  all.add(child);
  child.once('exit', () => all.delete(child));
  return child;
}
