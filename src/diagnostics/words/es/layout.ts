import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

const BITS = { sticking: 'de perfil', coping: 'de contraperfil', rabbet: 'de rebajar' };

export const layout: Words<LayoutProblems> = {
  'rail-wider-than-sled': ({ style, width, sled }, size) => ({
    what: `${style} tiene travesaños de ${size(width)} de ancho y el carro de contraperfil admite ${size(sled)}.`,
    mend: 'Haga un carro más hondo y ponga su ancho en Shop, o contraperfile antes de aserrar al ancho.',
  }),
  'bit-too-fast': ({ bit, diameter, speed, most }, size) => ({
    what: `La fresa ${BITS[bit]} (${size(diameter)}) gira a ${speed} por minuto: su borde pasa del límite.`,
    mend: `Ponga en Shop una velocidad de ${most} o menos, y nunca más que la marcada en la fresa.`,
  }),
  'clamps-too-few': ({ door, needs, clamps }) => ({
    what: `${door} necesita ${needs} prensas y el taller tiene ${clamps}.`,
    mend: 'Consiga prensas para esta puerta, o corrija su número en Shop.',
  }),
  'board-thinner-than-part': ({ stock, thickness, part, style }, size) => ({
    what: `${stock} tiene ${size(thickness)} de grueso y ${style} pide piezas de ${size(part)} de él.`,
    mend: 'Nombre en Styles un material más grueso, o corrija su grueso en Stock.',
  }),
  'fence-out-of-reach': ({ code, size: wanted, reach, pieces }, size) => ({
    what: `${code}${others(pieces)} pide la guía a ${size(wanted)} y llega a ${size(reach)}.`,
    mend: 'Corte contra una regla sujeta con prensas, o corrija en Shop el alcance de la guía.',
  }),
  'stop-out-of-reach': ({ code, size: wanted, reach, pieces }, size) => ({
    what: `${code}${others(pieces)} pide el tope a ${size(wanted)} y llega a ${size(reach)}.`,
    mend: 'Alargue el tope o marque estas con cinta; corrija en Shop el alcance si está mal.',
  }),
  'barcode-shared': ({ code, other }) => ({
    what: `${code} y ${other} resultaron con el mismo código de barras.`,
    mend: 'Agregue un carácter al número de trabajo: con él cambian todos los códigos.',
  }),
  'pot-too-small': ({ step, door, litres, pot }) => ({
    what: `Una mano de ${step} en ${door} lleva ${litres.toFixed(2)} l y en el vaso caben ${pot.toFixed(2)} l.`,
    mend: 'Ponga en Shop un vaso mayor, o llénelo dos veces sin dejar secar el borde.',
  }),
  'rack-too-small': ({ step, wet, slots }) => ({
    what: `En ${step} hay ${wet} puertas húmedas a la vez y en el secadero caben ${slots}.`,
    mend: 'El plan de días las acaba en varias tandas. Si hay más lugares, anótelo en Shop.',
  }),
  'prices-missing': ({ items }) => ({
    what: `En el total falta el precio de ${items.join(', ')}.`,
    mend: 'Escriba los precios que faltan en Stock, Hardware, Finish y Shop.',
  }),
  'no-working-time': () => ({
    what: 'Nadie trabaja ningún día.',
    mend: 'Ponga en Shop los días de trabajo y las horas por día.',
  }),
  'due-date-missed': ({ due, done, days, people, by }) => ({
    what: `${people === 1 ? 'Una persona termina' : `${people} personas terminan`} el ${done}, ${days} ${days === 1 ? 'día' : 'días'} de trabajo después del ${due}. ${BOTTLENECKS[by]}.`,
    mend: 'Empiece antes, acuerde otra fecha, o dé al trabajo más de lo que lo frena.',
  }),
  'hardware-not-listed': ({ use, count }) => ({
    what: `El trabajo necesita ${count} ${use === 'hinge' ? 'bisagras' : 'tiradores'} y Hardware no los nombra.`,
    mend: `Agregue en Hardware una fila con el uso ${use}.`,
  }),
  'piece-fits-no-stock': ({ code, stock, length, width }, size) => ({
    what: `${code} necesita ${size(length)} × ${size(width)} y ningún ${stock} es tan grande.`,
    mend: 'Agregue a Stock una tabla o un tablero mayor.',
  }),
  'stock-runs-out': ({ stock, pieces }) => ({
    what: `Se acabó el ${stock} disponible y faltan ${pieces} piezas por cortar.`,
    mend: 'Escriba sí en Comprar para una medida, o agregue lo que hay disponible.',
  }),
};

const others = (pieces: number): string => (pieces === 1 ? '' : ` (y ${pieces - 1} más)`);

const BOTTLENECKS: { readonly [By in LayoutProblems['due-date-missed']['by']]: string } = {
  'critical-path': 'Lo frena la cadena más larga de trabajos y esperas',
  people: 'Lo frenan las horas de las personas',
  clamps: 'Lo frena el número de prensas',
  spray: 'Lo frenan los lugares para pistolear',
  rack: 'Lo frena el secadero',
};
