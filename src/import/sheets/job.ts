import type { Diagnosed, Diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Shop } from '../../trade/shop.ts';
import { shopDefaults } from '../../trade/shop-defaults.ts';
import type { Units } from '../../units/read-length.ts';
import { choice, complain, isComplaint, note, type Reader, text, writtenIn } from '../cells.ts';
import { complaintAt, type Fact, readFacts } from '../facts.ts';
import type { DefaultUsed, Job } from '../job.ts';
import { date } from '../quantities.ts';
import type { Setting } from '../setting.ts';
import { textUsed } from '../standard.ts';
import type { Sheet } from '../workbook.ts';
import { MINUTES_SETTINGS, SETTINGS } from './shop.ts';

/** The job's own facts, as the Job sheet names them. The sheet may state settings of the shop, too. */
export const JOB_FACTS = {
  units: { name: 'Units', also: ['Unit', 'Measure', 'Unidades'], explains: 'What a bare number means.' },
  number: {
    name: 'Job number',
    also: ['Number', 'Job', 'Job no', 'Job #', 'Número', 'Número de trabajo'],
    explains: 'Names the job’s folder and stands on every page.',
  },
  name: { name: 'Job name', also: ['Name', 'Title', 'Nombre'], explains: 'What the job is called.' },
  customer: { name: 'Customer', also: ['Client', 'For', 'Cliente'], explains: 'Whose it is.' },
  dueDate: {
    name: 'Due date',
    also: ['Due', 'Deadline', 'Wanted by', 'Fecha de entrega'],
    explains: 'When the last door must hang: 2026-03-31.',
  },
  paper: { name: 'Paper', also: ['Paper size', 'Papel'], explains: 'What the packet is printed on.' },
  language: { name: 'Language', also: ['Idioma'], explains: 'Of the packet: en, es.' },
  note: { name: 'Note', also: ['Notes', 'Remark', 'Nota'], explains: 'Printed on the cover.' },
} as const;

export type JobFacts = {
  readonly own: Pick<Job, 'number' | 'name' | 'customer' | 'note' | 'units' | 'dueDate' | 'paper' | 'language'>;
  readonly shop: Shop;
  readonly defaults: readonly DefaultUsed[];
};

/** Job and Shop together. What the Job sheet sets of the shop holds for this job, over what the Shop sheet sets. */
export function readJobFacts(
  file: string,
  jobSheet: Sheet | undefined,
  shopSheet: Sheet | undefined,
): Diagnosed<JobFacts> {
  const stated = readFacts(jobSheet, ALL);
  const shopStated = readFacts(shopSheet, SHOP_SETTINGS);
  const units = readFact(stated.value, JOB_FACTS.units, UNITS, 'inch');
  const own = ownFacts(stated.value, units.value ?? 'inch', file);
  const settings = [...shopStated.value, ...stated.value].filter(isSetting);
  const shop = settle(shopDefaults(own.value.facts.units, own.value.facts.paper), settings, own.value.facts.units);
  const defaults = [
    ...(units.value === undefined ? [textUsed('Job', JOB_FACTS.units.name, 'inch')] : []),
    ...own.value.defaults,
    ...defaultsOf(shop.value, settings),
  ];
  return {
    value: { own: own.value.facts, shop: shop.value, defaults },
    diagnostics: [stated, shopStated, units, own, shop].flatMap(each => each.diagnostics),
  };
}

type Known = { readonly name: string; readonly also: readonly string[] };

const SHOP_SETTINGS: readonly Setting[] = [...SETTINGS, ...MINUTES_SETTINGS];
const ALL: readonly (Known | Setting)[] = [...Object.values(JOB_FACTS), ...SHOP_SETTINGS];

