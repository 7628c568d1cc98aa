/** Clamps across a panel that is glued up from strips: one near each end and one between, on both faces in turn. Common practice. */
export const CLAMPS_FOR_A_PANEL = 3;
