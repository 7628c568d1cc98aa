/** Longest side that a picture is read at: a phone's full picture only takes longer. */
const PIXELS_MAX = 1600;

/** @typedef {{ read: (code: string | undefined) => void, failed: (why: unknown) => void }} Waiting */

/** @type {{ worker: Worker, waiting: Waiting[] } | undefined} */
let reader;

/**
 * The symbol nearest the middle of a picture; undefined where there is none. It is read in a worker, so that the page
 * answers meanwhile. Rejects where the reader cannot be fetched; the next picture tries again.
 * @param {Blob | HTMLVideoElement} picture
 * @returns {Promise<string | undefined>}
 */
export async function readTag(picture) {
  const pixels = await pixelsOf(picture);
  reader ??= openReader();
  const { worker, waiting } = reader;
  return new Promise((read, failed) => {
    waiting.push({ read, failed });
    worker.postMessage(pixels, [pixels.data.buffer]);
  });
}

/** The reader is only fetched when somebody uses a camera. */
function openReader() {
  /** Who waits for an answer: the worker answers in the order in which it was asked. @type {Waiting[]} */
  const waiting = [];
  const worker = new Worker('/files/tag-reader-worker.js', { type: 'module' });
  /** @param {unknown} why */
  const giveUp = why => {
    worker.terminate();
    if (reader?.worker === worker) reader = undefined;
    for (const { failed } of waiting.splice(0)) failed(why);
  };
  worker.addEventListener('error', giveUp);
  worker.addEventListener('message', ({ data }) => {
    if (data.failed === undefined) waiting.shift()?.read(data.code);
    else giveUp(data.failed);
  });
  return { worker, waiting };
}

/** @param {Blob | HTMLVideoElement} picture */
async function pixelsOf(picture) {
  const source = picture instanceof Blob ? await createImageBitmap(picture) : picture;
  const [width, height] =
    source instanceof ImageBitmap ? [source.width, source.height] : [source.videoWidth, source.videoHeight];
  const scale = Math.min(1, PIXELS_MAX / Math.max(width, height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('no canvas');
  context.drawImage(source, 0, 0, canvas.width, canvas.height);
  return context.getImageData(0, 0, canvas.width, canvas.height);
}
