/** Enough pixels for the bars of a tag that fills half of the picture; more only takes longer. */
const WANTED = { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 720 } };

/**
 * The picture of the camera at the back, or of the one that there is; it is let go of when `closed` says so. Rejects
 * with a sentence for a person where there is none.
 * @param {{ [key: string]: string }} words
 * @param {AbortSignal} closed
 * @returns {Promise<MediaStream>}
 */
export async function openBackCamera(words, closed) {
  // Browsers only show a camera to pages that nobody on the way can have changed.
  if (!window.isSecureContext || navigator.mediaDevices === undefined) throw new Error(words['camera.insecure']);
  const stream = await navigator.mediaDevices.getUserMedia({ video: WANTED, audio: false }).catch(why => {
    throw new Error(whyNot(why.name, words));
  });
  const letGo = () => {
    for (const track of stream.getTracks()) track.stop();
  };
  if (closed.aborted) letGo();
  else closed.addEventListener('abort', letGo);
  return stream;
}

/** @param {string} name @param {{ [key: string]: string }} words */
function whyNot(name, words) {
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return words['camera.refused'];
    case 'NotFoundError':
    case 'OverconstrainedError':
      return words['camera.none'];
    default:
      return words['camera.busy'];
  }
}

/**
 * How to switch the light beside a camera, undefined where it has none; tells whether it was switched.
 * @param {MediaStreamTrack} track
 * @returns {((on: boolean) => Promise<boolean>) | undefined}
 */
export function torchOf(track) {
  const can = /** @type {{ torch?: boolean }} */ (track.getCapabilities?.() ?? {});
  if (can.torch !== true) return undefined;
  return on =>
    track.applyConstraints({ advanced: [/** @type {MediaTrackConstraintSet} */ ({ torch: on })] }).then(
      () => true,
      () => false,
    );
}
