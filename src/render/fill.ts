import { isDeepStrictEqual } from 'node:util';
import Handlebars from 'handlebars';
import { type Diagnosed, problem } from '../diagnostics/diagnostic.ts';
import { COMPILED_AHEAD, type CompiledAhead } from './compiled-ahead.ts';
import type { Filled } from './markup.ts';
import { COMPILING, nameOf, syntax } from './template-syntax.ts';

/** A template as it was read; its name is the file's, without folder and ending. */
export type Template = { readonly file: string; readonly text: string };

/** The words of one language, by key. `{count}` in them is a hole that the template fills. */
export type PacketWords = { readonly [key: string]: string };

/** Puts data into the template of that name. Data has every field that the template asks for, if only as undefined. */
export type Fill = (name: string, data: object) => Diagnosed<Filled>;

/**
 * Makes the templates of one language ready. Each can hold any other as a partial (`{{> foot}}`), and say
 * `{{w "route.count" count=n}}` for words, `{{#if (is kind "pair")}}` for a choice. All data is escaped; a field that
 * the data does not have, and a key without words, are problems at the template's line.
 */
export function prepare(templates: readonly Template[], words: PacketWords, ahead = COMPILED_AHEAD): Fill {
  if (lately === undefined || lately.ahead !== ahead || !isDeepStrictEqual(lately.templates, templates)) {
    const marked = compiler(templates, 'lines marked', new Map());
    lately = { templates, ahead, plain: compiler(templates, 'plain', ahead), marked };
  }
  const { plain, marked } = lately;
  const given = { data: { words } };
  return (name, data) => {
    try {
      const text = legible(plain(name)(data, given));
      return {
        value: { text, origin: at => lineAt(legible(marked(name)(data, given)), at, templates) },
        diagnostics: [],
      };
    } catch (error) {
      return unreadable(error);
    }
  };
}

type Compiler = (name: string) => Handlebars.TemplateDelegate;

/** An inbox prints job after job from the same templates, and to compile them takes as long as to fill a kitchen's. */
let lately:
  | {
      readonly templates: readonly Template[];
      readonly ahead: CompiledAhead;
      readonly plain: Compiler;
      readonly marked: Compiler;
    }
  | undefined;

/** Compiles each template when it is first asked for, if that was not done ahead. */
function compiler(templates: readonly Template[], lines: 'plain' | 'lines marked', ahead: CompiledAhead): Compiler {
  const bars = Handlebars.create();
  bars.registerHelper('is', (one: unknown, other: unknown) => one === other);
  bars.registerHelper('w', say);
  const names = new Set(templates.map(({ file }) => nameOf(file)));
  const ready = new Map<string, Handlebars.TemplateDelegate>();
  const run = (name: string): Handlebars.TemplateDelegate => {
    const known = ready.get(name);
    if (known !== undefined) return known;
    const index = templates.findIndex(template => nameOf(template.file) === name);
    const template = templates[index];
    if (template === undefined) throw new TroubleIn(name, 1, 'there is no such template');
    const done = ahead.get(template.text);
    const made =
      done === undefined
        ? inFile(template, () => bars.compile(syntax(template.text, names, index, lines), COMPILING))
        : bars.template(done);
    const safe: Handlebars.TemplateDelegate = (data, options) => inFile(template, () => made(data, options));
    ready.set(name, safe);
    return safe;
  };
  // As functions, so that trouble in a partial names the partial's file.
  for (const { file } of templates) {
    bars.registerPartial(nameOf(file), (data, options) => run(nameOf(file))(data, options));
  }
  return run;
}

function say(key: string, options: Handlebars.HelperOptions): string {
  const { words }: { readonly words: PacketWords } = options.data;
  const text = Object.hasOwn(words, key) ? words[key] : undefined;
  const holes: { readonly [name: string]: unknown } = options.hash;
  // The library hands the place over and does not say so in its types.
  const { loc } = options as { loc?: hbs.AST.SourceLocation };
  if (text === undefined) throw new Handlebars.Exception(`there are no words for "${key}"`, { loc } as hbs.AST.Node);
  return text.replace(/\{(\w+)\}/g, (hole, name: string) => (name in holes ? String(holes[name]) : hole));
}

const LINE_MARK = /\uE000(\d+):(\d+)\uE001/g;

/** The template's line that wrote the character `at` of the text, counted without its marks. */
function lineAt(marked: string, at: number, templates: readonly Template[]) {
  let taken = 0;
  let [file, line] = [0, 1];
  for (const mark of marked.matchAll(LINE_MARK)) {
    if (mark.index - taken > at) break;
    taken += mark[0].length;
    [file, line] = [Number(mark[1]), Number(mark[2])];
  }
  return { kind: 'template', file: templates[file]?.file ?? '', line } as const;
}

/** Characters that the markup cannot hold, and halves of characters, are shown as U+FFFD: one for one. */
const legible = (text: string): string =>
  // Nearly always there is nothing to do, and one quick look tells.
  /[^\t\n\r -~\u00a0-\ud7ff\ue000-\ufffd]/.test(text)
    ? text.replace(/(?![\t\n\r])[\p{Cc}\p{Cs}\ufffe\uffff]/gu, '\ufffd')
    : text;

class TroubleIn extends Error {
  readonly file: string;
  readonly line: number;
  constructor(file: string, line: number, reason: string) {
    super(reason);
    this.file = file;
    this.line = line;
  }
}

function inFile<T>(template: Template, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof TroubleIn || !(error instanceof Error)) throw error;
    const [, ofParse, rest] = /^Parse error on line (\d+):\n.*\n.*\n(.*)$/s.exec(error.message) ?? [];
    const line = Number(ofParse ?? (error as { lineNumber?: number }).lineNumber ?? 1);
    throw new TroubleIn(template.file, line, rest ?? error.message.replace(/ in \[object Object\]| - \d+:\d+$/g, ''));
  }
}

function unreadable(error: unknown): Diagnosed<Filled> {
  if (!(error instanceof TroubleIn)) throw error;
  const at = { kind: 'template', file: error.file, line: error.line } as const;
  const nothing: Filled = { text: '', origin: () => at };
  return { value: nothing, diagnostics: [problem('template-unreadable', at, { reason: error.message })] };
}
