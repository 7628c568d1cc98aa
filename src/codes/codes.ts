declare const partCode: unique symbol;
declare const doorCode: unique symbol;
declare const blankCode: unique symbol;
declare const setupCode: unique symbol;
declare const barcode: unique symbol;

/** A part's name for life: cabinet, opening label, copy, leaf and role; never the order of rows. `B7.A.1L-SL` */
export type PartCode = string & { readonly [partCode]: true };
/** A door's name for life: a part's code without its role. `B7.A.1L` */
export type DoorCode = string & { readonly [doorCode]: true };
/** A rough piece: the code of the part that it becomes, or its own where it becomes a test piece or a spare. */
export type BlankCode = string & { readonly [blankCode]: true };
/** One machine setting of an operation, and the pieces run at it. */
export type SetupCode = string & { readonly [setupCode]: true };
/** What a scanner types: job mark, part mark, check character; at most 11 characters of 0–9 A–Z. */
export type Barcode = string & { readonly [barcode]: true };
