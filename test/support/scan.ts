import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader';
import type { Picture } from './pdf.ts';

const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(wasm).buffer } });

/** The symbols that a decoder of its own finds in a picture, top to bottom, then left to right. */
export async function scan(
  picture: Picture,
  formats: ReaderOptions['formats'] = ['Code128'],
): Promise<readonly { readonly text: string; readonly x: number; readonly y: number }[]> {
  const { width, height, grey } = picture;
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (const [at, value] of grey.entries()) data.fill(value, 4 * at, 4 * at + 3);
  const image = { data, width, height, colorSpace: 'srgb' } as ImageData;
  const found = await readBarcodes(image, { formats, maxNumberOfSymbols: 255, tryHarder: true });
  return found
    .filter(each => each.isValid)
    .map(({ text, position }) => ({ text, x: position.topLeft.x, y: position.topLeft.y }))
    .sort((a, b) => a.y - b.y || a.x - b.x);
}
