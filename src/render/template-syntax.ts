import Handlebars from 'handlebars';

/** With its helpers known, the library writes half the code for a field: it need not ask whether that is a helper. */
export const COMPILING = { strict: true, knownHelpers: { is: true, w: true }, knownHelpersOnly: true } as const;

/** A template's name is its file's, without folder and ending. */
export const nameOf = (file: string): string => file.replace(/^.*\//, '').replace(/\.[a-z]+$/, '');

/**
 * A template's syntax, with each field that it names asked to be there and each partial to be one of `names`; marked with
 * `index`, its place among the templates, before each line if asked for.
 */
export function syntax(
  text: string,
  names: ReadonlySet<string>,
  index: number,
  lines: 'plain' | 'lines marked',
): hbs.AST.Program {
  const program = Handlebars.parse(text);
  new (lines === 'plain' ? Strict : StrictAndMarked)(index, names).accept(program);
  return program;
}

/** The library asks only what is printed to be there; here a misspelt field in a choice or a loop is found too. */
class Strict extends Handlebars.Visitor {
  protected readonly index: number;
  private readonly names: ReadonlySet<string>;
  constructor(index: number, names: ReadonlySet<string>) {
    super();
    this.index = index;
    this.names = names;
  }
  override PathExpression(path: hbs.AST.PathExpression): void {
    Object.assign(path, { strict: !path.data });
  }
  override PartialStatement(partial: hbs.AST.PartialStatement): void {
    const { type, original } = partial.name as hbs.AST.PathExpression;
    const name = String(original);
    // A partial whose name is worked out is known only when it is filled.
    if (String(type) !== 'SubExpression' && !this.names.has(name)) {
      throw new Handlebars.Exception(`there is no template "${name}"`, partial);
    }
    super.PartialStatement(partial);
  }
}

/** Leaves a mark of file and line before each line of a template's own text, for the search of a problem's place. */
class StrictAndMarked extends Strict {
  override ContentStatement(content: hbs.AST.ContentStatement): void {
    const from = content.loc.start.line + linesIn(String(content.original).split(content.value)[0] ?? '');
    content.value = content.value
      .split('\n')
      .map((line, number) => `\uE000${this.index}:${from + number}\uE001${line}`)
      .join('\n');
  }
}

const linesIn = (text: string): number => text.split('\n').length - 1;
