import type { LayoutProblems } from '../../problems/layout.ts';
import type { Words } from '../../words.ts';

export const layout: Words<LayoutProblems> = {
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
