import type { Finding, Words } from '@libs/judge';
import { isDecimal } from '@libs/kernel';
import { defectSays, placesSays } from './defect-says';
import { becauseSays } from './hold-says';
import type { Names } from './names';
import type { Fill } from './say';
import { NOTHING, isKey, joined, same, say } from './say';
import { sourceSays } from './source-says';
import { requirementSays, valueSays } from './value-says';

/** One finding in one plain sentence or two: what is, then what to do, and on whose authority. */
export const findingSays = (finding: Finding, names: Names): Words => {
  const says = say(keyOf(finding), fillOf(finding, names));
  const source = sourceSays(finding.source);
  return source === NOTHING ? says : joined([says, bracketed(source)], ' ');
};

const bracketed = (source: Words): Words => ({ en: `(${source.en})`, es: `(${source.es})` });

/** Some rules have a second sentence: for a gap that is a single value, and for what no entry ran into. */
const keyOf = ({ rule, entry, characteristic }: Finding): Parameters<typeof say>[0] => {
  const special = `finding.${rule}.${entry === undefined ? 'alone' : characteristic === undefined ? '' : 'value'}`;
  return isKey(special) ? special : `finding.${rule}`;
};

const fillOf = (finding: Finding, names: Names): Fill => {
  const { operation, entry, characteristic, required, recorded, unit } = finding;
  return {
    operation: names.operation(operation),
    entry: names.operation(entry ?? operation),
    characteristic: characteristic === undefined ? '' : names.characteristic(operation, characteristic),
    required: requirementSays(required ?? '', unit ?? null),
    recorded: valueSays(recorded ?? '', unit ?? null),
    station: finding.station === null ? '' : names.station(finding.station),
    at: finding.station === null ? '' : say('at.station', { station: names.station(finding.station) }),
    places: placesSays(finding.places ?? [], names),
    ...detailOf(finding, names),
  };
};

/** What `required` and `recorded` hold is another thing for each of these rules. */
const detailOf = (finding: Finding, names: Names): Fill => {
  const { recorded = '', required = '' } = finding;
  switch (finding.rule) {
    case 'relation-not-met':
      return { given: given(partsSay(recorded, finding.operation, names)) };
    case 'worked-elsewhere':
      return { given: given(recorded === '' ? NOTHING : names.station(recorded)) };
    case 'seen-after-cover':
    case 'recorded-under-cover':
      return { cover: names.operation(recorded) };
    case 'lot-missing':
    case 'lot-not-usable':
      return { kind: kindSays(required, names.lotKind), given: given(same(recorded)) };
    case 'instrument-missing':
    case 'instrument-not-usable':
      return { kind: kindSays(required, names.instrumentKind), given: given(same(recorded)) };
    case 'signer-not-qualified':
      return { signers: signersSay(required, names) };
    case 'held':
      return { given: given(becauseSays({ ...finding, reason: recorded }, names)) };
    case 'defect-open':
    case 'cover-hides-defect':
      return { given: given(codeSays(recorded, names)) };
    default:
      return {};
  }
};

const given = (recorded: Words): Words =>
  recorded.en === '' ? NOTHING : say('given.recorded', { recorded });

const kindSays = (kind: string, nameOf: (id: string) => Words): Words =>
  kind === '' ? NOTHING : say('given.kind', { kind: nameOf(kind) });

/** `crew:quality role:quality-manager`. */
const signersSay = (tokens: string, names: Names): Words =>
  tokens === ''
    ? NOTHING
    : say('signers.are', {
        signers: joined(
          tokens.split(' ').map((token) => signerSays(token, names)),
          ', ',
        ),
      });

const signerSays = (token: string, names: Names): Words => {
  const [sort = '', id = ''] = token.split(':');
  const role = `role.${id}`;
  if (sort === 'crew') return say('signer.crew', { crew: names.crew(id) });
  return isKey(role) ? say(role) : same(id === '' ? token : id);
};

/** `outlet loose`. */
const codeSays = (code: string, names: Names): Words => {
  const [component = '', symptom = ''] = code.split(' ');
  return code === '' ? NOTHING : defectSays({ component, symptom, place: null }, names);
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
