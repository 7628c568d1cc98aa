/** Rows of one sheet under their names; `named` has those, too, whose row did not read. */
export type Named<T> = { readonly items: readonly T[]; readonly named: readonly string[] };

/** An opening goes by its cabinet, and where that has several by `cabinet/opening`. */
export const addressOf = (cabinet: string, label: string): string => (label === '' ? cabinet : `${cabinet}/${label}`);
