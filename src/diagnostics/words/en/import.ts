import type { ImportProblems } from '../../problems/import.ts';
import type { Words } from '../../words.ts';

export const importing: Words<ImportProblems> = {
  'file-empty': () => ({
    what: 'The file is empty.',
    mend: 'Save the workbook again, and copy it when the spreadsheet program has finished.',
  }),
  'file-too-large': ({ size, limit }) => ({
    what: `The file has ${size}; up to ${limit} are read.`,
    mend: 'Take pictures and sheets that are not part of the job out of the workbook.',
  }),
  'file-is-old-workbook': () => ({
    what: 'This is a workbook of the old kind (.xls), or one with a password.',
    mend: 'Open it in a spreadsheet program, take the password off, and save it as .xlsx.',
  }),
  'file-has-password': () => ({
    what: 'The workbook is locked with a password.',
    mend: 'Open it, take the password off, and save it again.',
  }),
  'file-is-no-workbook': ({ looks }) => ({
    what: `This is no workbook${LOOKS[looks]}.`,
    mend: 'Open it in a spreadsheet program and save it as .xlsx.',
  }),
  'file-damaged': ({ part }) => ({
    what: `The workbook is damaged or was copied only in part (${part}).`,
    mend: 'Copy it again; if that does not help, open it in a spreadsheet program and save it as a new .xlsx file.',
  }),
  'file-unpacks-too-large': ({ limit }) => ({
    what: `The workbook unpacks to more than ${limit}.`,
    mend: 'Copy the sheets of the job into a new workbook.',
  }),
  'file-has-foreign-entities': ({ part }) => ({
    what: `The workbook declares entities of its own (${part}), as no spreadsheet program does.`,
    mend: 'Open it in a spreadsheet program and save it as a new .xlsx file.',
  }),
  'file-takes-too-long': ({ seconds }) => ({
    what: `The workbook could not be read in ${seconds} s.`,
    mend: 'Copy the sheets of the job into a new workbook: cells, not whole columns.',
  }),
  'file-takes-too-much-memory': () => ({
    what: 'The workbook is larger in memory than a job can be.',
    mend: 'Copy the sheets of the job into a new workbook: cells, not whole columns.',
  }),
  'sheet-too-large': ({ of, limit }) => ({
    what: `The sheet has more than ${limit} ${of}.`,
    mend: 'Split the job over several workbooks, or delete what is under and beside the table.',
  }),
  'text-not-unicode': () => ({
    what: 'The file is not written in UTF-8.',
    mend: 'Save it as “CSV UTF-8”, or as .xlsx.',
  }),
  'quote-not-closed': () => ({
    what: 'A quotation mark is opened and never closed, so the rows after it cannot be told apart.',
    mend: 'Close it; an inch mark inside a quoted cell is written twice: "14 3/8""".',
  }),
  'sheet-missing': ({ sheet, seen }) => ({
    what: `There is no sheet ${sheet}; the workbook has ${seen}.`,
    mend: `Name the sheet with the openings ${sheet}.`,
  }),
  'sheet-unknown': ({ sheet, nearest }) => ({
    what: `The sheet ${sheet} is none of ours and was not read.`,
    mend: perhaps(nearest, 'Nothing needs to be done, unless it should have been read.'),
  }),
  'sheet-guessed': ({ sheet, as }) => ({
    what: `The sheet ${sheet} was read as ${as}.`,
    mend: `Name it ${as}.`,
  }),
  'sheet-twice': ({ sheet, other }) => ({
    what: `${sheet} and ${other} are names of one and the same sheet, and only the first was read.`,
    mend: 'Put their rows together, or rename one of them.',
  }),
  'sheet-hidden': () => ({
    what: 'This sheet is hidden. It was read like any other.',
    mend: 'Delete it if it should not count.',
  }),
  'headings-missing': ({ wanted }) => ({
    what: 'No row with headings was found.',
    mend: `Put a row with ${wanted} above the rows.`,
  }),
  'column-missing': ({ column, seen }) => ({
    what: `There is no column ${column}; the headings are ${seen}.`,
    mend: `Add the column, or give one of them the name ${column}.`,
  }),
  'column-unknown': ({ heading, nearest }) => ({
    what: `The column ${heading} is none of ours and was not read.`,
    mend: perhaps(nearest, 'Nothing needs to be done, unless it should have been read.'),
  }),
  'column-twice': ({ column, other }) => ({
    what: `${column} is here a second time; the first is in column ${other}.`,
    mend: 'Delete or rename one of the two.',
  }),
  'rows-hidden': ({ rows }) => ({
    what: `Hidden rows were read like any other: ${rows}.`,
    mend: 'Delete them if they should not count.',
  }),
  'example-not-counted': () => ({
    what: 'The row Example is not counted.',
    mend: 'Give the cabinet another name if it is one.',
  }),
  'no-openings': () => ({
    what: 'There is not one opening to make a door for.',
    mend: 'Give each opening a row under the headings.',
  }),
  'cell-empty': ({ column }) => ({ what: `${column} is empty.`, mend: 'Fill it in.' }),
  'cell-is-error': ({ column, error }) => ({
    what: `The formula in ${column} gives ${error}.`,
    mend: 'Mend the formula, or type the value.',
  }),
  'cell-unfinished': ({ column }) => ({
    what: `The formula in ${column} has no stored result.`,
    mend: 'Open the workbook in a spreadsheet program, let it calculate, and save it.',
  }),
  'cell-merged': ({ column, area }) => ({
    what: `${column} is merged with others (${area}), so this row has no value of its own.`,
    mend: 'Unmerge the cells and fill in each of them.',
  }),
  'cell-is-date': ({ column, date, typed }) => ({
    what: `The spreadsheet turned what was typed in ${column} into the date ${date}${typed === '' ? '' : `; probably ${typed} was typed`}.`,
    mend: `Format the cell as text and type ${typed === '' ? 'it' : typed} again${typed.includes('/') ? `, or type 0 ${typed}` : ''}.`,
  }),
  'length-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a length.`,
    mend: 'Write it like 14 3/8, 14.375 or 365 mm.',
  }),
  'length-not-positive': ({ column, typed }) => ({
    what: `${column} is ${typed}, and must be more than nothing.`,
    mend: 'Write the measured length.',
  }),
  'length-negative': ({ column, typed }) => ({
    what: `${column} is ${typed}, and must not be less than nothing.`,
    mend: 'Write it without the minus.',
  }),
  'number-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a number.`,
    mend: 'Write a number.',
  }),
  'number-out-of-range': ({ column, typed, from, to }) => ({
    what: `${column} is ${typed}, and must be from ${from} to ${to}.`,
    mend: 'Write a number within these.',
  }),
  'number-not-whole': ({ column, typed }) => ({
    what: `${column} is ${typed}, and must be a whole number.`,
    mend: 'Write a whole number.',
  }),
  'choice-unknown': ({ column, typed, nearest, known }) => ({
    what: `“${typed}” is not known in ${column}.`,
    mend: perhaps(nearest, `Write one of ${known}.`),
  }),
  'date-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a date.`,
    mend: 'Write it as year, month and day: 2026-03-31.',
  }),
  'duration-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a time.`,
    mend: 'Write it like 2 h, 90 min or 3 days.',
  }),
  'volume-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a volume.`,
    mend: 'Write it like 1 qt, 1 gal, 500 ml or 2.5 l.',
  }),
  'money-unreadable': ({ column, typed }) => ({
    what: `“${typed}” in ${column} is not a sum of money.`,
    mend: 'Write it like 12.50.',
  }),
  'form-unreadable': ({ column, typed, form }) => ({
    what: `“${typed}” in ${column} cannot be read.`,
    mend: `Write it like ${form}.`,
  }),
  'text-too-long': ({ column, limit }) => ({
    what: `${column} has more than ${limit} characters.`,
    mend: 'Shorten it.',
  }),
  'characters-removed': ({ column, kept }) => ({
    what: `Characters that cannot be seen were taken out of ${column}; “${kept}” was kept.`,
    mend: 'Type the cell again if something is missing.',
  }),
  'setting-unknown': ({ typed, nearest }) => ({
    what: `There is no setting “${typed}”, and it was not used.`,
    mend: perhaps(nearest, 'See the table of settings in the README.'),
  }),
  'setting-twice': ({ setting, other }) => ({
    what: `${setting} is set a second time; the first is in ${other}.`,
    mend: 'Delete one of the two.',
  }),
  'job-number-unsafe': ({ typed }) => ({
    what: `“${typed}” cannot be the job's number: it names the job's folder.`,
    mend: 'Use letters, digits, spaces, dots, hyphens and underscores, up to 40, and begin with a letter or a digit.',
  }),
  'hinge-side-missing': ({ cabinet }) => ({
    what: `${cabinet} has one leaf and no hinge side.`,
    mend: 'Write left or right in Hinge side, or 2 in Leaves.',
  }),
  'hinge-side-unused': ({ cabinet }) => ({
    what: `${cabinet} has a hinge side that says nothing: a pair hangs on both sides, and a front that is no door on none.`,
    mend: 'Clear Hinge side, or write 1 in Leaves.',
  }),
  'opening-twice': ({ cabinet, label, other }) => ({
    what: `${cabinet}${label === '' ? '' : ` opening ${label}`} is here a second time; the first is in row ${other}.`,
    mend: 'Give each opening of a cabinet its own label in Opening, or raise Quantity where they are alike.',
  }),
  'style-not-listed': ({ cabinet, typed, nearest, known }) => ({
    what: `${cabinet} asks for the style “${typed}”, which is not in Styles.`,
    mend: perhaps(
      nearest,
      known === ''
        ? 'Add it to Styles, or leave Style empty for a plain frame.'
        : `Use one of ${known}, or add it to Styles.`,
    ),
  }),
  'style-missing': ({ cabinet, known }) => ({
    what: `${cabinet} has no style, and there is more than one.`,
    mend: `Write one of ${known}.`,
  }),
  'style-twice': ({ style, other }) => ({
    what: `The style ${style} is here a second time; the first is in row ${other}.`,
    mend: 'Give it a name of its own, or delete it.',
  }),
  'stock-unknown': ({ column, typed, nearest, known }) => ({
    what: `“${typed}” in ${column} is not in Stock.`,
    mend: perhaps(nearest, known === '' ? 'Add it to Stock.' : `Use one of ${known}, or add it to Stock.`),
  }),
  'stock-missing': ({ column, style, known }) => ({
    what: `${style} does not say what its ${column} is, and Stock has more than one that would do.`,
    mend: `Write one of ${known}.`,
  }),
  'stock-is-other-kind': ({ column, stock, is }) => ({
    what: `${stock} is a ${is}, and ${column} wants a ${is === 'board' ? 'sheet' : 'board'}.`,
    mend: `Use a ${is === 'board' ? 'sheet' : 'board'}, or correct Kind in Stock.`,
  }),
  'stock-disagrees': ({ column, stock, other }) => ({
    what: `${column} of ${stock} is another one than in row ${other}, and rows of one name are sizes of one and the same stock.`,
    mend: 'Make them agree, or give this row a name of its own.',
  }),
  'neighbour-not-listed': ({ column, typed, nearest, known }) => ({
    what: `“${typed}” in ${column} is no opening of this workbook.`,
    mend: perhaps(nearest, `Write a cabinet, or cabinet/opening: ${known}.`),
  }),
  'middle-rail-count': ({ cabinet, panels, given }) => ({
    what: `${cabinet} is ${panels} panels high and has ${given} middle-rail heights.`,
    mend: `Give ${panels - 1}, or none to share the height equally.`,
  }),
  'middle-rails-out-of-order': ({ cabinet }) => ({
    what: `The middle-rail heights of ${cabinet} do not rise.`,
    mend: 'Write them from the bottom up, each higher than the one before.',
  }),
  'mix-parts-differ': ({ step, parts, components }) => ({
    what: `${step} mixes ${components} components in ${parts} parts.`,
    mend: 'Write one number in Mix for each component: 2:1 for two of them.',
  }),
};

const LOOKS = {
  'web-page': ', it is a web page with the ending of one',
  pdf: ', it is a PDF',
  text: ', it is plain text',
  'other-zip': ', it is an archive of something else',
  unknown: '',
} as const;

const perhaps = (nearest: string, otherwise: string): string =>
  nearest === '' ? otherwise : `Did you mean ${nearest}?`;
