/** Templates as the library compiles them, by their text: one that was changed since is another. */
export type CompiledAhead = ReadonlyMap<string, TemplateSpecification>;

/**
 * The templates that ship. Where the program is run from its sources nothing is compiled ahead: `.build.js` puts what it
 * has compiled in this file's place, because compiling takes a tenth of a small job's whole time.
 */
export const COMPILED_AHEAD: CompiledAhead = new Map();
