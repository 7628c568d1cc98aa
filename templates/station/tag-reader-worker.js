/** Reads pictures away from the page: each message is one picture, each answer its symbol's text, or why there is none. */

/** Symbols that are told apart in one picture: a sheet of labels has more, and then the middle ones count. */
const SYMBOLS_MAX = 16;

const address = '/files/zxing/reader/index.js';
/** @type {Promise<typeof import('zxing-wasm/reader')>} */
const library = import(address).then(reader => {
  reader.prepareZXingModule({ overrides: { locateFile: () => '/files/zxing/zxing_reader.wasm' } });
  return reader;
});

self.addEventListener('message', ({ data }) => {
  read(data).then(
    code => self.postMessage({ code }),
    why => self.postMessage({ failed: String(why) }),
  );
});

/** @param {ImageData} picture */
async function read(picture) {
  const { readBarcodes } = await library;
  const found = await readBarcodes(picture, {
    formats: ['Code128', 'DataMatrix'],
    tryHarder: true,
    maxNumberOfSymbols: SYMBOLS_MAX,
  });
  const fromMiddle = found.map(({ text, position: { topLeft, bottomRight } }) => ({
    text,
    away: Math.hypot((topLeft.x + bottomRight.x - picture.width) / 2, (topLeft.y + bottomRight.y - picture.height) / 2),
  }));
  return fromMiddle.sort((a, b) => a.away - b.away)[0]?.text;
}
