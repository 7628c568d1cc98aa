import { OPERATION_IDS } from '../trade/operations.ts';
import type { Area } from '../units/area.ts';
import { type Duration, inHours } from '../units/duration.ts';
import type { Length } from '../units/length.ts';
import { litres, type Mass, pounds, type Volume } from '../units/mass.ts';
import { type Money, printMoney } from '../units/money.ts';
import { printLength } from '../units/print-length.ts';
import { lengthOf } from '../units/read-length.ts';
import * as read from './cells.ts';
import { complain, isComplaint, listed, writtenIn } from './cells.ts';
import { bare, nearest } from './columns.ts';
import type { SettingValue } from './job.ts';
import * as quantities from './quantities.ts';
import type { Kind } from './setting.ts';

const asText = (text: string): SettingValue => ({ kind: 'text', text });
const asLength = (length: Length): SettingValue => ({ kind: 'length', length });
const asNumber = (value: number): SettingValue => asText(rounded(value));
const rounded = (value: number): string => String(Math.round(value * 10_000) / 10_000);

export const LENGTH: Kind<Length> = { form: 'length', read: read.allowance, show: asLength };
export const SIZE: Kind<Length> = { form: 'length', read: read.size, show: asLength };

export const COUNT = (from: number, to: number): Kind<number> => ({
  form: `${from} to ${to}`,
  read: read.count(from, to),
  show: asNumber,
});

export const NUMBER = (from: number, to: number): Kind<number> => ({
  form: `${from} to ${to}`,
  read: read.number(from, to),
  show: asNumber,
});

/** A percentage that stays one. */
export const PERCENT: Kind<number> = {
  form: '0 % to 100 %',
  read: read.percent(100),
  show: value => asText(`${rounded(value)} %`),
};

/** A percentage that is kept as a share of one. */
export const SHARE = (to: number): Kind<number> => ({
  form: `0 % to ${to} %`,
  read: cell => {
    const value = read.percent(to)(cell);
    return isComplaint(value) ? value : value / 100;
  },
  show: value => asText(`${rounded(value * 100)} %`),
});

export const HOURS: Kind<Duration> = {
  form: '2 h, 90 min, 3 days',
  read: quantities.hoursLong,
  show: value => asText(`${rounded(inHours(value))} h`),
};

export const MONEY: Kind<Money> = { form: '12.50', read: quantities.money, show: value => asText(printMoney(value)) };

const volumeText = (value: Volume): string => `${rounded(litres(value))} l`;
export const VOLUME: Kind<Volume> = {
  form: '1 qt, 500 ml',
  read: quantities.volume,
  show: value => asText(volumeText(value)),
};
export const VOLUMES: Kind<readonly Volume[]> = {
  form: '1 pt; 1 qt; 1 gal',
  read: quantities.volumes,
  show: values => asText(values.map(volumeText).join('; ')),
};

/** One of a few words, each with its value. */
export const CHOICE = <T>(words: readonly (readonly [value: T, word: string, ...also: string[]])[]): Kind<T> => ({
  form: words.map(([, word]) => word).join(', '),
  read: cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const found = words.find(([, ...names]) => names.some(name => bare(name) === bare(written)));
    const known = words.map(([, word]) => word);
    return found === undefined
      ? complain('choice-unknown', { typed: written, nearest: nearest(written, known) ?? '', known: known.join(', ') })
      : found[0];
  },
  show: value => asText(words.find(([each]) => each === value)?.[1] ?? String(value)),
});

/** Degrees need their letter: 20 is a cold room on one scale and a hot one on the other. Kept in °C. */
export const TEMPERATURE: Kind<number> = {
  form: '70 F, 21 C',
  read: cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const [, figure = '', scale = ''] = /^([-−]?\d+\.?\d*)\s*(?:°|º|deg|degrees)?\s*([CF])$/i.exec(written) ?? [];
    const value = Number(figure.replace('−', '-'));
    const celsius = scale.toUpperCase() === 'F' ? ((value - 32) * 5) / 9 : value;
    return figure !== '' && celsius >= -20 && celsius <= 60
      ? celsius
      : complain('form-unreadable', { typed: written, form: '70 F or 21 C' });
  },
  show: value => asText(`${rounded(value)} °C`),
};

