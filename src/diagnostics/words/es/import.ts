import type { ImportProblems } from '../../problems/import.ts';
import type { Words } from '../../words.ts';

export const importing: Words<ImportProblems> = {
  'file-empty': () => ({
    what: 'El archivo está vacío.',
    mend: 'Guarde otra vez el libro y cópielo cuando el programa de hojas de cálculo haya terminado.',
  }),
  'file-too-large': ({ size, limit }) => ({
    what: `El archivo tiene ${size}; se leen hasta ${limit}.`,
    mend: 'Quite del libro las imágenes y las hojas que no son del trabajo.',
  }),
  'file-is-old-workbook': () => ({
    what: 'Este libro es del tipo antiguo (.xls) o tiene contraseña.',
    mend: 'Ábralo en un programa de hojas de cálculo, quite la contraseña y guárdelo como .xlsx.',
  }),
  'file-has-password': () => ({
    what: 'El libro está cerrado con contraseña.',
    mend: 'Ábralo, quite la contraseña y guárdelo otra vez.',
  }),
  'file-is-no-workbook': ({ looks }) => ({
    what: `Esto no es un libro de cálculo${LOOKS[looks]}.`,
    mend: 'Ábralo en un programa de hojas de cálculo y guárdelo como .xlsx.',
  }),
  'file-damaged': ({ part }) => ({
    what: `El libro está dañado o se copió solo en parte (${part}).`,
    mend: 'Cópielo otra vez; si no ayuda, ábralo y guárdelo como un archivo .xlsx nuevo.',
  }),
  'file-unpacks-too-large': ({ limit }) => ({
    what: `El libro ocupa más de ${limit} al abrirse.`,
    mend: 'Copie las hojas del trabajo a un libro nuevo.',
  }),
  'file-has-foreign-entities': ({ part }) => ({
    what: `El libro declara entidades propias (${part}), cosa que ningún programa de hojas de cálculo hace.`,
    mend: 'Ábralo en un programa de hojas de cálculo y guárdelo como un archivo .xlsx nuevo.',
  }),
  'file-takes-too-long': ({ seconds }) => ({
    what: `El libro no se pudo leer en ${seconds} s.`,
    mend: 'Copie las hojas del trabajo a un libro nuevo: celdas, no columnas enteras.',
  }),
  'file-takes-too-much-memory': () => ({
    what: 'El libro ocupa en memoria más de lo que puede ocupar un trabajo.',
    mend: 'Copie las hojas del trabajo a un libro nuevo: celdas, no columnas enteras.',
  }),
  'sheet-too-large': ({ of, limit }) => ({
    what: `La hoja tiene más de ${limit} ${COUNTED[of]}.`,
    mend: 'Reparta el trabajo en varios libros, o borre lo que hay debajo y al lado de la tabla.',
  }),
  'text-not-unicode': () => ({
    what: 'El archivo no está escrito en UTF-8.',
    mend: 'Guárdelo como «CSV UTF-8» o como .xlsx.',
  }),
  'quote-not-closed': () => ({
    what: 'Se abren unas comillas que no se cierran, y las filas siguientes no se pueden separar.',
    mend: 'Ciérrelas; dentro de una celda entre comillas, la marca de pulgada se escribe dos veces: "14 3/8""".',
  }),
  'sheet-missing': ({ sheet, seen }) => ({
    what: `No hay hoja ${sheet}; el libro tiene ${seen}.`,
    mend: `Dé el nombre ${sheet} a la hoja con las aberturas.`,
  }),
  'sheet-unknown': ({ sheet, nearest }) => ({
    what: `La hoja ${sheet} no es de las nuestras y no se leyó.`,
    mend: perhaps(nearest, 'No hay que hacer nada, salvo que debiera leerse.'),
  }),
  'sheet-guessed': ({ sheet, as }) => ({
    what: `La hoja ${sheet} se leyó como ${as}.`,
    mend: `Dele el nombre ${as}.`,
  }),
  'sheet-twice': ({ sheet, other }) => ({
    what: `${sheet} y ${other} son nombres de una misma hoja, y solo se leyó la primera.`,
    mend: 'Junte sus filas o cambie el nombre de una.',
  }),
  'sheet-hidden': () => ({
    what: 'Esta hoja está oculta. Se leyó como las demás.',
    mend: 'Bórrela si no debe contar.',
  }),
  'headings-missing': ({ wanted }) => ({
    what: 'No se encontró ninguna fila de encabezados.',
    mend: `Ponga una fila con ${wanted} encima de las filas.`,
  }),
  'column-missing': ({ column, seen }) => ({
    what: `No hay columna ${column}; los encabezados son ${seen}.`,
    mend: `Añada la columna, o dé a una de ellas el nombre ${column}.`,
  }),
  'column-unknown': ({ heading, nearest }) => ({
    what: `La columna ${heading} no es de las nuestras y no se leyó.`,
    mend: perhaps(nearest, 'No hay que hacer nada, salvo que debiera leerse.'),
  }),
  'column-twice': ({ column, other }) => ({
    what: `${column} aparece por segunda vez; la primera está en la columna ${other}.`,
    mend: 'Borre una de las dos o cambie su nombre.',
  }),
  'rows-hidden': ({ rows }) => ({
    what: `Las filas ocultas se leyeron como las demás: ${rows}.`,
    mend: 'Bórrelas si no deben contar.',
  }),
  'example-not-counted': () => ({
    what: 'La fila Example no se cuenta.',
    mend: 'Dé otro nombre al gabinete si lo es.',
  }),
  'no-openings': () => ({
    what: 'No hay ninguna abertura para la que hacer una puerta.',
    mend: 'Dé una fila a cada abertura debajo de los encabezados.',
  }),
  'cell-empty': ({ column }) => ({ what: `${column} está vacía.`, mend: 'Rellénela.' }),
  'cell-is-error': ({ column, error }) => ({
    what: `La fórmula en ${column} da ${error}.`,
    mend: 'Corrija la fórmula o escriba el valor.',
  }),
  'cell-unfinished': ({ column }) => ({
    what: `La fórmula en ${column} no tiene resultado guardado.`,
    mend: 'Abra el libro en un programa de hojas de cálculo, deje que calcule y guárdelo.',
  }),
  'cell-merged': ({ column, area }) => ({
    what: `${column} está combinada con otras (${area}), y esta fila no tiene valor propio.`,
    mend: 'Separe las celdas y rellene cada una.',
  }),
  'cell-is-date': ({ column, date, typed }) => ({
    what: `El programa convirtió lo escrito en ${column} en la fecha ${date}${typed === '' ? '' : `; probablemente se escribió ${typed}`}.`,
    mend: `Dé a la celda formato de texto y escriba ${typed === '' ? 'el valor' : typed} otra vez${typed.includes('/') ? `, o escriba 0 ${typed}` : ''}.`,
  }),
  'length-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es una medida.`,
    mend: 'Escríbala como 14 3/8, 14.375 o 365 mm.',
  }),
  'length-not-positive': ({ column, typed }) => ({
    what: `${column} es ${typed} y debe ser mayor que cero.`,
    mend: 'Escriba la medida tomada.',
  }),
  'length-negative': ({ column, typed }) => ({
    what: `${column} es ${typed} y no puede ser menor que cero.`,
    mend: 'Escríbala sin el signo menos.',
  }),
  'number-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es un número.`,
    mend: 'Escriba un número.',
  }),
  'number-out-of-range': ({ column, typed, from, to }) => ({
    what: `${column} es ${typed} y debe estar entre ${from} y ${to}.`,
    mend: 'Escriba un número entre estos dos.',
  }),
  'number-not-whole': ({ column, typed }) => ({
    what: `${column} es ${typed} y debe ser un número entero.`,
    mend: 'Escriba un número entero.',
  }),
  'choice-unknown': ({ column, typed, nearest, known }) => ({
    what: `«${typed}» no se conoce en ${column}.`,
    mend: perhaps(nearest, `Escriba uno de estos: ${known}.`),
  }),
  'date-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es una fecha.`,
    mend: 'Escríbala como año, mes y día: 2026-03-31.',
  }),
  'duration-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es un tiempo.`,
    mend: 'Escríbalo como 2 h, 90 min o 3 days.',
  }),
  'volume-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es un volumen.`,
    mend: 'Escríbalo como 1 qt, 1 gal, 500 ml o 2.5 l.',
  }),
  'money-unreadable': ({ column, typed }) => ({
    what: `«${typed}» en ${column} no es una cantidad de dinero.`,
    mend: 'Escríbala como 12.50.',
  }),
  'form-unreadable': ({ column, typed, form }) => ({
    what: `«${typed}» en ${column} no se puede leer.`,
    mend: `Escríbalo como ${form}.`,
  }),
  'text-too-long': ({ column, limit }) => ({
    what: `${column} tiene más de ${limit} caracteres.`,
    mend: 'Acórtelo.',
  }),
  'characters-removed': ({ column, kept }) => ({
    what: `Se quitaron de ${column} caracteres que no se ven; quedó «${kept}».`,
    mend: 'Escriba otra vez la celda si falta algo.',
  }),
  'setting-unknown': ({ typed, nearest }) => ({
    what: `No hay ajuste «${typed}», y no se usó.`,
    mend: perhaps(nearest, 'Vea la tabla de ajustes en el README.'),
  }),
  'setting-twice': ({ setting, other }) => ({
    what: `${setting} se fija por segunda vez; la primera está en ${other}.`,
    mend: 'Borre una de las dos.',
  }),
  'job-number-unsafe': ({ typed }) => ({
    what: `«${typed}» no puede ser el número del trabajo: da nombre a su carpeta.`,
    mend: 'Use letras, cifras, espacios, puntos, guiones y guiones bajos, hasta 40, y empiece por letra o cifra.',
  }),
  'hinge-side-missing': ({ cabinet }) => ({
    what: `${cabinet} tiene una hoja y ningún lado de bisagras.`,
    mend: 'Escriba left o right en Hinge side, o 2 en Leaves.',
  }),
  'hinge-side-unused': ({ cabinet }) => ({
    what: `${cabinet} tiene un lado de bisagras que no dice nada: un par cuelga de los dos lados, y un frente que no es puerta, de ninguno.`,
    mend: 'Vacíe Hinge side, o escriba 1 en Leaves.',
  }),
  'opening-twice': ({ cabinet, label, other }) => ({
    what: `${cabinet}${label === '' ? '' : ` abertura ${label}`} aparece por segunda vez; la primera está en la fila ${other}.`,
    mend: 'Dé a cada abertura de un gabinete su propia marca en Opening, o suba Quantity si son iguales.',
  }),
  'style-not-listed': ({ cabinet, typed, nearest, known }) => ({
    what: `${cabinet} pide el estilo «${typed}», que no está en Styles.`,
    mend: perhaps(
      nearest,
      known === '' ? 'Añádalo a Styles, o deje Style vacío.' : `Use uno de estos: ${known}, o añádalo a Styles.`,
    ),
  }),
  'style-missing': ({ cabinet, known }) => ({
    what: `${cabinet} no tiene estilo, y hay más de uno.`,
    mend: `Escriba uno de estos: ${known}.`,
  }),
  'style-twice': ({ style, other }) => ({
    what: `El estilo ${style} aparece por segunda vez; la primera está en la fila ${other}.`,
    mend: 'Dele otro nombre o bórrelo.',
  }),
  'stock-unknown': ({ column, typed, nearest, known }) => ({
    what: `«${typed}» en ${column} no está en Stock.`,
    mend: perhaps(nearest, known === '' ? 'Añádalo a Stock.' : `Use uno de estos: ${known}, o añádalo a Stock.`),
  }),
  'stock-missing': ({ column, style, known }) => ({
    what: `${style} no dice cuál es su ${column}, y Stock tiene más de uno que serviría.`,
    mend: `Escriba uno de estos: ${known}.`,
  }),
  'stock-is-other-kind': ({ column, stock, is }) => ({
    what: `${stock} es ${KINDS[is]}, y ${column} pide ${KINDS[is === 'board' ? 'sheet' : 'board']}.`,
    mend: `Use ${KINDS[is === 'board' ? 'sheet' : 'board']}, o corrija Kind en Stock.`,
  }),
  'stock-disagrees': ({ column, stock, other }) => ({
    what: `${column} de ${stock} no es igual que en la fila ${other}, y las filas de un mismo nombre son medidas de un mismo material.`,
    mend: 'Haga que coincidan, o dé otro nombre a esta fila.',
  }),
  'neighbour-not-listed': ({ column, typed, nearest, known }) => ({
    what: `«${typed}» en ${column} no es una abertura de este libro.`,
    mend: perhaps(nearest, `Escriba un gabinete, o gabinete/abertura: ${known}.`),
  }),
  'middle-rail-count': ({ cabinet, panels, given }) => ({
    what: `${cabinet} tiene ${panels} paneles de alto y ${given} alturas de travesaños intermedios.`,
    mend: `Dé ${panels - 1}, o ninguna para repartir la altura por igual.`,
  }),
  'middle-rails-out-of-order': ({ cabinet }) => ({
    what: `Las alturas de los travesaños intermedios de ${cabinet} no suben.`,
    mend: 'Escríbalas de abajo arriba, cada una más alta que la anterior.',
  }),
  'mix-parts-differ': ({ step, parts, components }) => ({
    what: `${step} mezcla ${components} componentes en ${parts} partes.`,
    mend: 'Escriba en Mix un número por componente: 2:1 para dos.',
  }),
};

const LOOKS = {
  'web-page': ', es una página web con esa terminación',
  pdf: ', es un PDF',
  text: ', es texto sin formato',
  'other-zip': ', es un archivo comprimido de otra cosa',
  unknown: '',
} as const;

const COUNTED = { rows: 'filas', cells: 'celdas', columns: 'columnas' } as const;

const KINDS = { board: 'una tabla', sheet: 'un tablero' } as const;

const perhaps = (nearest: string, otherwise: string): string =>
  nearest === '' ? otherwise : `¿Quiso decir ${nearest}?`;
