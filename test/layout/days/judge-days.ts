import type { Job } from '../../../src/import/job.ts';
import type { FinishPlan, GlueUpBatch, Operation, Schedule, Task } from '../../../src/layout/shop-plan.ts';

type Laid = {
  readonly operations: readonly Operation[];
  readonly batches: readonly GlueUpBatch[];
  readonly finish: FinishPlan;
};
type Stretch = { readonly what: string; readonly from: number; readonly to: number; readonly amount: number };

/**
 * Says what is wrong with the days of a job. Written from the shop's point of view and without a line of the scheduler:
 * it puts every task on the clock of the wall, by the language's own dates, and looks who stands where.
 */
export function judgeDays(schedule: Schedule, job: Job, laid: Laid): readonly string[] {
  const wrong: string[] = [];
  const { work, gluing, finishing } = job.shop;
  const day = work.hoursPerDay * 3600;
  const dawns = dawnsOf(schedule, work);
  const clock = ({ day: at, second }: Task['starts']): number => (dawns[at] ?? Number.NaN) + second;
  const tasks = new Map(schedule.tasks.map(task => [task.id, task]));
  if (tasks.size !== schedule.tasks.length) wrong.push('two tasks have the same name');

  for (const { day: at, date } of schedule.days) {
    const dawn = new Date((dawns[at] ?? Number.NaN) * 1000);
    if (date !== undefined && date !== dawn.toISOString().slice(0, 10)) wrong.push(`day ${at} is not ${date}`);
  }
  for (const task of schedule.tasks) {
    for (const id of task.after) {
      const before = tasks.get(id);
      if (before === undefined) wrong.push(`${task.id} waits for ${id}, which nobody does`);
      else if (clock(task.starts) < clock(before.ends) + before.wait)
        wrong.push(`${task.id} starts before ${id} is over`);
    }
    if (clock(task.over) !== clock(task.ends) + task.wait) wrong.push(`${task.id} does not wait as long as it says`);
    if (task.work > 0 && [task.starts, task.ends].some(({ second }) => second < 0 || second > day)) {
      wrong.push(`${task.id} is done out of hours`);
    }
  }
  wrong.push(...handsOf(schedule, day));

  const during = (amount: (task: Task) => number, held: boolean): readonly Stretch[] =>
    schedule.tasks.map(task => ({
      what: task.id,
      from: clock(task.starts),
      to: clock(task.ends) + (held ? task.wait : 0),
      amount: amount(task),
    }));
  wrong.push(
    ...tooMuch(
      'clamps',
      during(task => task.takes.clamps, true),
      gluing.clamps,
    ),
  );
  wrong.push(
    ...tooMuch(
      'rack slots',
      during(task => task.takes.rackSlots, true),
      finishing.rackSlots,
    ),
  );
  wrong.push(
    ...tooMuch(
      'spray places',
      during(task => task.takes.sprayPlaces, false),
      finishing.sprayPlaces,
    ),
  );
  wrong.push(...whatIsLeftOut(schedule, job, laid));
  return wrong;
}

/** The start of work on each day, in seconds of the wall's clock: the shop's weekdays, its days off left out. */
function dawnsOf(schedule: Schedule, work: Job['shop']['work']): readonly number[] {
  const dawns: number[] = [];
  const days = Math.max(0, ...schedule.tasks.map(task => task.ends.day)) + 1;
  for (let dawn = Date.parse(work.startDate ?? '1970-01-05') / 1000; dawns.length < days; dawn += 86_400) {
    const date = new Date(dawn * 1000);
    const isOff = work.daysOff.includes(date.toISOString().slice(0, 10));
    if (work.weekdays.includes(date.getUTCDay() || 7) && !isOff) dawns.push(dawn);
  }
  return dawns;
}

