import { createCanvas } from '@napi-rs/canvas';
import type { Picture } from './pdf.ts';

/** What happens to a tag between the printer and the scanner. */
export type Worsening = {
  /** Radius of a blur, in dots of the picture. */
  readonly blur?: number;
  /** Degrees that it is held askew. */
  readonly turn?: number;
  /** What is left between black and white, 1 for all of it. */
  readonly contrast?: number;
  /** Black or white and nothing between, as a thermal printer has it. */
  readonly oneBit?: boolean;
};

/** A picture as a poor print, or a scanner held badly, would have it. */
export function worsened(picture: Picture, { blur = 0, turn = 0, contrast = 1, oneBit = false }: Worsening): Picture {
  const sharp = oneBit ? mapped(picture, grey => (grey < 128 ? 0 : 255)) : picture;
  const turned = turn === 0 ? sharp : askew(sharp, turn);
  const blurred = blur === 0 ? turned : smoothed(smoothed(turned, blur, 1), blur, turned.width);
  return mapped(blurred, grey => Math.round(128 + (grey - 128) * contrast));
}

const mapped = (picture: Picture, change: (grey: number) => number): Picture => ({
  ...picture,
  grey: picture.grey.map(change),
});

function askew({ width, height, grey }: Picture, degrees: number): Picture {
  const source = createCanvas(width, height);
  const image = source.getContext('2d').createImageData(width, height);
  image.data.set(new Uint8ClampedArray(Uint32Array.from(grey, value => 0xff000000 + value * 0x010101).buffer));
  source.getContext('2d').putImageData(image, 0, 0);
  const canvas = createCanvas(width, height);
  const pen = canvas.getContext('2d');
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, width, height);
  pen.translate(width / 2, height / 2);
  pen.rotate((degrees * Math.PI) / 180);
  pen.drawImage(source, -width / 2, -height / 2);
  const { data } = pen.getImageData(0, 0, width, height);
  return { width, height, grey: Uint8Array.from({ length: width * height }, (_, at) => data[4 * at] ?? 255) };
}

/** The mean over `radius` neighbours on each side, along rows (step 1) or columns (step `width`). */
function smoothed({ width, height, grey }: Picture, radius: number, step: number): Picture {
  const out = new Uint8Array(grey.length);
  for (let at = 0; at < grey.length; at += 1) {
    let sum = 0;
    for (let by = -radius; by <= radius; by += 1) sum += grey[at + by * step] ?? 255;
    out[at] = sum / (2 * radius + 1);
  }
  return { width, height, grey: out };
}
