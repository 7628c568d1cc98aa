import { describe, expect, it } from 'vitest';
import { calculate } from '../../src/calculate/index.ts';
import { WORKED } from '../../src/calculate/worked.ts';
import { packagedWords } from '../../src/packaged.ts';
import { explain, similarCodes } from '../../src/render/explain.ts';
import { shopDefaults } from '../../src/trade/shop-defaults.ts';
import { aJob, anOpening, overlay } from '../support/a-job.ts';
import { length } from '../support/length.ts';

const english = packagedWords('en');
const job = aJob();
const doorSet = calculate(job).value;
const lines = (code: string): readonly string[] => explain(code, { job, doorSet }, english) ?? [];

describe('explain', () => {
  it('tells of a rail where its length comes from', () => {
    expect(lines('B2.A.1L-RT')).toEqual([
      'B2.A.1L-RT  top rail, door, B2/A, left leaf, copy 1',
      '11 27/32 long, 2 wide, 3/4 thick, 0.5 lb; from Maple 4/4',
      '',
      'rail length = W − 2·S + 2·T = 15 3/32 − 2·2 + 2·3/8 = 11 27/32',
      '    W: door width; S: stile width; T: length of a tongue',
      '',
      'top rail width = TR = 2 = 2',
      '    TR: top rail width',
      '',
      'rail between shoulders = W − 2·S = 15 3/32 − 2·2 = 11 3/32',
      '    W: door width; S: stile width',
      '',
      // 11.84375 · 2 · 0.75 in³ · 705.6 kg/m³.
      'weight = L · B · t · ρ = 0.21 kg (L 11 27/32, B 2, t 3/4, ρ 705.6 kg/m³)',
      '    L: length; B: width; t: thickness; ρ: density',
      '    Density from Stock, or by the specific gravity of the USDA Wood Handbook, table 5–3b, at 12 % moisture.',
    ]);
  });

  it('tells of a door what it is made of, and of each of its numbers', () => {
    const said = lines('B2.A.1L').join('\n');
    expect(said).toContain('15 3/32 wide, 31 high, 3/4 thick, 6.6 lb; style Plain');
    expect(said).toContain('Parts: B2.A.1L-SL, B2.A.1L-SR, B2.A.1L-RB, B2.A.1L-RT, B2.A.1L-P');
    expect(said).toContain('door width = (Wo + OL + OR − g) ÷ 2 = (29 5/16 + 1/2 + 1/2 − 1/8) ÷ 2 = 15 3/32');
    expect(said).toContain('gap between leaves = Wo + OL + OR − 2·W = 29 5/16 + 1/2 + 1/2 − 2·15 3/32 = 1/8');
  });

  it('warns of gluing a panel that moves, and of no other', () => {
    const warned = doorSet.parts.filter(part => lines(part.code).some(line => /Do not glue/.test(line)));
    expect(warned.map(part => part.code)).toEqual(['W3.1-P']);
  });

  it('knows a code in small letters and the symbol on the tag', () => {
    const [door] = doorSet.doors;
    expect(lines('b1.1')).toEqual(lines('B1.1'));
    expect(lines(door?.barcode.toLowerCase() ?? '')).toEqual(lines('B1.1'));
  });

  it('knows nothing of what is not there, and offers what is near', () => {
    expect(explain('B9.1', { job, doorSet }, english)).toBeUndefined();
    expect(similarCodes('b3', doorSet)).toEqual(['B3.1', 'B3.1-SL', 'B3.1-SR', 'B3.1-RB', 'B3.1-RT', 'B3.1-P']);
    expect(similarCodes('B3.1-XX', doorSet)).toEqual(['B3.1']);
    expect(similarCodes('nothing', doorSet)).toEqual([]);
  });

  it('says what rounding left over, and by how much the true value differs from the printed one', () => {
    const odd = aJob({
      openings: [anOpening({ width: length('14 25/64'), mounting: overlay('1/2') })],
      shop: { ...shopDefaults('inch', 'letter') },
    });
    const said = explain('B1.1', { job: odd, doorSet: calculate(odd).value }, english)?.join('\n');
    expect(said).toContain('door width = Wo + OL + OR = 14 13/32− + 1/2 + 1/2 = 15 3/8, rest 1/32−');
    // √(15.375² + 31²) = 34.60333; printed 34 19/32 = 34.59375.
    expect(said).toContain('diagonal = √(W² + H²) = 34 19/32+ (W 15 3/8, H 31), true value 0.0096 in more');
  });
});

describe.each(['en', 'es'] as const)('the words of %s', language => {
  const words = packagedWords(language);
  it('have a name for every number that is worked out', () => {
    expect(WORKED.filter(of => words[`working.${of}`] === undefined)).toEqual([]);
  });

  it('have a meaning for every symbol of every door and part of a job of all kinds', () => {
    const unexplained = [
      ...doorSet.doors.map(door => ({ code: door.code, workings: [door.width, door.height, ...door.workings] })),
      ...doorSet.parts.map(part => ({ code: part.code, workings: [part.length, part.width, ...part.workings] })),
    ].flatMap(({ code, workings }) => {
      const said = (explain(code, { job, doorSet }, words) ?? []).join('\n');
      const symbols = workings.flatMap(working =>
        working.kind === 'fact'
          ? working.inputs.map(({ symbol }) => symbol)
          : working.terms.filter(({ count }) => count !== 0).map(({ symbol }) => symbol),
      );
      return symbols
        .filter(symbol => !said.includes(`    ${symbol}: `) && !said.includes(`; ${symbol}: `))
        .map(symbol => `${code}: ${symbol}`);
    });
    expect([...new Set(unexplained)]).toEqual([]);
  });
});
