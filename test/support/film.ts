import { createCanvas, loadImage } from '@napi-rs/canvas';

const [WIDTH, HEIGHT] = [640, 480];
const BENCH = '#b08d57';

/**
 * A film of a tag that a hand holds before a camera, picture by picture: two seconds in which the hand trembles and, for
 * a third of them, covers the tag. `picture` is a PNG of the tag.
 */
export async function filmOf(picture: Uint8Array): Promise<readonly Buffer[]> {
  const tag = await loadImage(picture);
  const [width, height] = [WIDTH * 0.8, (WIDTH * 0.8 * tag.height) / tag.width];
  return Array.from({ length: 60 }, (_, at) => {
    const canvas = createCanvas(WIDTH, HEIGHT);
    const context = canvas.getContext('2d');
    context.fillStyle = BENCH;
    context.fillRect(0, 0, WIDTH, HEIGHT);
    context.translate(WIDTH / 2 + 6 * Math.sin(at / 3), HEIGHT / 2 + 4 * Math.cos(at / 5));
    context.rotate(0.05 * Math.sin(at / 7));
    if (at < 40) context.drawImage(tag, -width / 2, -height / 2, width, height);
    return canvas.toBuffer('image/jpeg', 90);
  });
}

/** A photograph of two tags on a bench, of which only the halves with the symbols are seen: one in its middle. */
export async function photograph(middle: Uint8Array, aside: Uint8Array): Promise<Buffer> {
  const [tag, other] = [await loadImage(middle), await loadImage(aside)];
  const half = tag.height / 2;
  const canvas = createCanvas(tag.width * 1.2, half * 3);
  const context = canvas.getContext('2d');
  context.fillStyle = BENCH;
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(other, tag.width * 0.1, -half * 0.1);
  context.drawImage(tag, tag.width * 0.1, half);
  return canvas.toBuffer('image/png');
}
