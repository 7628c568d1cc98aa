/** What the bench of pages calls of the program, bundled as it ships: what runs the sources wraps every function. */
export { bind } from '../../src/render/bind.ts';
export { openDraw } from '../../src/render/draw.ts';
export { prepare } from '../../src/render/fill.ts';
export { openFlow } from '../../src/render/flow.ts';
export { openFonts } from '../../src/render/fonts.ts';
export { readMarkup } from '../../src/render/markup.ts';
export { openSymbols } from '../../src/render/symbols.ts';
export { meaningOf } from '../../src/render/typeset.ts';
