/**
 * What is known of a species. Coefficients are the dimensional change for each percent of moisture content, radial
 * (across quarter-sawn boards) and tangential (across flat-sawn ones), valid from 6 to 14 %; the specific gravity is on
 * oven-dry mass and volume at 12 % moisture.
 */
export type Species = {
  readonly name: string;
  /** Other names that it is sold under. */
  readonly also: readonly string[];
  /** USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), table 13–5. */
  readonly radial: number;
  readonly tangential: number;
  /** The same, table 5–3b, at 12 %. */
  readonly gravity: number;
};

/** Finds a species by any of its names; undefined where the tables do not have it. */
export const findSpecies = (name: string): Species | undefined => BY_NAME.get(bareName(name));

/** `Hard Maple`, `hard-maple` and `maple, hard` are not told apart by anything but their letters. */
const bareName = (name: string): string =>
  name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter(word => word !== '')
    .sort()
    .join(' ');

/**
 * Red and white oak have the coefficients of their commercial groups, and the gravity of their first species. The
 * figures of yellow-poplar and the gravity of walnut are from memory.
 */
export const SPECIES: readonly Species[] = [
  { name: 'sugar maple', also: ['hard maple', 'maple'], radial: 0.00165, tangential: 0.00353, gravity: 0.63 },
  { name: 'red maple', also: ['soft maple'], radial: 0.00137, tangential: 0.00289, gravity: 0.54 },
  { name: 'silver maple', also: [], radial: 0.00102, tangential: 0.00252, gravity: 0.47 },
  { name: 'black cherry', also: ['cherry'], radial: 0.00126, tangential: 0.00248, gravity: 0.5 },
  { name: 'red oak', also: ['northern red oak'], radial: 0.00158, tangential: 0.00369, gravity: 0.63 },
  { name: 'white oak', also: [], radial: 0.0018, tangential: 0.00365, gravity: 0.68 },
  { name: 'black walnut', also: ['walnut'], radial: 0.0019, tangential: 0.00274, gravity: 0.55 },
  { name: 'yellow birch', also: ['birch'], radial: 0.00256, tangential: 0.00338, gravity: 0.62 },
  { name: 'pecan hickory', also: ['pecan'], radial: 0.00169, tangential: 0.00315, gravity: 0.66 },
  { name: 'hickory', also: ['true hickory'], radial: 0.00259, tangential: 0.00411, gravity: 0.72 },
  { name: 'white ash', also: ['ash'], radial: 0.00169, tangential: 0.00274, gravity: 0.6 },
  { name: 'American beech', also: ['beech'], radial: 0.0019, tangential: 0.00431, gravity: 0.64 },
  { name: 'red alder', also: ['alder'], radial: 0.00151, tangential: 0.00256, gravity: 0.41 },
  { name: 'yellow poplar', also: ['poplar', 'tulip poplar'], radial: 0.00158, tangential: 0.00289, gravity: 0.42 },
];

const BY_NAME: ReadonlyMap<string, Species> = new Map(
  SPECIES.flatMap(species => [species.name, ...species.also].map(name => [bareName(name), species] as const)),
);
