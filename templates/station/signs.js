/** A sign for each tone, drawn: it needs no font that has it, and nobody needs to see colours. */
const SHAPES = {
  go: 'M4 13l5 6L20 5',
  ask: 'M8 8.5a4.2 4.2 0 1 1 6 3.8c-1.3.7-2 1.5-2 3M12 20v.1',
  stop: 'M5 5l14 14M19 5L5 19',
  note: 'M12 10.5v9M12 5v.1',
};

const SVG = 'http://www.w3.org/2000/svg';

/** @param {keyof typeof SHAPES} tone */
export function sign(tone) {
  const drawing = document.createElementNS(SVG, 'svg');
  drawing.setAttribute('class', 'sign');
  drawing.setAttribute('viewBox', '0 0 24 24');
  drawing.setAttribute('aria-hidden', 'true');
  drawing.dataset['sign'] = tone;
  const path = document.createElementNS(SVG, 'path');
  path.setAttribute('d', SHAPES[tone]);
  drawing.append(path);
  return drawing;
}
