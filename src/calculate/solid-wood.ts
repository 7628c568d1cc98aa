import { type Diagnosed, type Diagnostic, problem } from '../diagnostics/diagnostic.ts';
import { cellOf } from '../diagnostics/place.ts';
import type { FrameStyle, Style } from '../import/job.ts';
import { MOVEMENT_VALID } from '../trade/moisture.ts';
import { SPECIES } from '../trade/species.ts';
import type { Materials } from './materials.ts';
import type { Moistures } from './moisture.ts';

/**
 * Keeps the styles whose wood is known well enough: a solid panel of a species that the tables do not have cannot be
 * sized. Says once for each style that the moisture goes beyond what the coefficients were published for.
 */
export function withKnownMovement(
  styles: readonly Style[],
  materials: Materials,
  air: Moistures,
): Diagnosed<readonly Style[]> {
  const known = styles.filter(style => !isSolid(style) || materials.speciesOf(style.infill.stock) !== undefined);
  return {
    value: known,
    diagnostics: styles
      .filter(isSolid)
      .flatMap(style => [...(known.includes(style) ? beyondTable(style, air) : [unknown(style, materials)])]),
  };
}

type SolidStyle = FrameStyle & { readonly infill: { readonly kind: 'solid' } };
const isSolid = (style: Style): style is SolidStyle => style.build === 'frame' && style.infill.kind === 'solid';

const unknown = (style: SolidStyle, materials: Materials): Diagnostic =>
  problem('movement-unknown', cellOf(style.from, 'panelStock'), {
    style: style.name,
    stock: style.infill.stock,
    species: materials.speciesNameOf(style.infill.stock),
    known: SPECIES.map(({ name }) => name).join(', '),
  });

const beyondTable = (style: SolidStyle, air: Moistures): readonly Diagnostic[] =>
  [air.made, air.driest, air.wettest]
    .map(moisture => moisture.value.value)
    .filter(moisture => moisture < MOVEMENT_VALID.from || moisture > MOVEMENT_VALID.to)
    .map(moisture =>
      problem('moisture-beyond-table', cellOf(style.from, 'panelStock'), { style: style.name, moisture }),
    );
