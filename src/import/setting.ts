import type { Shop } from '../trade/shop.ts';
import type { Complaint, FieldCell, Reader } from './cells.ts';
import { isComplaint } from './cells.ts';
import type { SettingValue } from './job.ts';

/** One setting of the shop: what it is called, how it is read, and where in `Shop` it goes. */
export type Setting = {
  readonly name: string;
  readonly also: readonly string[];
  /** One line for the README, and for a note in the blank workbook. */
  readonly explains: string;
  /** What the workbook may hold: `length`, `yes, no`, `20 + 0.5`. */
  readonly form: string;
  /** The value as a workbook would have it; undefined where nothing is set. */
  readonly value: (shop: Shop) => SettingValue | undefined;
  readonly put: (shop: Shop, cell: FieldCell) => Shop | Complaint;
};

/** A kind of value: how it is read, and how a default of it is shown. */
export type Kind<T> = {
  readonly form: string;
  readonly read: Reader<T>;
  readonly show: (value: T) => SettingValue | undefined;
};

/** A setting that is one field of one of the shop's groups. */
export const at = <G extends keyof Shop, K extends keyof Shop[G]>(
  group: G,
  key: K,
  name: string,
  kind: Kind<Shop[G][K]>,
  explains: string,
  also: readonly string[] = [],
): Setting =>
  made(name, kind, explains, also, {
    get: shop => shop[group][key],
    set: (shop, value) => ({ ...shop, [group]: { ...shop[group], [key]: value } }),
  });

/** A setting that is reached in a way of its own. */
export const made = <T>(
  name: string,
  kind: Kind<T>,
  explains: string,
  also: readonly string[],
  place: { readonly get: (shop: Shop) => T | undefined; readonly set: (shop: Shop, value: T) => Shop },
): Setting => ({
  name,
  also,
  explains,
  form: kind.form,
  value: shop => {
    const value = place.get(shop);
    return value === undefined ? undefined : kind.show(value);
  },
  put: (shop, cell) => {
    const value = kind.read(cell);
    return isComplaint(value) ? value : place.set(shop, value);
  },
});