const UNITS = choice<Units>({
  inch: ['inches', 'in', '"', 'imperial', 'pulgadas'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters', 'metric', 'milímetros'],
});
const PAPER = choice<Job['paper']>({ letter: ['us letter', '8.5 x 11', 'carta'], A4: ['a 4'] });
const LANGUAGE = choice<Job['language']>({ en: ['english', 'inglés'], es: ['spanish', 'español', 'castellano'] });

/** The number names the job's folder, so it must be one name of a file on any machine. */
const jobNumber: Reader<string> = cell => {
  const written = writtenIn(cell);
  if (isComplaint(written)) return written;
  const plain = /^[\p{L}\p{N}][\p{L}\p{M}\p{N} ._-]{0,39}$/u.test(written) && !/\.\.|[. ]$/.test(written);
  return plain && !DEVICE.test(written) ? written : complain('job-number-unsafe', { typed: written });
};

/** Names that some machines keep for their devices, whatever the ending. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i;

/** A workbook without a job number is known by its file's name. */
const numberFrom = (file: string): string =>
  (/([^/\\]*?)(?:\.[^./\\]*)?$/.exec(file)?.[1] ?? '')
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N} _-]+/gu, '-')
    .replace(/^[^\p{L}\p{N}]+|[-_ ]+$/gu, '')
    .slice(0, 40)
    .trim() || 'job';

function ownFacts(
  stated: readonly Fact<Known>[],
  units: Units,
  file: string,
): Diagnosed<{ readonly facts: JobFacts['own']; readonly defaults: readonly DefaultUsed[] }> {
  const number = readFact(stated, JOB_FACTS.number, jobNumber, units);
  const jobName = readFact(stated, JOB_FACTS.name, text(200), units);
  const customer = readFact(stated, JOB_FACTS.customer, text(200), units);
  const dueDate = readFact(stated, JOB_FACTS.dueDate, date, units);
  const paper = readFact(stated, JOB_FACTS.paper, PAPER, units);
  const language = readFact(stated, JOB_FACTS.language, LANGUAGE, units);
  const remark = readFact(stated, JOB_FACTS.note, note, units);
  const facts = {
    number: number.value ?? numberFrom(file),
    name: jobName.value ?? '',
    customer: customer.value ?? '',
    note: remark.value ?? '',
    units,
    dueDate: dueDate.value,
    paper: paper.value ?? (units === 'inch' ? 'letter' : 'A4'),
    language: language.value ?? 'en',
  } as const;
  const defaults = (['number', 'paper', 'language'] as const)
    .filter(key => !stated.some(fact => fact.of === JOB_FACTS[key]))
    .map(key => textUsed('Job', JOB_FACTS[key].name, facts[key]));
  const all = [number, jobName, customer, dueDate, paper, language, remark];
  return { value: { facts, defaults }, diagnostics: all.flatMap(each => each.diagnostics) };
}

function readFact<T>(
  stated: readonly Fact<Known>[],
  of: Known,
  reader: Reader<T>,
  units: Units,
): Diagnosed<T | undefined> {
  const fact = stated.find(each => each.of === of);
  if (fact === undefined) return { value: undefined, diagnostics: [] };
  const value = reader({ value: fact.value, units });
  return isComplaint(value)
    ? { value: undefined, diagnostics: [complaintAt(fact, value)] }
    : { value, diagnostics: [] };
}

const isSetting = (fact: Fact<Known | Setting>): fact is Fact<Setting> => 'put' in fact.of;

/** In the order of the table of settings and never of the rows: a preset of labels comes before single numbers of it. */
function settle(usual: Shop, stated: readonly Fact<Setting>[], units: Units): Diagnosed<Shop> {
  let shop = usual;
  const diagnostics: Diagnostic[] = [];
  for (const setting of SHOP_SETTINGS) {
    for (const fact of stated.filter(each => each.of === setting)) {
      const put = setting.put(shop, { value: fact.value, units });
      if (isComplaint(put)) diagnostics.push(complaintAt(fact, put));
      else shop = put;
    }
  }
  return { value: shop, diagnostics };
}

const defaultsOf = (shop: Shop, stated: readonly Fact<Setting>[]): readonly DefaultUsed[] =>
  SHOP_SETTINGS.flatMap(setting => {
    const value = stated.some(fact => fact.of === setting) ? undefined : setting.value(shop);
    return value === undefined ? [] : [{ sheet: 'Shop', name: setting.name, value }];
  });
