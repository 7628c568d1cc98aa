import type { WholeFile } from '../host.ts';

/** What the inbox asks of those who know workbooks. */
export type Workbooks = {
  /** Whose job a file is. `half` is said of what may be a copy that has not ended. */
  readonly read: (bytes: Uint8Array, name: string) => Promise<Reading>;
  readonly build: (order: Order) => Promise<Result>;
  /** How many builds may run at once. */
  readonly builders: number;
  readonly close: () => Promise<void>;
};

export type Reading =
  | { readonly kind: 'workbook'; readonly job: string }
  | { readonly kind: 'half' }
  | { readonly kind: 'unreadable' };

/** A packet to build. */
export type Order = {
  readonly bytes: Uint8Array;
  readonly name: string;
  readonly inputHash: string;
  readonly revision: string;
  /** The folder of the revision before, to say what changed since. */
  readonly earlier: { readonly letter: string; readonly folder: string } | undefined;
};

/** A packet's files; or those that go back to the person who dropped the workbook: a marked copy, and its findings. */
export type Result =
  | {
      readonly kind: 'packet';
      readonly job: string;
      readonly files: readonly WholeFile[];
      readonly doors: number;
      readonly parts: number;
      readonly pages: number;
      readonly warnings: number;
    }
  | {
      readonly kind: 'to-mend';
      /** Empty where the file could not be read so far. */
      readonly job: string;
      readonly files: readonly WholeFile[];
      readonly findings: readonly string[];
    };

/** What happened, for a person or a program to read. */
export type News =
  | {
      readonly kind: 'packet';
      readonly name: string;
      readonly job: string;
      readonly revision: string;
      readonly folder: string;
      readonly doors: number;
      readonly warnings: number;
      readonly seconds: number;
    }
  | {
      readonly kind: 'to-mend';
      readonly name: string;
      readonly job: string;
      readonly folder: string;
      readonly problems: number;
    }
  | { readonly kind: 'known'; readonly name: string; readonly folder: string }
  | { readonly kind: 'failed'; readonly name: string; readonly reason: string }
  | { readonly kind: 'passed-over'; readonly name: string; readonly reason: string }
  /** It can be read again. */
  | { readonly kind: 'folder-there'; readonly name: '' }
  | { readonly kind: 'folder-gone'; readonly name: ''; readonly reason: string };
