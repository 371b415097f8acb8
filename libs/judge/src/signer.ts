import { floorDay } from '@libs/kernel';
import type { Entry, Signer, WorkState } from './entry';
import { runsOutSoon } from './expiry';
import type { Finding, Rule } from './finding';
import type { CompiledPlan, PlannedOperation, Source } from './plan';

const MANUAL: Source = { kind: 'practice', reference: '', row: '' };
/** Who may vouch for work they did not do, where the rulebook names nobody for the operation. */
const LOOKERS = ['role:inspector', 'role:quality-manager'];
const MANAGER = ['role:quality-manager'];

/** Whether whoever signs may, and looks at work that is not their own. */
export const judgeSigner = (
  plan: CompiledPlan,
  state: WorkState,
  operation: PlannedOperation,
  entry: Entry,
): readonly Finding[] => {
  switch (entry.proof) {
    case 'signed':
      return [
        ...qualified(operation, entry, operation.signers),
        ...notOwnWork(plan, state, operation, entry),
      ];
    case 'seen':
      return judgeSeen(state, operation, entry);
    case 'reconstructed':
      return qualified(operation, entry, MANAGER);
  }
};

/** A qualification that has run out holds, and one about to is told of; neither refuses anything. */
const qualified = (
  operation: PlannedOperation,
  { signer, occurredAt }: Entry,
  tokens: readonly string[],
): readonly Finding[] => {
  if (tokens.length === 0 || tokens.some((token) => answersTo(signer, token))) return [];

  const today = floorDay(occurredAt);
  const held = (signer.qualifications ?? []).filter(({ token }) => tokens.includes(token));
  const good = held.filter(({ until }) => until === null || until >= today);
  const lasting = good.some(({ until }) => until === null || !runsOutSoon(today, until));
  const [last] = (good.length > 0 ? good : held).toSorted((a, b) =>
    (a.until ?? '') < (b.until ?? '') ? 1 : -1,
  );
  if (lasting) return [];
  if (last === undefined) {
    const said = { required: tokens.join(' '), recorded: titlesOf(signer) };
    return [finding(operation, 'signer-not-qualified', said)];
  }
  const said = { required: last.token, recorded: last.until ?? '' };
  return good.length > 0
    ? [{ ...finding(operation, 'qualification-due-soon', said), grade: 'note' }]
    : [finding(operation, 'qualification-expired', said)];
};

/** `crew:quality`: stands in for that crew; `role:inspector`: holds that role. */
const answersTo = (signer: Signer, token: string): boolean => {
  if (token.startsWith('crew:')) return signer.crew === token.slice('crew:'.length);
  return signer.roles.includes(token.startsWith('role:') ? token.slice('role:'.length) : token);
};

const titlesOf = ({ crew, roles }: Signer): string =>
  [...(crew === null ? [] : [`crew:${crew}`]), ...roles.map((role) => `role:${role}`)].join(' ');

/**
 * An inspection or a test is signed by someone who did not do the work it looks at: the required operations
 * of other crews. What its own crew did, other inspections among it, is not what it looks at.
 */
const notOwnWork = (
  plan: CompiledPlan,
  state: WorkState,
  operation: PlannedOperation,
  { signer }: Entry,
): readonly Finding[] => {
  if (operation.entry !== 'I' && operation.entry !== 'T') return [];
  const own = operation.requires
    .map((edge) => edge.operation)
    .filter((id) => plan.operations[id]?.crew !== operation.crew && did(state, id, signer));
  return own.length === 0
    ? []
    : [finding(operation, 'signed-by-own-crew', { required: own.join(' '), recorded: titlesOf(signer) })];
};

/** Whoever has vouched for work of others has not done it. */
const did = (state: WorkState, operation: string, signer: Signer): boolean => {
  const done = state.work[operation];
  return (
    done?.proof === 'signed' &&
    (done.actor === signer.actor || (done.crew !== null && done.crew === signer.crew))
  );
};

/** `seen` is worth something when someone qualified, not of the crew, looked and took a photo. */
const judgeSeen = (state: WorkState, operation: PlannedOperation, entry: Entry): readonly Finding[] => {
  const ownCrew =
    entry.signer.crew === operation.crew || did(state, operation.id, { ...entry.signer, actor: '' });
  return [
    ...qualified(operation, entry, operation.signers.length > 0 ? operation.signers : LOOKERS),
    ...(ownCrew && operation.entry !== 'I' && operation.entry !== 'T'
      ? [
          finding(operation, 'signed-by-own-crew', {
            required: operation.id,
            recorded: titlesOf(entry.signer),
          }),
        ]
      : []),
    ...(entry.photos.length === 0 ? [finding(operation, 'photo-missing', {})] : []),
  ];
};

const finding = (
  operation: PlannedOperation,
  rule: Rule,
  detail: { readonly required?: string; readonly recorded?: string },
): Finding => ({
  rule,
  grade: 'hold',
  class: 'record',
  operation: operation.id,
  station: operation.station,
  ...detail,
  source: MANUAL,
});
