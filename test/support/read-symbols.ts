import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

let prepared = false;

/** The texts of all symbols in a picture (PNG or JPEG), by a reader that shares nothing with the writer. */
export async function readSymbols(picture: Uint8Array): Promise<readonly string[]> {
  if (!prepared) {
    const file = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm');
    const wasm = await readFile(file);
    prepareZXingModule({ overrides: { wasmBinary: Uint8Array.from(wasm).buffer } });
    prepared = true;
  }
  const found = await readBarcodes(picture, { formats: ['Code128', 'DataMatrix'], tryHarder: true });
  return found.map(each => each.text);
}
