import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { scanGrayBuffer, ZBarSymbolType } from '@undecaf/zbar-wasm';
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
  const pixels = Uint32Array.from(grey, value => 0xff000000 + value * 0x010101);
  const data = new Uint8ClampedArray(pixels.buffer);
  const image = { data, width, height, colorSpace: 'srgb' } as ImageData;
  const found = await readBarcodes(image, { formats, maxNumberOfSymbols: 255, tryHarder: true });
  return found
    .filter(each => each.isValid)
    .map(({ text, position }) => ({ text, x: position.topLeft.x, y: position.topLeft.y }))
    .sort((a, b) => a.y - b.y || a.x - b.x);
}

/** The Code 128 symbols that a second decoder finds, which shares no code with the first. */
export async function scanAgain({ width, height, grey }: Picture): Promise<readonly string[]> {
  const found = await scanGrayBuffer(Uint8Array.from(grey).buffer, width, height);
  return found.filter(each => each.type === ZBarSymbolType.ZBAR_CODE128).map(each => each.decode());
}

/** What each of the two decoders reads, sorted. */
export async function readByBoth(picture: Picture): Promise<readonly (readonly string[])[]> {
  const first = (await scan(picture)).map(each => each.text);
  return [[...new Set(first)].sort(), [...new Set(await scanAgain(picture))].sort()];
}