export const TIME: Kind<string> = {
  form: '07:30',
  read: cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const [, hour = '', minute = ''] = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(written) ?? [];
    return hour === ''
      ? complain('form-unreadable', { typed: written, form: '07:30' })
      : `${hour.padStart(2, '0')}:${minute}`;
  },
  show: asText,
};

export const DATE: Kind<string> = { form: '2026-03-31', read: quantities.date, show: asText };

export const DATES: Kind<readonly string[]> = {
  form: '2026-07-03; 2026-12-24',
  read: quantities.dates,
  show: days => asText(days.length === 0 ? 'none' : days.join('; ')),
};

const WEEKDAYS_SHORT = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

export const WEEKDAYS: Kind<readonly number[]> = {
  form: 'Mon, Tue, Wed, Thu, Fri',
  read: cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const days = listed(written).map(each => WEEKDAYS_SHORT.findIndex(day => bare(each).startsWith(bare(day))) + 1);
    return days.length === 0 || days.includes(0)
      ? complain('form-unreadable', { typed: written, form: 'Mon, Tue, Wed, Thu, Fri' })
      : [...new Set(days)].sort((a, b) => a - b);
  },
  show: days => asText(days.map(day => WEEKDAYS_SHORT[day - 1]).join(', ')),
};

export const OPERATIONS: Kind<readonly string[]> = {
  form: 'inspect, flush-sand',
  read: cell => {
    const written = writtenIn(cell);
    if (isComplaint(written)) return written;
    const known = OPERATION_IDS.map(id => ({ id, name: bare(id) }));
    const read = listed(written).map(each => known.find(({ name }) => name === bare(each))?.id ?? each);
    const strange = read.find(each => !OPERATION_IDS.some(id => id === each));
    return strange === undefined
      ? read
      : complain('choice-unknown', {
          typed: strange,
          nearest: nearest(strange, OPERATION_IDS) ?? '',
          known: OPERATION_IDS.join(', '),
        });
  },
  show: ids => asText(ids.length === 0 ? 'none' : ids.join(', ')),
};

export const MINUTES: Kind<{ readonly setup: number; readonly piece: number }> = {
  form: '20 + 0.5',
  read: quantities.operationMinutes,
  show: ({ setup, piece }) => asText(`${setup} + ${piece}`),
};

export const HINGE_LIMIT: Kind<{ readonly heightUpTo: Length; readonly massUpTo: Mass }> = {
  form: '60 in, 30 lb',
  read: quantities.hingeLimit,
  show: ({ heightUpTo, massUpTo }) => {
    const height = printLength(heightUpTo, { units: 'inch', increment: lengthOf('1/64') });
    return asText(`${height} in, ${rounded(pounds(massUpTo))} lb`);
  },
};

/** Of a setting that a shop need not have: nothing is shown where nothing is set. */
export const IF_SET = <T>({ form, read, show }: Kind<T>): Kind<T | undefined> => ({
  form,
  read,
  show: value => (value === undefined ? undefined : show(value)),
});

export const PRICE_BY_VOLUME: Kind<Money> = {
  form: '24/gal, 6.50/l',
  read: quantities.pricePerVolume,
  show: value => asText(`${printMoney(value)} per litre`),
};

export const PRICE_BY_AREA: Kind<Money> = {
  form: '9/ft², 97/m²',
  read: quantities.pricePerArea,
  show: value => asText(`${printMoney(value)} per m²`),
};

export const AREA: Kind<Area> = {
  form: '20 ft², 2 m²',
  read: quantities.surface,
  show: value => asText(`${rounded(value)} m²`),
};

/** Several kinds of answer that are lists may be emptied with a word. */
export const orNone = <T>(kind: Kind<readonly T[]>): Kind<readonly T[]> => ({
  ...kind,
  read: cell => {
    const written = writtenIn(cell);
    return !isComplaint(written) && bare(written) === 'none' ? [] : kind.read(cell);
  },
});
