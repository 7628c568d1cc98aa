/**
 * The check character of ISO/IEC 7064, MOD 37,36 (a hybrid system over 0–9 A–Z): it catches every single wrong
 * character and nearly every swap of two neighbours. Returns undefined where `payload` has another character.
 */
export function checkCharacter(payload: string): string | undefined {
  let product = 36;
  for (const character of payload) {
    const value = ALPHABET.indexOf(character);
    if (value < 0) return undefined;
    product = (((product + value) % 36 || 36) * 2) % 37;
  }
  return ALPHABET[(37 - product) % 36];
}

/** Whether the last character of `code` is the check character of those before it. */
export const checks = (code: string): boolean => code.length > 1 && checkCharacter(code.slice(0, -1)) === code.at(-1);

export const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
