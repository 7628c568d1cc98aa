import { describe, expect, it } from 'vitest';
import { barcodeFor, jobMark } from '../../src/codes/barcode.ts';
import { checks } from '../../src/codes/check-character.ts';

describe('a barcode', () => {
  it('is 11 characters of 0–9 A–Z that check', () => {
    for (let count = 0; count < 500; count += 1) {
      const code = barcodeFor('J-101', `B${count}-SL`);
      expect(code).toMatch(/^[0-9A-Z]{11}$/);
      expect(checks(code)).toBe(true);
    }
  });

  it('begins with the mark of its job', () => {
    expect(barcodeFor('J-101', 'B1-SL').slice(0, 3)).toBe(jobMark('J-101'));
    expect(jobMark('J-101')).not.toBe(jobMark('J-102'));
  });

  it('stays the same for ever: tags on the bench outlive versions of the program', () => {
    expect(barcodeFor('J-101', 'B1-SL')).toMatchInlineSnapshot(`"90JLSSZCOWR"`);
    expect(barcodeFor('Peña 7', 'Baño_2.1L-P2A')).toMatchInlineSnapshot(`"NR5XU8J2R1Z"`);
  });

  it('is another for another code or another job', () => {
    const codes = ['J-101', 'J-102'].flatMap(job => Array.from({ length: 2000 }, (_, n) => barcodeFor(job, `B${n}`)));
    expect(new Set(codes).size).toBe(4000);
  });
});
