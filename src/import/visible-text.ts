/**
 * Text as a person sees it: one way of writing each letter (Unicode NFC), single spaces, and nothing that cannot be
 * seen. `changed` tells that something other than spaces was taken out: control characters, marks that turn the
 * direction of writing around, halves of characters. Markup stays: it is text like any other.
 */
export function visibleText(written: string): { readonly text: string; readonly changed: boolean } {
  const spaced = written.replace(SPACES, ' ');
  const seen = spaced.replace(UNSEEN, '');
  return { text: seen.normalize('NFC').replace(/ {2,}/g, ' ').trim(), changed: seen !== spaced };
}

/** Line breaks, tabs and the spaces of typesetters count as one space; a byte-order mark as nothing. */
const SPACES = /[\s\u00a0\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]+/g;

/** Controls, marks that join, part or turn around what stands beside them, and what is no character at all. */
const UNSEEN =
  /[\p{Cc}\p{Cs}\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u206f\ufeff\ufff9-\ufffc]|[\ufdd0-\ufdef]|[\ufffe\uffff]/gu;
