/** The few things that the program asks of the machine. Stages never see it; tests hand in one that fails. */
export type Host = {
  readonly read: (path: string) => Promise<Uint8Array>;
  /** All the files of a folder appear together under its name, or none: written aside, synced, renamed. */
  readonly writeFolder: (path: string, files: readonly WholeFile[]) => Promise<void>;
  /** The file appears whole under its name, or not at all. `secret`: for nobody's eyes but this user's. */
  readonly writeFile: (path: string, bytes: Uint8Array, secret?: 'secret') => Promise<void>;
  readonly now: () => Date;
};

export type WholeFile = { readonly name: string; readonly bytes: Uint8Array };
