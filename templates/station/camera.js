import { openBackCamera, torchOf } from './back-camera.js';
import { eachOnce } from './each-once.js';
import { readTag } from './tag-reader.js';
import { isSymbol, tidy } from './wedge.js';

/** From one look at the picture to the next, at least: some looks a second, and a phone that stays cool. */
const LOOK_MS = 150;

/**
 * Reads tags from the camera's living picture from when somebody starts it until it is stopped or the page is hidden.
 * Where the browser does not allow that, it says why.
 * @param {{ [key: string]: string }} words
 * @param {(code: string) => void} onCode
 */
export function offerCamera(words, onCode) {
  const panel = /** @type {HTMLElement} */ (document.getElementById('camera'));
  const says = /** @type {HTMLElement} */ (document.getElementById('camera-says'));
  const video = /** @type {HTMLVideoElement} */ (document.getElementById('camera-picture'));
  const start = /** @type {HTMLButtonElement} */ (document.getElementById('camera-start'));
  const stop = /** @type {HTMLButtonElement} */ (document.getElementById('camera-stop'));
  const torch = /** @type {HTMLButtonElement} */ (document.getElementById('camera-torch'));
  /** Of the camera that is shown, or asked for; undefined where it is off. @type {AbortController | undefined} */
  let showing;

  const open = async () => {
    const own = new AbortController();
    showing = own;
    panel.hidden = false;
    start.hidden = true;
    torch.hidden = true;
    stop.focus();
    says.textContent = words['camera.asking'] ?? '';
    try {
      const stream = await openBackCamera(words, own.signal);
      if (own.signal.aborted) return;
      says.textContent = words['camera.aim'] ?? '';
      for (const track of stream.getVideoTracks()) {
        track.addEventListener('ended', () => own === showing && close(words['camera.stopped'] ?? ''));
        offerTorch(track);
      }
      video.srcObject = stream;
      await look(own.signal);
    } catch (why) {
      if (own === showing) close(/** @type {Error} */ (why).message);
    }
  };

  /** @param {string} why */
  const close = why => {
    const focused = panel.contains(document.activeElement);
    showing?.abort();
    showing = undefined;
    video.srcObject = null;
    panel.hidden = true;
    start.hidden = false;
    if (focused) start.focus();
    says.textContent = why;
  };

  const seen = async () => {
    if (video.readyState < HTMLMediaElement.HAVE_CURRENT_DATA) return undefined;
    return readTag(video).catch(() => {
      throw new Error(words['camera.noReader']);
    });
  };

  /** @param {AbortSignal} closed */
  const look = async closed => {
    const isNew = eachOnce();
    while (!closed.aborted) {
      const pause = new Promise(passed => setTimeout(passed, LOOK_MS));
      const code = tidy((await seen()) ?? '');
      // The symbol of a carton in the background is nobody's scan.
      if (!closed.aborted && isSymbol(code) && isNew(code, performance.now())) onCode(code);
      await pause;
    }
  };

  /** @param {MediaStreamTrack} track */
  const offerTorch = track => {
    const light = torchOf(track);
    torch.hidden = light === undefined;
    torch.setAttribute('aria-pressed', 'false');
    torch.onclick = async () => {
      const on = torch.getAttribute('aria-pressed') !== 'true';
      if (await light?.(on)) torch.setAttribute('aria-pressed', String(on));
    };
  };

  start.addEventListener('click', () => void open());
  stop.addEventListener('click', () => close(''));
  window.addEventListener('keydown', ({ key }) => key === 'Escape' && showing && close(''));
  document.addEventListener(
    'visibilitychange',
    () => document.hidden && showing && close(words['camera.stopped'] ?? ''),
  );
}
