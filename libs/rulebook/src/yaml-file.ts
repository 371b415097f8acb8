import { LineCounter, isNode, parseDocument, visit } from 'yaml';
import type { Alias, Document } from 'yaml';
import type { z } from 'zod';
import type { Complain } from './complain';
import { shapeSays } from './shape-says';

/** A YAML file as read: its data, and on which line anything in it stands. */
export type YamlFile<T> = { readonly data: T; readonly rowOf: (path: readonly PropertyKey[]) => number };

/** Undefined when the file is no YAML or not of the shape: every reason has been complained of. */
export const readYaml = <T>(
  file: string,
  text: string,
  shape: z.ZodType<T>,
  complain: Complain,
): YamlFile<T> | undefined => {
  const lines = new LineCounter();
  // A mark that some editors put in front is no part of the text: the parser takes it for a first value.
  const document = parseDocument(text.replace(/^\uFEFF/, ''), { lineCounter: lines, uniqueKeys: true });
  const rowOf = (path: readonly PropertyKey[]): number => lineAt(document, lines, path);
  for (const { pos, message } of document.errors) {
    complain({
      file,
      row: lines.linePos(pos[0]).line,
      column: null,
      says: `is no YAML: ${message.split('\n')[0] ?? message}`,
    });
  }
  if (document.errors.length > 0) return undefined;

  const stray = strayAlias(document);
  if (stray !== undefined) {
    complain({
      file,
      row: lines.linePos(stray.range?.[0] ?? 0).line,
      column: null,
      says: `"*${stray.source}" points at nothing: put quotes around it where the star is meant as it is`,
    });
    return undefined;
  }

  const parsed = shape.safeParse(document.toJS());
  if (parsed.success) return { data: parsed.data, rowOf };
  for (const { path, message } of parsed.error.issues) {
    complain({ file, row: rowOf(path), column: columnOf(path), says: shapeSays(message) });
  }
  return undefined;
};

/** An alias whose anchor stands nowhere before it: the parser lets it through, and fails on it later. */
const strayAlias = (document: Document): Alias | undefined => {
  let found: Alias | undefined;
  visit(document, {
    Alias: (_key, alias) => {
      if (alias.resolve(document) !== undefined) return undefined;
      found = alias;
      return visit.BREAK;
    },
  });
  return found;
};

/** The line of the node at the path, or of the nearest one around it. */
const lineAt = (document: Document, lines: LineCounter, path: readonly PropertyKey[]): number => {
  for (let depth = path.length; depth >= 0; depth -= 1) {
    const node = document.getIn(path.slice(0, depth), true);
    if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
  }
  return 1;
};

/** `stations.3.pos` is the field `pos`; a line number says which. */
const columnOf = (path: readonly PropertyKey[]): string | null =>
  path
    .filter((step) => typeof step === 'string')
    .slice(-2)
    .join('.') || null;
