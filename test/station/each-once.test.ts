import { describe, expect, it } from 'vitest';

const page = new URL('../../templates/station/each-once.js', import.meta.url).href;
const { eachOnce } = (await import(page)) as { readonly eachOnce: () => (code: string, at: number) => boolean };

/** Sightings as `tag@seconds`; those that are let through. */
function letThrough(sightings: string): string {
  const isNew = eachOnce();
  const seen = sightings.split(' ').map(each => each.split('@'));
  return seen
    .filter(([code = '', at = '']) => isNew(code, Number(at) * 1000))
    .map(each => each.join('@'))
    .join(' ');
}

describe('a tag before the camera is answered once', () => {
  it.each([
    ['A@0 A@0.2 A@0.4', 'A@0', 'as long as it stays'],
    ['A@0 A@3 A@6 A@9 A@12', 'A@0', 'also where it is out of sight for a moment, again and again'],
    ['A@0 A@4 A@8.1', 'A@0 A@8.1', 'until it was away for more than four seconds'],
    ['A@0 B@1 B@2 A@3 A@4', 'A@0 B@1 A@3', 'until another one was there'],
  ])('%s → %s: %s', (sightings, answered) => {
    expect(letThrough(sightings)).toBe(answered);
  });
});
