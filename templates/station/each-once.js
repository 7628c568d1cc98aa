/** A tag out of sight for so long is shown anew when it comes back: longer than any hand shakes or covers it. */
const AWAY_MS = 4000;

/**
 * Lets each tag through once, however long it stays before the camera: again only after another tag, or after it was
 * out of sight for a while. The answer takes a tag's code and the moment at which it is seen, in milliseconds.
 * @returns {(code: string, at: number) => boolean}
 */
export function eachOnce() {
  let last = '';
  let seenAt = Number.NEGATIVE_INFINITY;
  return (code, at) => {
    const isNew = code !== last || at - seenAt > AWAY_MS;
    last = code;
    seenAt = at;
    return isNew;
  };
}
