import type { Finding, Rule, Words } from '@libs/judge';
import { isDecimal } from '@libs/kernel';
import type { Key } from './catalogue-en';
import { defectSays, placesSays } from './defect-says';
import { becauseSays } from './hold-says';
import type { Names } from './names';
import type { Fill } from './say';
import { NOTHING, isKey, joined, same, say } from './say';
import { sourceSays } from './source-says';
import { isRelation, requirementSays, valueSays } from './value-says';

/** One finding in one plain sentence or two: what is, then what to do, and on whose authority. */
export const findingSays = (finding: Finding, names: Names): Words => {
  const says = say(keyOf(finding), fillOf(finding, names));
  const source = sourceSays(finding.source);
  return source === NOTHING ? says : joined([says, bracketed(source)], ' ');
};

const bracketed = (source: Words): Words => ({ en: `(${source.en})`, es: `(${source.es})` });

/** Some rules have a second sentence: for what no entry ran into, for a gap that is one value, for a part of a relation. */
const keyOf = (finding: Finding): Key => {
  const special = `finding.${finding.rule}.${aspectOf(finding)}`;
  return isKey(special) ? special : `finding.${finding.rule}`;
};

const aspectOf = ({ entry, characteristic, required }: Finding): 'alone' | 'part' | 'value' | 'whole' => {
  if (required !== undefined && isRelation(required)) return 'part';
  if (characteristic !== undefined && entry !== undefined) return 'value';
  return entry === undefined ? 'alone' : 'whole';
};

const fillOf = (finding: Finding, names: Names): Fill => ({
  operation: names.operation(finding.operation),
  entry: names.operation(finding.entry ?? finding.operation),
  places: placesSays(finding.places ?? [], names),
  ...valueOf(finding, names),
  ...stationOf(finding, names),
  ...detailOf(finding, names),
});

const valueOf = (
  { operation, characteristic, required = '', recorded = '', unit }: Finding,
  names: Names,
): Fill => ({
  characteristic: characteristic === undefined ? '' : names.characteristic(operation, characteristic),
  required: requirementSays(required, unit ?? null, null, names.text),
  recorded: valueSays(recorded, unit ?? null, names.text),
});

const stationOf = ({ station }: Finding, names: Names): Fill =>
  station === null
    ? {}
    : { station: names.station(station), at: say('at.station', { station: names.station(station) }) };

type Detail = (
  told: { readonly required: string; readonly recorded: string },
  finding: Finding,
  names: Names,
) => Fill;

/** What `required` and `recorded` hold is another thing for each of these rules. */
const DETAILS: { readonly [rule in Rule]?: Detail } = {
  'relation-not-met': ({ recorded }, { operation }, names) => ({
    given: given(partsSay(recorded, operation, names)),
  }),
  'worked-elsewhere': ({ recorded }, _, names) => ({
    given: given(recorded === '' ? NOTHING : names.station(recorded)),
  }),
  'seen-after-cover': ({ recorded }, _, names) => ({ cover: names.operation(recorded) }),
  'recorded-under-cover': ({ recorded }, _, names) => ({ cover: names.operation(recorded) }),
  'lot-missing': ({ required }, _, names) => ({ kind: kindSays(required, names.lotKind) }),
  'lot-not-usable': ({ required, recorded }, _, names) => ({
    kind: kindSays(required, names.lotKind),
    given: given(same(recorded)),
  }),
  'instrument-missing': ({ required }, _, names) => ({ kind: kindSays(required, names.instrumentKind) }),
  'instrument-not-usable': ({ required, recorded }, _, names) => ({
    kind: kindSays(required, names.instrumentKind),
    given: given(same(recorded)),
  }),
  'signer-not-qualified': ({ required }, _, names) => ({ signers: signersSay(required, names) }),
  'too-soon-after': (_, { characteristic = '' }, names) => ({ since: names.operation(characteristic) }),
  'instrument-due-soon': ({ required, recorded }) => ({
    until: same(required),
    given: given(same(recorded)),
  }),
  'qualification-expired': ({ required, recorded }, _, names) => ({
    until: same(recorded),
    signers: signersSay(required, names),
  }),
  'qualification-due-soon': ({ required, recorded }, _, names) => ({
    until: same(recorded),
    signers: signersSay(required, names),
  }),
  'destination-outside-zones': ({ required, recorded }, { characteristic = '', places = [] }, names) => ({
    county: same(places.join(' ')),
    asked: factSays(characteristic, required, names),
    designed: factSays(characteristic, recorded, names),
  }),
  held: ({ recorded }, finding, names) => ({
    given: given(becauseSays({ ...finding, reason: recorded }, names)),
  }),
  'test-not-recent': ({ recorded }, _, names) => ({ newer: names.operation(recorded) }),
  'defect-open': ({ recorded }, _, names) => ({ given: given(codeSays(recorded, names)) }),
  'cover-hides-defect': ({ recorded }, _, names) => ({ given: given(codeSays(recorded, names)) }),
};

const detailOf = (finding: Finding, names: Names): Fill => {
  const { required = '', recorded = '', rule } = finding;
  return DETAILS[rule]?.({ required, recorded }, finding, names) ?? {};
};

const factSays = (attribute: string, value: string, names: Names): Words =>
  names.designFact?.(attribute, value) ?? same(`${attribute} ${value}`);

const given = (recorded: Words): Words =>
  recorded.en === '' ? NOTHING : say('given.recorded', { recorded });

const kindSays = (kind: string, nameOf: (id: string) => Words): Words =>
  kind === '' ? NOTHING : say('given.kind', { kind: nameOf(kind) });

/** `crew:quality role:quality-manager`: either may. */
const signersSay = (tokens: string, names: Names): Words => {
  if (tokens === '') return NOTHING;
  const signers = tokens.split(' ').map((token) => signerSays(token, names));
  return say('signers.are', { signers: joined(signers, say('signers.or')) });
};

const signerSays = (token: string, names: Names): Words => {
  const [sort = '', id = ''] = token.split(':');
  const role = `role.${id}`;
  if (sort === 'crew') return say('signer.crew', { crew: names.crew(id) });
  return isKey(role) ? say(role) : same(id === '' ? token : id);
};

/** `outlet loose`. */
const codeSays = (code: string, names: Names): Words => {
  const [component = '', symptom = ''] = code.split(' ');
  if (symptom === '') return component === '' ? NOTHING : names.component(component);
  return defectSays({ component, symptom, place: null }, names);
};

/** `hole 3 [in_i], joist-depth 7.25 [in_i]`: each part by its name, with its readings. */
const partsSay = (recorded: string, operation: string, names: Names): Words =>
  joined(
    recorded.split(', ').flatMap((part) => {
      const [characteristic = '', ...tokens] = part.split(' ');
      return part === ''
        ? []
        : [joined([names.characteristic(operation, characteristic), ...readingsSay(tokens)], ' ')];
    }),
    ', ',
  );

const readingsSay = (tokens: readonly string[]): readonly Words[] =>
  tokens.flatMap((token, at) => {
    const next = tokens[at + 1];
    const unit = next === undefined || isDecimal(next) ? null : next;
    return isDecimal(token) ? [valueSays(token, unit)] : [];
  });
