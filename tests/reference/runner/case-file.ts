import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A case as it stands in its file; what goes in and comes out differs from method to method. */
export type Case = {
  readonly file: string;
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly input: Json;
  readonly published: Json;
  readonly computed: Json;
  readonly notes: readonly string[];
};

export type Json = Readonly<Record<string, unknown>>;

type RawCase = {
  readonly id: string;
  readonly title?: string;
  readonly source?: { readonly title?: string; readonly section?: string };
  readonly input?: Json;
  readonly published?: Json;
  readonly computed?: { readonly values?: Json };
  readonly notes?: readonly string[];
};

/** All cases of all files of the form in a folder, in the order of file names; other JSON files are passed over. */
export const readCases = (folder: string): readonly Case[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .flatMap((name) => casesOf(name, readFileSync(join(folder, name), 'utf8')));

const casesOf = (name: string, text: string): readonly Case[] => {
  if (text.trim() === '') return [];
  const raw: { readonly schema?: string; readonly file?: string; readonly cases?: readonly RawCase[] } =
    JSON.parse(text);
  if (raw.schema?.startsWith('stat-cases/') !== true) return [];

  return (raw.cases ?? []).map((each) => ({
    file: raw.file ?? name.replace(/[.]json$/, ''),
    id: each.id,
    title: each.title ?? '',
    source: [each.source?.title, each.source?.section].filter(Boolean).join(', '),
    input: each.input ?? {},
    published: each.published ?? {},
    computed: each.computed?.values ?? {},
    notes: each.notes ?? [],
  }));
};
