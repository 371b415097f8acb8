import { conditionsSay, requirementSays, sourceSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Words } from '@libs/judge';
import type { Issued, RulebookHistory } from '@libs/record';
import { namingIn } from '@libs/rulebook';
import type { Rulebook, RulebookBody } from '@libs/rulebook';
import { namesOf } from '../names';
import type { Names } from '../names';
import { GOVERNING } from '../questions';
import type { Workings } from '../workings';
import { NOTE_AT } from './proposals';
import { historyOf, now, targetOf } from './which';
import type { Which } from './which';

type Book = AnswerOf<'rulebook'>;
type OperationRow = RulebookBody['operations'][number];
type When = OperationRow['when'];

/** A rulebook for people to read: codes in words, conditions and sources spelled out. Undefined: no such revision. */
export const bookQuestion =
  (workings: Workings) =>
  async (which: Which): Promise<Book | undefined> => {
    const target = await targetOf(workings, which);
    if (target === undefined) return emptyFor(workings, which);

    const { rulebook, revision } = target;
    const spoken = spokenIn(rulebook);
    return {
      revision,
      issued: issuedAnswers(workings, await historyOf(workings)),
      governing: GOVERNING,
      stations: rulebook.stations.map(({ id, pos, kind, name, lanes }) => ({
        id,
        pos,
        kind,
        name,
        lanes: [...lanes],
      })),
      crews: rulebook.crews.map(({ id, name }) => ({ id, name })),
      operations: rulebook.body.operations.map((row) => operationOf(row, rulebook.body, spoken)),
      values: valuesOf(rulebook.body, spoken),
    };
  };

/** A plant without a rulebook has nothing to read, which is no mistake of whoever asks. */
const emptyFor = ({ plans }: Workings, which: Which): Book | undefined =>
  'revision' in which && which.revision === null && plans.current() === null
    ? {
        revision: 0,
        issued: [],
        governing: GOVERNING,
        stations: [],
        crews: [],
        operations: [],
        values: [],
      }
    : undefined;

type Spoken = { readonly names: Names; readonly when: (when: When) => Words | null };

const spokenIn = (rulebook: Rulebook): Spoken => {
  const naming = namingIn(rulebook);
  return {
    names: namesOf(rulebook),
    when: (when) => (when.length === 0 ? null : conditionsSay(naming.conditions(when))),
  };
};

const ALL_DUE = 'all-due';

const operationOf = (
  { id, fields, when, file, row }: OperationRow,
  { covers }: RulebookBody,
  { names, when: say }: Spoken,
): Book['operations'][number] => ({
  id,
  name: fields.name,
  station: fields.station,
  crew: fields.crew,
  entry: fields.entry,
  scope: fields.scope,
  conditions: say(when),
  requires: fields.hard
    .filter((required) => required !== ALL_DUE)
    .map((required) => ({ operation: required, source: sourceSays(fields.sourceOf(required)) })),
  allDue: fields.hard.includes(ALL_DUE),
  expects: [...fields.soft],
  hides: (covers.get(id) ?? []).flat().map(({ hide, when: where }) => ({
    operation: hide.operation,
    hidden: hide.hidden,
    grade: hide.grade,
    conditions: say(where),
    source: sourceSays(hide.source),
  })),
  signers: [...fields.signers],
  photo: fields.photo,
  instrument: fields.instrument === null ? null : names.instrumentKind(fields.instrument),
  lots: fields.lots.map(names.lotKind),
  gate: fields.gate,
  label: fields.label,
  caution: fields.caution,
  manual: fields.manual ?? null,
  drawings: [...(fields.drawings ?? [])],
  file,
  row,
});

const valuesOf = ({ values }: RulebookBody, { names, when: say }: Spoken): Book['values'] =>
  [...values.values()].flat(2).map(({ operation, planned, when, asDesign, row }) => ({
    operation,
    characteristic: planned.characteristic,
    label: planned.label,
    requires:
      asDesign === null
        ? requirementSays(planned.required, planned.unit, planned.kind, names.text)
        : asTheDesign(names.attribute(asDesign)),
    conditions: say(when),
    grade: planned.grade,
    sourceKind: planned.source.kind,
    source: sourceSays(planned.source),
    row,
  }));

const asTheDesign = (detail: Words): Words => ({
  en: `as the design has it (${detail.en})`,
  es: `según el diseño (${detail.es})`,
});

const issuedAnswers = (workings: Workings, { revisions }: RulebookHistory): Book['issued'] => {
  const inForce = workings.plans.inForce(now(workings))?.revision;
  return [...revisions].reverse().map((issued) => issuedAnswer(workings, issued, inForce));
};

const issuedAnswer = (
  { names, sealing }: Workings,
  { revision, effectiveFrom, issuedAt, approvedBy, draftedBy, touches, agency, note }: Issued,
  inForce: number | undefined,
): Book['issued'][number] => ({
  revision,
  effectiveFrom,
  issuedAt: issuedAt ?? null,
  inForce: revision === inForce,
  approvedBy: personOrNull(names, approvedBy),
  draftedBy: personOrNull(names, draftedBy),
  touches: touches ?? null,
  agency: agency ?? null,
  note: note === undefined ? null : sealing.unseal(note, NOTE_AT),
});

const personOrNull = (names: Workings['names'], person: string | null | undefined): string | null =>
  person === null || person === undefined ? null : names.person(person);

/** The files themselves, for whoever drafts the next revision. */
export const filesQuestion =
  (workings: Workings) =>
  async (which: Which): Promise<AnswerOf<'rulebookFiles'> | undefined> => {
    const { revisions, proposals } = await historyOf(workings);
    if ('proposal' in which) {
      const found = proposals.find(({ proposal }) => proposal === which.proposal);
      return found === undefined
        ? undefined
        : { revision: null, proposal: which.proposal, files: found.files };
    }
    const wanted = 'revision' in which ? which.revision : null;
    const found = wanted === null ? revisions.at(-1) : revisions.find(({ revision }) => revision === wanted);
    if (found !== undefined) return { revision: found.revision, proposal: null, files: found.files };
    return wanted === null ? { revision: null, proposal: null, files: {} } : undefined;
  };
