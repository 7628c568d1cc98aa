import { pounds } from '../../../units/mass.ts';
import type { CalculateProblems, FrameSide, GroovedMember } from '../../problems/calculate.ts';
import type { Words } from '../../words.ts';

export const calculate: Words<CalculateProblems> = {
  'door-has-no-size': ({ door, width, height }, size) => ({
    what: `La puerta de ${door} resulta de ${size(width)} de ancho y ${size(height)} de alto.`,
    mend: 'Agrande el hueco, o reduzca las holguras y la separación del par.',
  }),
  'rail-has-no-length': ({ door, shoulder }, size) => ({
    what: `${door} es demasiado angosta para sus largueros: quedan ${size(shoulder)} entre ellos.`,
    mend: 'Ensanche el hueco o use largueros más angostos.',
  }),
  'sight-has-no-width': ({ door, width }, size) => ({
    what: `${door} es demasiado angosta para sus largueros centrales: de cada panel se verían ${size(width)}.`,
    mend: 'Ensanche el hueco, use largueros más angostos o reduzca Panels wide.',
  }),
  'sight-has-no-height': ({ door, row, height }, size) => ({
    what: `Entre los peinazos de ${door}, del panel ${row} desde abajo se verían ${size(height)}.`,
    mend: 'Haga el hueco más alto, los peinazos más angostos, o separe más las alturas, de abajo arriba.',
  }),
  'panel-leaves-groove': ({ door, width, shrinks, swells, gap }, size) => ({
    what: `El panel macizo de ${door}, de ${size(width)} de ancho, se hincha ${size(swells)} y se encoge ${size(shrinks)}: en las semanas más secas queda a ${size(gap)} fuera de su ranura en cada canto.`,
    mend: 'Use una ranura más honda, madera de corte radial, dos paneles lado a lado, o contrachapado.',
  }),
  'panel-barely-held': ({ door, width, shrinks, swells, engagement, least }, size) => ({
    what: `El panel macizo de ${door}, de ${size(width)} de ancho, se hincha ${size(swells)} y se encoge ${size(shrinks)}: en las semanas más secas quedan ${size(engagement)} en la ranura en cada canto, menos de ${size(least)}.`,
    mend: 'Use una ranura más honda, madera de corte radial, o dos paneles lado a lado.',
  }),
  'door-wants-middle-rail': ({ door, height, from }, size) => ({
    what: `La puerta de ${door} mide ${size(height)} de alto y no tiene peinazo central; por encima de ${size(from)} hace falta uno.`,
    mend: 'Escriba 2 o más en Panels high.',
  }),
  'door-beyond-hinge-table': ({ door, height, mass }, size) => ({
    what: `La puerta de ${door}, de ${size(height)} de alto y ${mass.toFixed(1)} kg (${pounds(mass).toFixed(1)} lb), sale de la tabla de bisagras; lleva las más de la tabla.`,
    mend: 'Pregunte al fabricante de la bisagra y ponga los números en la tabla.',
  }),
  'door-too-short-for-hinges': ({ door, height, hinges }, size) => ({
    what: `La puerta de ${door} mide ${size(height)} de alto: las placas de sus ${hinges} bisagras se estorban.`,
    mend: 'Haga la puerta más alta, o cuélguela de otro modo.',
  }),
  'hinges-closer-than-width': ({ door, apart, width }, size) => ({
    what: `Las bisagras extremas de ${door} distan ${size(apart)}, y la puerta mide ${size(width)} de ancho: puede descolgarse.`,
    mend: 'Haga un par de hojas, o ponga las bisagras más cerca de los extremos.',
  }),
  'hinge-on-rail-joint': ({ door, fromTop, shiftMax }, size) => ({
    what: `La bisagra de ${door} a ${size(fromTop)} desde arriba cae sobre la unión de un peinazo central, y no hay lugar libre a menos de ${size(shiftMax)}.`,
    mend: 'Mueva el peinazo central, o permita un desplazamiento mayor de la bisagra.',
  }),
  'pull-off-the-door': ({ door, fromLeft, fromBottom }, size) => ({
    what: `Un taladro del tirador de ${door}, a ${size(fromLeft)} de la izquierda y ${size(fromBottom)} de abajo, cae fuera de la puerta.`,
    mend: 'Use un tirador más pequeño, o cambie sus distancias en Shop.',
  }),
  'pull-in-groove': ({ door, fromEdge, solid }, size) => ({
    what: `El tirador de ${door}, a ${size(fromEdge)} del canto, se taladra en la ranura: el larguero sólo es macizo en ${size(solid)}.`,
    mend: 'Ponga el tirador más cerca del canto.',
  }),
  'overlay-wider-than-frame': ({ door, side, overlay, member }, size) => ({
    what: `La puerta de ${door} cubre ${size(overlay)} del marco frontal ${SIDES[side]}, y esa pieza mide ${size(member)} de ancho.`,
    mend: 'Reduzca la superposición, o corrija el ancho del marco frontal.',
  }),
  'reveal-too-small': ({ door, neighbour, side, member, overlays, left, reveal }, size) => ({
    what: `${door} y ${neighbour} comparten una pieza del marco frontal de ${size(member)} (${SIDES[side]} de ${door}); sus superposiciones toman ${size(overlays)}, y quedan ${size(left)} donde deben verse ${size(reveal)}.`,
    mend: 'Reduzca una de las dos superposiciones.',
  }),
  'neighbour-ambiguous': ({ door, neighbour }) => ({
    what: `${door} nombra a ${neighbour} como vecino, que tiene varios huecos; no se comprobó lo que se ve entre ellos.`,
    mend: `Escriba cuál, como ${neighbour}/A.`,
  }),
  'groove-deeper-than-member': ({ style, member, width, grooves }, size) => ({
    what: `${MEMBERS[member]} del estilo ${style} mide ${size(width)} de ancho, y las ranuras toman ${size(grooves)}.`,
    mend: 'Haga la pieza más ancha o la ranura menos honda.',
  }),
  'member-between-marks': ({ style, member, width }, size) => ({
    what: `${MEMBERS[member]} del estilo ${style} cae entre dos marcas de la cinta y se imprime como ${size(width)}; las sumas de lo impreso pueden diferir otro tanto, y el desarrollo dice cuánto.`,
    mend: 'Dé su ancho en las marcas, o imprima las longitudes en milímetros (Shop).',
  }),
  'groove-breaks-back': ({ style, reaches, frameThickness }, size) => ({
    what: `La ranura del estilo ${style} llega a ${size(reaches)} de la cara vista, y el marco tiene ${size(frameThickness)} de grueso: no queda labio atrás.`,
    mend: 'Use madera más gruesa, una ranura más angosta, o acérquela a la cara.',
  }),
  'tongue-longer-than-groove': ({ style, tongue, groove }, size) => ({
    what: `Las lengüetas del estilo ${style} miden ${size(tongue)} y topan en ranuras de ${size(groove)}: los hombros quedarían abiertos.`,
    mend: 'Haga la lengüeta tan larga como honda es la ranura, o algo más corta.',
  }),
  'panel-not-in-groove': ({ style, groove, allowance }, size) => ({
    what: `La ranura del estilo ${style} tiene ${size(groove)} de hondo, y el panel se corta ${size(allowance)} más corto en cada canto: nada lo sujeta.`,
    mend: 'Haga la ranura más honda o la holgura menor.',
  }),
  'panel-tongue-too-thin': ({ style, groove, fit }, size) => ({
    what: `El panel del estilo ${style} pide una lengüeta para una ranura de ${size(groove)}, y el ajuste toma ${size(fit)}.`,
    mend: 'Haga la ranura más ancha o el ajuste menor.',
  }),
  'panel-loose-in-groove': ({ style, panel, groove }, size) => ({
    what: `El panel del estilo ${style} tiene ${size(panel)} de grueso en una ranura de ${size(groove)}: sonará suelto.`,
    mend: 'Use una ranura más angosta o un panel más grueso; el que es más grueso que la ranura se rebaja.',
  }),
  'panel-proud-of-back': ({ style, proud }, size) => ({
    what: `El panel del estilo ${style} sobresale ${size(proud)} por detrás del marco: la puerta baila en el banco, estorba a la plantilla de taladrar, y las placas de las bisagras deben librarlo.`,
    mend: 'Use un panel más delgado, un marco más grueso, o acerque la ranura a la cara.',
  }),
  'glass-without-stop': ({ style, left }, size) => ({
    what: `Detrás del vidrio del estilo ${style} quedan ${size(left)} para un junquillo.`,
    mend: 'Use vidrio más delgado, un marco más grueso, o acerque la ranura a la cara.',
  }),
  'stock-too-thin': ({ style, stock, has, wants }, size) => ({
    what: `El estilo ${style} pide piezas de ${size(wants)} de grueso de ${stock}, que tiene ${size(has)}.`,
    mend: 'Elija madera más gruesa, o corrija el grueso.',
  }),
  'sheet-thickness-differs': ({ style, stock, has, wants }, size) => ({
    what: `El estilo ${style} cuenta con una hoja de ${size(wants)} de grueso, y ${stock} tiene ${size(has)}; el rebajo se corta para la primera.`,
    mend: 'Mida la hoja, y escriba el mismo grueso en Styles y en Stock.',
  }),
  'cup-breaks-into-groove': ({ style, wants, has }, size) => ({
    what: `La cazoleta de la bisagra pide ${size(wants)} del larguero del estilo ${style}, y junto a la ranura hay ${size(has)} macizos: la rompería.`,
    mend: 'Use largueros más anchos, una ranura menos honda, o ponga la cazoleta más cerca del canto.',
  }),
  'cup-breaks-through': ({ style, left, least }, size) => ({
    what: `Bajo la cazoleta de la bisagra quedan ${size(left)} de madera en el estilo ${style}, y debe haber ${size(least)}.`,
    mend: 'Use madera más gruesa o una bisagra de cazoleta menos honda.',
  }),
  'movement-unknown': ({ style, stock, species, known }) => ({
    what: `Los paneles macizos del estilo ${style} son de ${stock}, y cómo se mueve "${species}" con las estaciones no está en las tablas.`,
    mend: `Escriba en Stock la de éstas que más se le parezca en su movimiento: ${known}.`,
  }),
  'moisture-beyond-table': ({ style, moisture }) => ({
    what: `La madera del estilo ${style} llega a ${moisture.toFixed(1)} % de humedad; los coeficientes de movimiento se publican de 6 a 14 %, así que su movimiento es una estimación.`,
    mend: 'No hay que hacer nada; sea generoso con la ranura.',
  }),
  'species-unknown': ({ stock, species, density }) => ({
    what: `${stock} es de "${species}", que no está en las tablas; sus puertas se pesan con ${density} kg/m³.`,
    mend: 'Escriba su densidad en Stock.',
  }),
  'barcode-clash': ({ one, other }) => ({
    what: `${one} y ${other} llevarían el mismo código de barras. Ocurre en menos de un trabajo de cada diez mil.`,
    mend: 'Cambie un poco el nombre de uno de los dos huecos.',
  }),
};

const SIDES: { readonly [S in FrameSide]: string } = {
  left: 'a la izquierda',
  right: 'a la derecha',
  top: 'arriba',
  bottom: 'abajo',
};

const MEMBERS: { readonly [M in GroovedMember]: string } = {
  stile: 'El larguero',
  'rail-top': 'El peinazo superior',
  'rail-bottom': 'El peinazo inferior',
  'rail-middle': 'El peinazo central',
  'stile-middle': 'El larguero central',
};
