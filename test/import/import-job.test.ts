import { describe, expect, it } from 'vitest';
import { importJob } from '../../src/import/index.ts';
import { draw, findings } from '../support/drawn-workbook.ts';

/** One row of openings that has nothing wrong with it, for workbooks that are about something else. */
const GOOD = `
  Cabinets
  | Cabinet | Opening width | Opening height | Hinge side |
  | B1      | 14 3/8        | 30             | left       |
`;

const expectFindings = (drawing: string): void => {
  const { workbook, expected } = draw(drawing);
  expect(findings(importJob(workbook).diagnostics)).toEqual(expected);
};

describe('what is found in Cabinets', () => {
  it.each([
    ['nothing, where nothing is wrong', GOOD],
    [
      'every problem of every row in one go',
      `
      Cabinets
      | Cabinet | Opening width | Opening height | Mounting | Leaves | Hinge side |
      | B1      | 14 3/8 x      | 30             | overlay  | 1      | left       |
      | B2      | 14 3/8        | thirty         | floating | 1      | left       |
      |         | 3             | 30             | overlay  | 3      | left       |
      ! B2 error length-unreadable
      ! C3 error length-unreadable
      ! D3 error choice-unknown
      ! A4 error cell-empty
      ! E4 error choice-unknown
    `,
    ],
    [
      'what else is wrong with a row of which a cell does not read',
      `
      Cabinets
      | Cabinet | W | H  | Leaves | Hinge | Panels high | Middle rail heights | Style | Qty |
      | P1      | x | 84 |        |       | 3           | 30                  | Fancy | 1   |
      | P2      | x | 84 | many   |       | some        | 30                  |       | 1   |
      | P1      | 9 | 84 | 2      |       |             |                     |       | 0   |
      ! B2 error length-unreadable
      ! E2 error hinge-side-missing
      ! G2 error middle-rail-count
      ! H2 error style-not-listed
      ! B3 error length-unreadable
      ! D3 error choice-unknown
      ! F3 error number-unreadable
      ! I4 error number-out-of-range
      ! A4 error opening-twice
    `,
    ],
    [
      'a single leaf without a hinge side, never guessed',
      `
      Cabinets
      | Cabinet | W      | H  | Leaves | Hinge |
      | B1      | 14 3/8 | 30 |        |       |
      | B2      | 14 3/8 | 30 | 1      | pair  |
      | B3      | 14 3/8 | 30 | 2      |       |
      | B4      | 14 3/8 | 30 |        | pair  |
      ! E2 error hinge-side-missing
      ! E3 error hinge-side-missing
    `,
    ],
    [
      'a hinge side where nothing hangs on it',
      `
      Cabinets
      | Cabinet | Kind         | W      | H  | Leaves | Hinge |
      | B1      | drawer front | 14 3/8 | 6  |        | left  |
      | B2      | door         | 28     | 30 | 2      | left  |
      | B3      | end panel    | 24     | 30 |        |       |
      ! F2 warning hinge-side-unused
      ! F3 warning hinge-side-unused
    `,
    ],
    [
      'sizes of nothing and less',
      `
      Cabinets
      | Cabinet | W      | H     | Hinge | Overlay left |
      | B1      | 0      | 30    | left  | -1/2         |
      | B2      | 14 3/8 | -30   | left  | 0            |
      | B3      | <0>    | <-30> | left  |              |
      ! B2 error length-not-positive
      ! E2 error length-negative
      ! C3 error length-not-positive
      ! B4 error length-not-positive
      ! C4 error length-not-positive
    `,
    ],
    [
      'lengths that the spreadsheet turned into dates',
      `
      Cabinets
      | Cabinet | W            | H  | Hinge | Overlay left |
      | B1      | 14 3/8       | 30 | left  | <2026-03-04> |
      | B2      | <2026-03-08> | 30 | left  | <1932-03-01> |
      ! E2 error cell-is-date
      ! B3 error cell-is-date
      ! E3 error cell-is-date
    `,
    ],
    [
      'a name that the spreadsheet turned into a date',
      `
      Cabinets
      | Cabinet      | W      | H  | Hinge |
      | <2026-01-02> | 14 3/8 | 30 | left  |
      ! A2 error cell-is-date
    `,
    ],
    [
      'formulas that failed or were never worked out',
      `
      Cabinets
      | Cabinet | W       | H            | Hinge |
      | B1      | <#REF!> | <unfinished> | left  |
      | B2      | 14 3/8  | 30           | <#N/A>|
      ! B2 error cell-is-error
      ! C2 error cell-unfinished
      ! D3 error cell-is-error
    `,
    ],
    [
      'merged cells in a row that counts, and none in a title',
      `
      Cabinets
      | Doors of the kitchen | <merged A1:D1> | <merged A1:D1> | <merged A1:D1> |
      | Cabinet        | Opening | W      | H  | Hinge |
      | B1             | A       | 14 3/8 | 30 | left  |
      | <merged A3:A4> | B       | 14 3/8 | 30 | left  |
      ! A4 error cell-merged
    `,
    ],
    [
      'one opening twice, however it is written',
      `
      Cabinets
      | Cabinet | Opening | W      | H  | Hinge |
      | B1      | A       | 14 3/8 | 30 | left  |
      | B1      | B       | 14 3/8 | 30 | left  |
      | b-1     | a       | 14 3/8 | 30 | left  |
      | B2      |         | 14 3/8 | 30 | left  |
      | B2      |         | 14 3/8 | 30 | left  |
      ! B4 error opening-twice
      ! A6 error opening-twice
    `,
    ],
    [
      'counts that are none',
      `
      Cabinets
      | Cabinet | Qty  | W      | H  | Hinge | Panels high |
      | B1      | 0    | 14 3/8 | 30 | left  | 1.5         |
      | B2      | two  | 14 3/8 | 30 | left  | 99          |
      | B3      | <2>  | 14 3/8 | 30 | left  | <2>         |
      ! B2 error number-out-of-range
      ! F2 error number-not-whole
      ! B3 error number-unreadable
      ! F3 error number-out-of-range
    `,
    ],
    [
      'middle rails that do not fit the panels',
      `
      Cabinets
      | Cabinet | W  | H  | Hinge | Panels high | Middle rail heights |
      | P1      | 20 | 84 | left  | 3           | 30                  |
      | P2      | 20 | 84 | left  | 3           | 58; 30              |
      | P3      | 20 | 84 | left  |             | 30; 58              |
      | P4      | 20 | 84 | left  | 3           | 30; low             |
      ! F2 error middle-rail-count
      ! F3 error middle-rails-out-of-order
      ! F5 error form-unreadable
    `,
    ],
    [
      'neighbours that are not there; one whose row does not read is no second finding',
      `
      Cabinets
      | Cabinet | Opening | W      | H  | Hinge | Right neighbour | Top neighbour |
      | B1      | A       | 14 3/8 | 30 | left  | b2/a            | B9            |
      | B2      | A       | ?      | 30 | left  | B3              |               |
      | B3      |         | 14 3/8 | 30 | left  | B4              |               |
      | B4      | A       | 14 3/8 | 30 | left  |                 |               |
      | B4      | B       | 14 3/8 | 30 | left  | B4              | B4/A          |
      ! G2 error neighbour-not-listed
      ! C3 error length-unreadable
      ! F4 error neighbour-not-listed
      ! F6 error neighbour-not-listed
    `,
    ],
    [
      'names with what cannot be seen in them; markup is text',
      `
      Cabinets
      | Cabinet               | W      | H  | Hinge | Note                 |
      | B\u20281\u202e        | 14 3/8 | 30 | left  | a\u0007b             |
      | a <img src=x>         | 14 3/8 | 30 | left  | {{evil}} & "more"    |
      ! A2 warning characters-removed
      ! E2 warning characters-removed
    `,
    ],
    [
      'rows that are hidden, once',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge |
      | B1      | 14 3/8 | 30 | left  | hidden
      | B2      | 14 3/8 | 30 | left  |
      | B3      | 14 3/8 | 30 | left  | hidden
      ! sheet note rows-hidden
    `,
    ],
    [
      'no opening at all',
      `
      Cabinets
      | Cabinet | W | H | Hinge |
      ! sheet error no-openings
    `,
    ],
  ])('%s', (_, drawing) => expectFindings(drawing));
});

describe('what is found in headings and sheets', () => {
  it.each([
    [
      'other names of the same columns are none',
      `
      OPENINGS
      | cab. | QTY | opening-W | Opening H (in) | hinge side: |
      | B1   | 1   | 14 3/8    | 30             | L           |
    `,
    ],
    [
      'a column that is missing, once and not in every row',
      `
      Cabinets
      | Cabinet | Opening width | Hinge side |
      | B1      | 14 3/8        | left       |
      | B2      | 14 3/8        | left       |
      ! sheet error column-missing
    `,
    ],
    [
      'a column that is not known, once',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge | Hieght | Price of the house |
      | B1      | 14 3/8 | 30 | left  | 30     | 1                  |
      | B2      | 14 3/8 | 30 | left  | 30     | 2                  |
      ! E1 note column-unknown
      ! F1 note column-unknown
    `,
    ],
    [
      'a column that is there twice',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge | Width |
      | B1      | 14 3/8 | 30 | left  | 15    |
      ! E1 error column-twice
    `,
    ],
    [
      'headings under a title and a blank row',
      `
      Cabinets
      | Kitchen of the new house |
      |                          |
      | Cabinet | W      | H  | Hinge |
      | B1      | 14 3/8 | xx | left  |
      ! C4 error length-unreadable
    `,
    ],
    [
      'no headings',
      `
      Cabinets
      | B1 | 14 3/8 | 30 | left |
      ! sheet error headings-missing
    `,
    ],
    [
      'no Cabinets',
      `
      Kitchen
      | some | thing |
      ! sheet note sheet-unknown
      ! file error sheet-missing
    `,
    ],
    [
      'openings under a name of their own',
      `
      Sheet1
      | Cabinet | W      | H  | Hinge |
      | B1      | 14 3/8 | 30 | left  |
      ! sheet note sheet-guessed
    `,
    ],
    [
      'a sheet that is not known, and none that is empty',
      `${GOOD}
      Sheet2
      Photos
      | of the site |
      ! sheet note sheet-unknown
    `,
    ],
    [
      'two sheets for one',
      `${GOOD}
      Doors
      | Cabinet | W      | H  | Hinge |
      | B2      | 14 3/8 | 30 | left  |
      ! sheet error sheet-twice
    `,
    ],
    [
      'a hidden sheet',
      `${GOOD}
      [Job]
      | Job number | J-7 |
      ! sheet note sheet-hidden
    `,
    ],
  ])('%s', (_, drawing) => expectFindings(drawing));
});

describe('what is found in Job and Shop', () => {
  it.each([
    [
      'nothing, where nothing is wrong',
      `${GOOD}
      Job
      | Fact       | Value        |
      | Job number | 12-B         |
      | Due        | <2026-03-31> |
      | Units      | inch         |
      | Pair gap   | 3/32         |
      Shop
      | Setting         | Value        | Meaning      |
      | Kerf            | 3/32         | of the blade |
      | Yield           | 65 %         |              |
      | Spray transfer  | <0.7 0"%">   |              |
      | Rest            | 3 days       |              |
      | Minutes: groove | 20 + 0.5     |              |
      | Hinges 3 up to  | 60 in, 30 lb |              |
      | Temperature     | 70 F         |              |
      | Weekdays        | Mon, Tue     |              |
      | Days off        | <2026-07-03> |              |
      | Work starts at  | 07:30        |              |
      | Labels          | 21 on A4     |              |
      | Containers      | 1 qt; 1 gal  |              |
    `,
    ],
    [
      'a job number that would leave its folder, and others that name no folder',
      `${GOOD}
      Job
      | Job number | ../../etc |
      ! B1 error job-number-unsafe
    `,
    ],
    [
      'a device is no job number',
      `${GOOD}
      Job
      | Job number | con.1 |
      ! B1 error job-number-unsafe
    `,
    ],
    [
      'settings that are not known, twice there, or not readable',
      `${GOOD}
      Shop
      | Setting         | Value    |
      | Kerff           | 1/8      |
      | Kerf            | thin     |
      | Saw kerf        | 1/8      |
      | Yield           | 140 %    |
      | Minutes: groove | long     |
      | Minutes: dance  | 1 + 1    |
      | Hinges 3 up to  | 60 in    |
      | Temperature     | 70       |
      | Rest            | a while  |
      | Labels          | 40 on A3 |
      | Helper alone    | inspekt  |
      | Clamps          |          |
      ! A2 warning setting-unknown
      ! B3 error length-unreadable
      ! B4 error setting-twice
      ! B5 error number-out-of-range
      ! B6 error form-unreadable
      ! A7 warning setting-unknown
      ! B8 error form-unreadable
      ! B9 error form-unreadable
      ! B10 error duration-unreadable
      ! B11 error choice-unknown
      ! B12 error choice-unknown
    `,
    ],
    [
      'a due date that is none',
      `${GOOD}
      Job
      | Due date | 2026-02-30 |
      | Units    | cubits     |
      ! B1 error date-unreadable
      ! B2 error choice-unknown
    `,
    ],
  ])('%s', (_, drawing) => expectFindings(drawing));
});

describe('what is found in Styles and Stock', () => {
  it.each([
    [
      'a style that is not there, and none chosen of two',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge | Style  |
      | B1      | 14 3/8 | 30 | left  | Plane  |
      | B2      | 14 3/8 | 30 | left  |        |
      | B3      | 14 3/8 | 30 | left  | plain  |
      ! E2 error style-not-listed
      ! E3 error style-missing
      Styles
      | Style | Stile width |
      | Plain | 2           |
      | Wide  | 3           |
      | Plain | 4           |
      ! A4 error style-twice
    `,
    ],
    [
      'a style whose row does not read is no second finding',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge | Style |
      | B1      | 14 3/8 | 30 | left  | Plain |
      Styles
      | Style | Stile width |
      | Plain | wide        |
      ! B2 error length-unreadable
    `,
    ],
    [
      'stock that is not there, or is of the other kind',
      `
      Cabinets
      | Cabinet | W      | H  | Hinge | Style |
      | B1      | 14 3/8 | 30 | left  | Solid |
      Styles
      | Style | Frame stock | Panel stock | Panel kind |
      | Plain | Mapel       | Maple       | plywood    |
      | Solid | Maple       | Plywood     | solid      |
      ! B2 error stock-unknown
      ! C2 error stock-is-other-kind
      ! C3 error stock-is-other-kind
      Stock
      | Stock   | Kind  | Thickness |
      | Maple   | board | 4/4       |
      | Plywood | sheet | 0.47      |
    `,
    ],
    [
      'no stock chosen of two that would do',
      `${GOOD}
      Styles
      | Style |
      | Plain |
      ! A2 error stock-missing
      Stock
      | Stock  | Kind  | Thickness |
      | Maple  | board | 4/4       |
      | Cherry | board | 4/4       |
    `,
    ],
    [
      'sizes of one stock that disagree on what it is',
      `${GOOD}
      Stock
      | Stock | Kind  | Thickness | Width | Length | Defects      | Price | Grain |
      | Maple | board | 4/4       | 6     | 96     | 12-16; 40-43 | 8.40  |       |
      | maple | sheet | 5/4       | 7     | 120    | 16-12        | dear  |       |
      | Maple | board | 5/4       | 8     | 120    |              |       |       |
      ! F3 error form-unreadable
      ! G3 error money-unreadable
      ! C4 error stock-disagrees
    `,
    ],
  ])('%s', (_, drawing) => expectFindings(drawing));
});

describe('what is found in Finish and Hardware', () => {
  it.each([
    [
      'nothing, where nothing is wrong',
      `${GOOD}
      Finish
      | Step  | Kind    | Mix | Components | Additive % | Coats | Spread rate | Wait hours | Grit | Price |
      | Sand  | sand    |     |            |            |       |             |            | 150  |       |
      | Stain | stain   | 2:1 | red; clear | 10         | 1     | 400 ft2/gal | 12         |      | 52/gal|
      | Top   | topcoat |     |            | <0.1 0"%"> | 3     | 9 m2/l      | 2 h        |      | 14/l  |
      Hardware
      | Item  | Use   | Per   | Count | Pack |
      | Hinge | hinge | hinge | 1     | 10   |
    `,
    ],
    [
      'a mix that does not add up, a coat of nothing',
      `${GOOD}
      Finish
      | Step  | Kind  | Mix   | Components | Coats | Spread rate |
      | Stain | stain | 2:1:1 | red; clear | 1     | far         |
      | Stain | stain | 2:1:1 | red; clear | 1     |             |
      | Top   | shine | 2;1   |            | 0     |             |
      ! F2 error form-unreadable
      ! C3 error mix-parts-differ
      ! B4 error choice-unknown
      ! C4 error form-unreadable
      ! E4 error number-out-of-range
      Hardware
      | Item  | Use   | Per   | Count | Pack |
      |       | hinge | hinge | 1     | 10   |
      | Hinge | hinge | month | some  | 0    |
      ! A2 error cell-empty
      ! C3 error choice-unknown
      ! D3 error number-unreadable
      ! E3 error number-out-of-range
    `,
    ],
  ])('%s', (_, drawing) => expectFindings(drawing));
});
