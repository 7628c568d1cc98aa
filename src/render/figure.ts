/**
 * A drawing as data, in points (1/72 in), from its top left corner down. Drawings are made by `drawings/`, placed by
 * `flow`, and put on paper by `draw`, which decides nothing. Black on white: `grey` is 0 for black to 1 for white.
 */
export type Figure = { readonly width: number; readonly height: number; readonly marks: readonly Mark[] };

export type Mark =
  | {
      readonly kind: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly weight: number;
      readonly dash?: readonly number[];
    }
  | {
      readonly kind: 'polygon';
      readonly points: readonly (readonly [x: number, y: number])[];
      /** Open polygons are polylines; they are never filled. */
      readonly closed: boolean;
      readonly weight?: number;
      readonly dash?: readonly number[];
      readonly fill?: number;
    }
  | {
      readonly kind: 'circle';
      readonly x: number;
      readonly y: number;
      readonly radius: number;
      readonly weight?: number;
      readonly fill?: number;
    }
  | {
      /** `x`, `y` is the base line's start, middle or end, as `align` says. Fractions such as `14 3/8` are set as such. */
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly bold?: boolean;
      readonly align: 'left' | 'centre' | 'right';
      /** Degrees counter-clockwise; 90 reads from below. */
      readonly turn?: 0 | 90;
      /** A white box behind it, where it stands on lines. */
      readonly mask?: boolean;
    };

/** All that a drawing says, by which drawings that show the same sizes are known to be alike. */
export const wordsIn = ({ marks }: Figure): string =>
  marks.flatMap(mark => (mark.kind === 'text' ? [mark.text] : [])).join('\n');

/** How wide a text will be, in points: so that a drawing can make room for its dimensions. */
export type Measure = (text: string, size: number, bold: boolean) => number;
