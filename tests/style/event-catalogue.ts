import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

const ROOT = join(__dirname, '..', '..');
const RECORD = join(ROOT, 'libs', 'record', 'src');
export const CATALOGUE = join(RECORD, 'EVENTS.md');

type Field = {
  readonly name: string;
  readonly optional: boolean;
  readonly type: string;
  readonly about: string;
};
type EventEntry = {
  readonly kind: string;
  readonly name: string;
  readonly about: string;
  readonly fields: readonly Field[];
};

const docOf = (symbol: ts.Symbol | undefined, checker: ts.TypeChecker): string =>
  symbol === undefined
    ? ''
    : ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, ' ').trim();

const fieldsOf = (data: ts.Type, at: ts.Node, checker: ts.TypeChecker): readonly Field[] =>
  data.getProperties().map((property) => ({
    name: property.getName(),
    optional: (property.flags & ts.SymbolFlags.Optional) !== 0,
    type: checker
      .typeToString(checker.getTypeOfSymbolAtLocation(property, at), at, ts.TypeFormatFlags.NoTruncation)
      .replace(/readonly /g, '')
      // A type of another file comes with that file's place on this machine.
      .replace(/import\("[^"]*"\)\./g, '')
      .replace(/ \| undefined$/, ''),
    about: docOf(property, checker),
  }));

/** An exported type alias whose `type` is a literal of its own name is an event. */
const eventOf = (
  node: ts.TypeAliasDeclaration,
  kind: string,
  checker: ts.TypeChecker,
): EventEntry | undefined => {
  const type = checker.getTypeAtLocation(node);
  const name = type.getProperty('type');
  const data = type.getProperty('data');
  if (type.isUnion() || name === undefined || data === undefined) return undefined;

  const literal = checker.getTypeOfSymbolAtLocation(name, node);
  if (!literal.isStringLiteral() || literal.value !== node.name.text) return undefined;
  return {
    kind,
    name: literal.value,
    about: docOf(checker.getSymbolAtLocation(node.name), checker),
    fields: fieldsOf(checker.getTypeOfSymbolAtLocation(data, node), node, checker),
  };
};

/** Every event shape the record can hold, read from the types themselves. */
export const events = (): readonly EventEntry[] => {
  const kinds = readdirSync(RECORD, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
  const files = kinds.map((kind) => eventFilesOf(kind));
  const config = ts.readConfigFile(join(ROOT, 'tsconfig.json'), (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, ROOT);
  const program = ts.createProgram(files.flat(), options);
  const checker = program.getTypeChecker();

  return kinds.flatMap((kind, index) =>
    (files[index] ?? [])
      .flatMap((file) => program.getSourceFile(file)?.statements ?? [])
      .flatMap((node) => {
        const event = ts.isTypeAliasDeclaration(node) ? eventOf(node, kind, checker) : undefined;
        return event === undefined ? [] : [event];
      }),
  );
};

/** `unit.events.ts`, and what a kind keeps in files beside it. */
const eventFilesOf = (kind: string): readonly string[] =>
  readdirSync(join(RECORD, kind))
    .filter((name) => name.endsWith('.events.ts'))
    .sort()
    .map((name) => join(RECORD, kind, name));

const cell = (text: string): string => text.replace(/\|/g, '\\|');

/** The catalogue as it is kept in the repository. */
export const catalogue = (): string => {
  const parts = events().map(
    ({ kind, name, about, fields }) =>
      `## ${name}\n\n*${kind}.*${about === '' ? '' : ` ${about}`}\n\n| field | type | meaning |\n|---|---|---|\n` +
      fields
        .map(
          (field) =>
            `| ${field.name}${field.optional ? '?' : ''} | \`${cell(field.type)}\` | ${cell(field.about)} |`,
        )
        .join('\n'),
  );
  return `# Events\n\nMade from the types by \`npm run catalogue\`; a test keeps it current. Events are for ever: fields are only added, and only optional ones.\n\n${parts.join('\n\n')}\n`;
};
