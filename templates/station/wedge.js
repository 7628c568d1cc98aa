/**
 * A scanner is a fast keyboard: eight to thirty milliseconds a key, then Enter, Tab or nothing. Its keys go to
 * whatever has the focus, so they are caught before anything else sees them.
 */

/** Longer between two keys, and it was a hand; or a computer that had to stop and think in the middle of a scan. */
const GAP_MS = 120;
/** Longer than this is a new beginning in any case. */
const STALL_MS = 1500;
/** A scanner that sends no Enter is done when it has been silent for so long and the check character is right. */
const SILENCE_MS = 250;

/**
 * Calls `onCode` with each code that is scanned anywhere on the page, or typed into `input`.
 * @param {HTMLInputElement} input
 * @param {(code: string) => void} onCode
 */
export function listenForCodes(input, onCode) {
  let burst = newBurst();
  /** What came shortly before the burst: the first half of a scan that stalled. */
  let before = newBurst();
  let silence = 0;
  /** When a code was taken because nothing followed: an Enter that follows after all belongs to it. */
  let silentAt = Number.NEGATIVE_INFINITY;

  /** @param {string} code */
  const take = code => {
    burst = newBurst();
    before = newBurst();
    clearTimeout(silence);
    input.value = '';
    if (code.trim() !== '') onCode(code);
  };

  /** @param {KeyboardEvent} event */
  const keyDown = event => {
    if (event.ctrlKey || event.metaKey || event.altKey || isOtherField(event.target, input)) return;
    if (event.timeStamp - burst.at > GAP_MS) {
      before = event.timeStamp - burst.at > STALL_MS ? newBurst() : joined(before, burst);
      burst = newBurst();
    }
    const inField = event.target === input;
    if (event.key === 'Enter' || event.key === 'Tab') {
      const whole = joined(before, burst);
      const code = bestOf([...(inField ? [input.value] : []), ...readings(burst), ...readings(whole)]);
      const scanned = burst.byKey.length > 2 || isSymbol(tidy(code)) || event.timeStamp - silentAt < STALL_MS;
      silentAt = Number.NEGATIVE_INFINITY;
      // A lone Enter is somebody's finger on a button: let it press the button.
      if (!scanned && !(inField && event.key === 'Enter' && code !== '')) return;
      event.preventDefault();
      event.stopPropagation();
      take(code);
      return;
    }
    if (event.key.length !== 1) return;
    burst = { at: event.timeStamp, byKey: burst.byKey + event.key, byPlace: burst.byPlace + placeOf(event) };
    if (inField) return;
    if (burst.byKey.length > 1) event.preventDefault();
    waitForSilence(() => bestOf([...readings(burst), ...readings(joined(before, burst))]));
  };

  /** @param {() => string} read */
  const waitForSilence = read => {
    clearTimeout(silence);
    silence = window.setTimeout(() => {
      const code = tidy(read());
      if (!isSymbol(code)) return;
      take(code);
      silentAt = performance.now();
    }, SILENCE_MS);
  };

  window.addEventListener('keydown', keyDown, { capture: true });
  // Tablets and scanners that type by number pad give no keys worth reading: only the field sees what arrives.
  input.addEventListener('input', () => waitForSilence(() => input.value));
  input.form?.addEventListener('submit', event => {
    event.preventDefault();
    take(input.value);
  });
}

/** @typedef {{ at: number, byKey: string, byPlace: string }} Burst */

/** @returns {Burst} */
const newBurst = () => ({ at: 0, byKey: '', byPlace: '' });

/** @param {Burst} first @param {Burst} second @returns {Burst} */
const joined = (first, second) => ({
  at: second.at,
  byKey: first.byKey + second.byKey,
  byPlace: first.byPlace + second.byPlace,
});

/**
 * A scanner set to another keyboard than the computer's presses the right places and gets the wrong letters.
 * @param {Burst} burst
 */
const readings = burst => [burst.byKey, burst.byPlace];

/**
 * The first that its check character says is right, or whose end is: a scan over what somebody began to type. The first
 * of all where none is.
 * @param {readonly string[]} candidates
 */
function bestOf(candidates) {
  const right = candidates.map(tidy).flatMap(each => [each, each.slice(-SYMBOL_LENGTH)]);
  return right.find(isSymbol) ?? candidates[0] ?? '';
}

const SYMBOL_LENGTH = 11;

/** @param {KeyboardEvent} event */
function placeOf(event) {
  return /^(?:Key|Digit|Numpad)([A-Z0-9])$/.exec(event.code)?.[1] ?? event.key;
}

/**
 * @param {EventTarget | null} target
 * @param {HTMLInputElement} input
 */
function isOtherField(target, input) {
  return target !== input && target instanceof HTMLElement && target.matches('input[type=text], textarea, select');
}

/** @param {string} code */
export const tidy = code => code.replaceAll(/\s+/g, '').toUpperCase();

const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * Whether `code` is eleven characters of which the last is the check character (ISO/IEC 7064, MOD 37,36) of the others.
 * @param {string} code
 */
export function isSymbol(code) {
  if (!/^[0-9A-Z]{11}$/.test(code)) return false;
  let product = 36;
  for (const character of code.slice(0, -1)) product = (((product + ALPHABET.indexOf(character)) % 36 || 36) * 2) % 37;
  return ALPHABET[(37 - product) % 36] === code.at(-1);
}
