import type { Day, Task } from '../shop-plan.ts';
import type { Calendar } from './calendar.ts';

/** Somebody at a task, from one second of the working time to another. */
type Turn = { readonly task: Task; readonly person: number; readonly from: number; readonly to: number };

/**
 * Who does what on each day. Of two people or more the last is the helper, who takes what a helper may do alone; where
 * the others are needed for something else, the helper takes over such work from them.
 */
export function daysOf(tasks: readonly Task[], people: number, calendar: Calendar): readonly Day[] {
  const days: { -readonly [K in keyof Day]: Day[K] extends readonly (infer E)[] ? E[] : Day[K] }[] = [];
  for (const turn of turnsOf(tasks, people, calendar)) {
    for (const { day, ...entry } of byDay(turn, calendar)) {
      for (let at = days.length; at <= day; at += 1) days.push({ day: at, date: calendar.dateOfDay(at), entries: [] });
      days[day]?.entries.push(entry);
    }
  }
  for (const day of days) day.entries.sort((a, b) => a.starts - b.starts || a.person - b.person);
  return days;
}

function turnsOf(tasks: readonly Task[], people: number, calendar: Calendar): readonly Turn[] {
  const turns: Turn[] = [];
  /** By person: what they are at, and since when. */
  const busy: ({ readonly task: Task; readonly from: number } | undefined)[] = Array.from({ length: people });
  const helper = people - 1;
  const release = (person: number, time: number): void => {
    const at = busy[person];
    if (at !== undefined && time > at.from) turns.push({ task: at.task, person: person + 1, from: at.from, to: time });
    busy[person] = undefined;
  };
  const begin = (task: Task, time: number): void => {
    const free = busy.flatMap((at, person) => (at === undefined ? [person] : []));
    const wanted = task.helperAlone ? free.at(-1) : free.find(person => people === 1 || person !== helper);
    if (wanted !== undefined) {
      busy[wanted] = { task, from: time };
      return;
    }
    const handed = busy.findIndex((at, person) => person !== helper && at?.task.helperAlone === true);
    const given = busy[handed];
    if (given === undefined) return;
    release(handed, time);
    busy[helper] = { task: given.task, from: time };
    busy[handed] = { task, from: time };
  };
  for (const event of eventsOf(tasks, calendar)) {
    if (event.begins) begin(event.task, event.time);
    else
      release(
        busy.findIndex(at => at?.task === event.task),
        event.time,
      );
  }
  return turns;
}

/** Ends before starts of the same second, so that whoever is done is free. */
function eventsOf(tasks: readonly Task[], calendar: Calendar) {
  const time = ({ day, second }: Task['starts']): number => day * calendar.secondsADay + second;
  return tasks
    .filter(task => task.people > 0)
    .flatMap(task => [
      { task, time: time(task.starts), begins: true },
      { task, time: time(task.ends), begins: false },
    ])
    .sort(
      (a, b) =>
        a.time - b.time ||
        Number(a.begins) - Number(b.begins) ||
        (a.task.id < b.task.id ? -1 : a.task.id > b.task.id ? 1 : 0),
    );
}

/** A turn that goes on over the night is an entry on each of its days. */
function byDay({ task, person, from, to }: Turn, { secondsADay }: Calendar) {
  const entries: { day: number; task: string; starts: number; ends: number; person: number }[] = [];
  for (let day = Math.floor(from / secondsADay); day * secondsADay < to; day += 1) {
    const dawn = day * secondsADay;
    entries.push({
      day,
      task: task.id,
      starts: Math.max(0, from - dawn),
      ends: Math.min(secondsADay, to - dawn),
      person,
    });
  }
  return entries;
}