/** Nobody does two things at once; work goes on where it stopped; the helper alone does only what he may. */
function handsOf(schedule: Schedule, day: number): readonly string[] {
  const wrong: string[] = [];
  const turns = schedule.days.flatMap(({ day: at, entries }) =>
    entries.map(entry => ({ ...entry, from: at * day + entry.starts, to: at * day + entry.ends })),
  );
  for (const turn of turns) {
    if (turn.starts < 0 || turn.ends > day || turn.starts >= turn.ends) wrong.push(`${turn.task} is done out of hours`);
    if (turn.person < 1 || turn.person > schedule.people) wrong.push(`nobody is person ${turn.person}`);
  }
  for (let person = 1; person <= schedule.people; person += 1) {
    const own = turns.filter(turn => turn.person === person).sort((a, b) => a.from - b.from);
    for (const [at, turn] of own.entries()) {
      const next = own[at + 1];
      if (next !== undefined && next.from < turn.to)
        wrong.push(`${person} is at ${turn.task} and ${next.task} at once`);
    }
  }
  for (const task of schedule.tasks) {
    const own = turns.filter(turn => turn.task === task.id).sort((a, b) => a.from - b.from);
    if (own.reduce((sum, turn) => sum + turn.to - turn.from, 0) !== task.work)
      wrong.push(`${task.id} is not done whole`);
    const starts = task.starts.day * day + task.starts.second;
    const ends = task.ends.day * day + task.ends.second;
    if (own.some((turn, at) => turn.from !== (own[at - 1]?.to ?? starts))) wrong.push(`${task.id} stops on the way`);
    if ((own.at(-1)?.to ?? ends) !== ends) wrong.push(`${task.id} does not end when it says`);
    const alone = schedule.people > 1 && own.some(turn => turn.person === schedule.people);
    if (alone && !task.helperAlone) wrong.push(`the helper alone does ${task.id}`);
  }
  return wrong;
}

/** What is in use changes only where a stretch begins. */
function tooMuch(of: string, stretches: readonly Stretch[], there: number): readonly string[] {
  return stretches.flatMap(({ what, from, to, amount }) => {
    if (amount === 0 || from === to) return [];
    const used = stretches.reduce((sum, each) => sum + (each.from <= from && from < each.to ? each.amount : 0), 0);
    return used > there ? [`at the start of ${what} ${used} ${of} are in use, there are ${there}`] : [];
  });
}

/** Every operation takes at least its minutes, every batch its clamps, every coat of every door is laid. */
function whatIsLeftOut(schedule: Schedule, job: Job, laid: Laid): readonly string[] {
  const wrong: string[] = [];
  for (const { id, minutes } of laid.operations) {
    const own = schedule.tasks.filter(task => task.operation === id);
    const worked = own.reduce((sum, task) => sum + task.work, 0);
    // Each task is rounded to the second.
    const least = (minutes.setup + minutes.pieces) * 60 - own.length;
    if (worked < least) wrong.push(`${id} takes ${worked} s and wants ${least} s`);
  }
  for (const batch of laid.batches) {
    const task = schedule.tasks.find(each => each.operation === 'glue-up' && each.go === batch.number);
    if (task === undefined) wrong.push(`batch ${batch.number} is not glued up`);
    else if (task.takes.clamps < Math.min(batch.clamps, job.shop.gluing.clamps)) wrong.push(`${task.id} lacks clamps`);
  }
  for (const step of laid.finish.steps) {
    const coats = schedule.tasks.filter(task => task.coat?.step === step.number);
    const laidOn = coats.reduce((sum, task) => sum + task.doors.length, 0);
    const doors = new Set(coats.flatMap(task => task.doors)).size;
    const wanted = step.kind === 'wait' ? doors : doors * step.coats;
    if (laidOn !== wanted) wrong.push(`${step.name} is laid on ${laidOn} times, not ${wanted}`);
    const wet = step.kind !== 'sand' && step.kind !== 'wait';
    if (wet && coats.some(task => task.takes.rackSlots < task.doors.length)) wrong.push(`${step.name} has no rack`);
  }
  return wrong;
}
