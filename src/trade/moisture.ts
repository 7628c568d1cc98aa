/**
 * Constants of the equation for the equilibrium moisture content of wood, as polynomials of the temperature in °C:
 * USDA Forest Products Laboratory, Wood Handbook (FPL-GTR-190, 2010), eq. 4–5, metric; Simpson 1998, FPL-RN-268.
 */
export const EMC_POLYNOMIALS = {
  W: [349, 1.29, 0.0135],
  K: [0.805, 0.000736, -0.00000273],
  K1: [6.27, -0.00938, -0.000303],
  K2: [1.91, 0.0407, -0.000293],
} as const;

/** Percent of moisture between which the coefficients of movement hold: the same, title of table 13–5. */
export const MOVEMENT_VALID = { from: 6, to: 14 } as const;
