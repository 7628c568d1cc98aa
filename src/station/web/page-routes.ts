import type { Context, Hono } from 'hono';
import { barcodeFor } from '../../codes/barcode.ts';
import { POSTER_ACTIONS, type Poster, posterBarcode } from '../../codes/poster.ts';
import { type Operation, onlyWaits } from '../floor/book.ts';
import { stepOf } from '../floor/piece-facts.ts';
import type { StationProgress } from '../floor/progress.ts';
import { type Shelf, splitRemake } from '../floor/shelf.ts';
import type { Shop } from './app.ts';
import { isFromHere } from './guard.ts';
import { languageOf } from './languages.ts';
import type { Pages } from './pages.ts';
import { symbolOf } from './symbol.ts';
import { sayerOf, wordsOf } from './words.ts';

export function pageRoutes(app: Hono, shop: Shop, pages: Pages): void {
  app.get('/', async c => c.html(pages('home', languageOf(c, shop), await homeData(c, shop))));
  app.get('/station/:station', c => {
    const data = scanData(c, shop, c.req.param('station'));
    return data === undefined ? c.notFound() : c.html(pages('scan', languageOf(c, shop), data));
  });
  app.get('/progress', c => c.html(pages('progress', languageOf(c, shop), progressData(c, shop))));
  app.get('/progress/:job', async c => {
    const progress = await shop.desk.progress(c.req.param('job'));
    if (progress === undefined) return c.notFound();
    return c.html(pages('progress', languageOf(c, shop), { ...progressData(c, shop), job: progress.job, progress }));
  });
  app.get('/progress/:job/body', async c => {
    const progress = await shop.desk.progress(c.req.param('job'));
    return progress === undefined ? c.notFound() : c.html(pages('progress-body', languageOf(c, shop), { progress }));
  });
  app.get('/tag/:job/:code', c => {
    const data = tagData(shop.packets.shelf(), c.req.param('job'), c.req.param('code'));
    return data === undefined ? c.notFound() : c.html(pages('tag', languageOf(c, shop), data));
  });
}

async function homeData(c: Context, shop: Shop): Promise<object> {
  const shelf = shop.packets.shelf();
  const say = sayerOf(languageOf(c, shop));
  const all: StationProgress[] = [];
  for (const job of shelf.jobs.keys()) all.push(...((await shop.desk.progress(job))?.stations ?? []));
  const stations = stationsOf(shelf).map(({ station, name }) => {
    const own = all.filter(each => each.station === station);
    return {
      station,
      name,
      pieces: own.reduce((total, each) => total + each.pieces, 0),
      minutes: own.reduce((total, each) => total + each.minutes, 0),
    };
  });
  const { pairing } = shop.guard;
  return {
    title: say('home.title'),
    onStations: true,
    stations,
    jobs: jobsOn(shelf),
    posters: JSON.stringify(postersOf(shelf)),
    problems: shop.packets.problems(),
    pairing:
      pairing !== undefined && isFromHere(c) ? { code: pairing.code(), address: shop.guard.pairAddress() } : undefined,
  };
}

function scanData(c: Context, shop: Shop, station: string): object | undefined {
  const shelf = shop.packets.shelf();
  const found = stationsOf(shelf).find(each => each.station === station);
  if (found === undefined) return undefined;
  const words = Object.entries(wordsOf(languageOf(c, shop))).filter(([key]) => /^(link|card|scan|camera)\./.test(key));
  return {
    title: found.name,
    station,
    name: found.name,
    jobs: jobsOn(shelf),
    operations: operationsAt(shelf, station).map(({ id, name }) => ({ id, name })),
    words: JSON.stringify(Object.fromEntries(words)),
    posters: JSON.stringify(postersOf(shelf)),
  };
}

function progressData(c: Context, shop: Shop): object {
  const language = languageOf(c, shop);
  const words = Object.entries(wordsOf(language)).filter(([key]) => key.startsWith('link.'));
  return {
    title: sayerOf(language)('progress.title'),
    onProgress: true,
    jobs: jobsOn(shop.packets.shelf()),
    words: JSON.stringify(Object.fromEntries(words)),
  };
}

/** The tag of any piece, and of any of its remakes. */
function tagData(shelf: Shelf, job: string, code: string): object | undefined {
  const { base, remake } = splitRemake(code);
  const book = shelf.jobs.get(job)?.book;
  const piece = book?.pieces.get(base);
  if (book === undefined || piece === undefined) return undefined;
  const barcode = barcodeFor(job, code);
  return {
    title: code,
    code,
    barcode,
    symbol: symbolOf(barcode),
    size: piece.size.join(' × '),
    name: piece.name,
    cabinet: piece.cabinet,
    door: piece.door,
    job,
    revision: book.revision,
    remake,
    first: piece.route.slice(0, 3).map(id => stepOf(book, id).operation),
  };
}

const jobsOn = (shelf: Shelf) =>
  [...shelf.jobs.values()].map(({ book }) => ({
    job: book.job,
    name: book.manifest.job.name,
    revision: book.revision,
  }));

const operationsOf = (shelf: Shelf): readonly Operation[] => [
  ...new Map(
    [...shelf.jobs.values()]
      .flatMap(({ book }) => book.manifest.operations)
      .filter(operation => !onlyWaits(operation))
      .map(operation => [operation.id, operation]),
  ).values(),
];

const operationsAt = (shelf: Shelf, station: string): readonly Operation[] =>
  operationsOf(shelf).filter(operation => operation.station === station);

const stationsOf = (shelf: Shelf): readonly { readonly station: string; readonly name: string }[] => [
  ...new Map(operationsOf(shelf).map(({ station, stationName }) => [station, { station, name: stationName }])).values(),
];

/** What is on the wall, by its symbol. */
const postersOf = (shelf: Shelf): { readonly [barcode: string]: Poster } =>
  Object.fromEntries(
    [
      ...stationsOf(shelf).map(({ station }): Poster => ({ kind: 'station', station })),
      ...POSTER_ACTIONS.map((action): Poster => ({ kind: 'action', action })),
    ].map(poster => [posterBarcode(poster), poster]),
  );
