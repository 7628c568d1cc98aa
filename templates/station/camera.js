/** Longest side that a picture is read at: a phone's full picture only takes longer. */
const PIXELS_MAX = 1600;

/**
 * The first symbol in a picture; undefined where there is none. The reader is only fetched when somebody takes a
 * picture.
 * @param {Blob} picture
 * @returns {Promise<string | undefined>}
 */
export async function readPicture(picture) {
  const address = '/files/zxing/reader/index.js';
  /** @type {typeof import('zxing-wasm/reader')} */
  const reader = await import(address);
  reader.prepareZXingModule({ overrides: { locateFile: () => '/files/zxing/zxing_reader.wasm' } });
  const found = await reader.readBarcodes(await pixelsOf(picture), {
    formats: ['Code128', 'DataMatrix'],
    tryHarder: true,
    maxNumberOfSymbols: 1,
  });
  return found[0]?.text;
}

/** @param {Blob} picture */
async function pixelsOf(picture) {
  const bitmap = await createImageBitmap(picture);
  const scale = Math.min(1, PIXELS_MAX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(bitmap.width * scale);
  canvas.height = Math.round(bitmap.height * scale);
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('no canvas');
  context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}
