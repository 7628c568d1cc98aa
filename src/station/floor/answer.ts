import type { Happening } from './event.ts';
import type { Question } from './scan.ts';

/** What a station is told about a piece in the hand. Texts are in the words of its packet. */
export type PieceFacts = {
  readonly job: string;
  readonly kind: 'part' | 'door';
  /** With its remake number. */
  readonly code: string;
  readonly name: string;
  readonly door: string;
  readonly cabinet: string;
  readonly room: string;
  readonly size: readonly string[];
};

/** An operation by its name, and where it is done. */
export type Step = { readonly operation: string; readonly station: string };

/** How this operation is set up for this piece. */
export type Instruction = {
  readonly setup: string;
  readonly facing: string;
  readonly settings: readonly { readonly name: string; readonly text: string }[];
  readonly reminders: readonly string[];
};

/** What is to be done before, and on which piece. */
export type Missing = { readonly code: string; readonly operations: readonly string[] };

export type Count = { readonly done: number; readonly total: number };

/** What a scan led to. Only `done`, `batch-done`, `spoiled` and `undone` were kept; the rest ask or tell. */
export type Answer =
  | {
      readonly kind: 'done';
      readonly piece: PieceFacts;
      readonly step: Step;
      readonly instruction: Instruction;
      readonly next: Step | undefined;
      /** The pieces of this operation; of the door, how many of its parts are ready. */
      readonly run: Count;
      readonly parts: Count;
      readonly complete: 'no' | 'part' | 'door-parts' | 'door';
      /** Counted although steps before it were not scanned. */
      readonly vouched: number;
    }
  | { readonly kind: 'batch-done'; readonly step: Step; readonly pieces: readonly string[]; readonly run: Count }
  | {
      readonly kind: 'spoiled';
      readonly piece: PieceFacts;
      /** The codes of what is made anew: of a door, every part of it. */
      readonly remakes: readonly string[];
      readonly from: readonly Source[];
    }
  | { readonly kind: 'undone'; readonly pieces: readonly string[]; readonly step: Step | undefined }
  | { readonly kind: 'nothing-to-undo' }
  | { readonly kind: 'remade-since'; readonly codes: readonly string[] }
  | {
      readonly kind: 'ask-order';
      readonly piece: PieceFacts;
      readonly step: Step;
      readonly missing: readonly Missing[];
      /** A wait that is not over, and the minutes that are left of it. */
      readonly early: { readonly operation: string; readonly minutes: number } | undefined;
    }
  | {
      readonly kind: 'ask-changed';
      readonly piece: PieceFacts;
      readonly revision: string;
      readonly was: readonly string[];
      readonly wasRevision: string;
      readonly marks: number;
    }
  | {
      readonly kind: 'ask-batch';
      readonly setup: string;
      readonly step: Step;
      readonly instruction: Instruction;
      readonly ready: readonly string[];
      readonly before: number;
      readonly notReady: readonly string[];
    }
  | { readonly kind: 'ask-spoil'; readonly piece: PieceFacts; readonly remakes: readonly string[] }
  | {
      readonly kind: 'twice';
      readonly piece: PieceFacts;
      readonly step: Step;
      readonly at: string;
      readonly next: Step | undefined;
    }
  | { readonly kind: 'batch-twice'; readonly step: Step; readonly pieces: number; readonly notReady: readonly string[] }
  | { readonly kind: 'elsewhere'; readonly piece: PieceFacts; readonly here: string; readonly next: Step | undefined }
  | { readonly kind: 'setup-elsewhere'; readonly setup: string; readonly step: Step }
  | { readonly kind: 'old-tag'; readonly piece: PieceFacts; readonly code: string }
  | { readonly kind: 'gone'; readonly code: string; readonly job: string; readonly revision: string }
  | {
      readonly kind: 'offcut';
      readonly code: string;
      readonly job: string;
      readonly stock: string;
      readonly size: readonly string[];
    }
  | { readonly kind: 'wrong-job'; readonly code: string; readonly job: string; readonly chosen: string }
  | { readonly kind: 'which-job'; readonly code: string; readonly jobs: readonly string[] }
  | { readonly kind: 'unknown-job'; readonly code: string }
  | { readonly kind: 'unknown'; readonly code: string }
  | { readonly kind: 'mistyped'; readonly code: string };

/** Where the wood for a remake may come from. */
export type Source =
  | { readonly kind: 'offcut'; readonly code: string; readonly size: readonly string[] }
  | { readonly kind: 'spare'; readonly stock: string };

/** What to tell, and what to keep. Nothing is kept until the ledger has it. */
export type Decision = {
  readonly answer: Answer;
  readonly keep: { readonly job: string; readonly revision: string; readonly what: Happening } | undefined;
};

export const questionOf = (answer: Answer): Question | undefined => {
  switch (answer.kind) {
    case 'ask-order':
      return 'order';
    case 'ask-changed':
      return 'changed';
    case 'ask-batch':
      return 'batch';
    case 'ask-spoil':
      return 'spoil';
    default:
      return undefined;
  }
};
