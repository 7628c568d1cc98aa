/** Minutes to get ready for one coat (mix, strain, load, clean up), and for each door of it, both faces and the edges. */
export type CoatMinutes = { readonly setup: number; readonly piece: number };

/** What is done to a door's surface in one step of the finish. */
export type FinishKind = 'sand' | 'stain' | 'seal' | 'topcoat' | 'wait';

/** Common practice: wiping takes longer than spraying, and a door is turned once in every coat. */
export const COAT_MINUTES: { readonly [K in FinishKind]: CoatMinutes } = {
  sand: { setup: 5, piece: 5 },
  stain: { setup: 15, piece: 5 },
  seal: { setup: 15, piece: 3 },
  topcoat: { setup: 15, piece: 3 },
  wait: { setup: 0, piece: 0 },
};

/** Which side of a door comes first. The show face is last, so that nothing touches it wet: common practice. */
export type DoorSide = 'back' | 'edges' | 'face';

export const ORDER_OF_SIDES: { readonly [K in FinishKind]: readonly DoorSide[] } = {
  // Edges last: sanding a face rolls dust and a burr over them.
  sand: ['back', 'face', 'edges'],
  stain: ['edges', 'back', 'face'],
  seal: ['edges', 'back', 'face'],
  topcoat: ['edges', 'back', 'face'],
  wait: [],
};

/** Grits of the sanding that comes before the finish, coarse first: common practice. */
export const BEFORE_FINISH: readonly number[] = [120, 150];
