import type { SentBodyOf } from '@libs/contracts';
import { judgeWork, lotKindsOf } from '@libs/judge';
import type { CompiledPlan, DoneWork, Entry, Finding, WorkedLot, WorkState } from '@libs/judge';
import type { Unsent } from '../queue/entry';
import type { Me } from '../session/facts';
import { instrumentIn, mountedIn } from './kit';
import type { Known } from './kit';

type Work = SentBodyOf<'work'>;
type SignOff = SentBodyOf<'signOff'>;

/** What one entry says of one operation. */
export type Told = {
  readonly operation: string;
  readonly proof: DoneWork['proof'];
  readonly except: readonly string[];
  readonly values: DoneWork['values'];
  readonly photos: readonly string[];
  readonly instrument: string | null;
  readonly station: string | null;
  readonly occurredAt: string;
};

const valuesIn = (values: Work['values']): DoneWork['values'] =>
  (values ?? []).map(({ place, unit = null, ...value }) => ({
    ...value,
    unit,
    ...(place === undefined ? {} : { place }),
  }));

const ofWork = (body: Work): Told => ({
  operation: body.operation,
  proof: body.proof ?? 'signed',
  except: body.except ?? [],
  values: valuesIn(body.values),
  photos: body.photos ?? [],
  instrument: body.instrument ?? null,
  station: body.station ?? null,
  occurredAt: body.occurredAt ?? '',
});

/** All that is due at the station and not excepted as a whole, in working order: as the record takes it. */
const ofSignOff = (body: SignOff, plan: CompiledPlan, state: WorkState): readonly Told[] => {
  const except = body.except ?? [];
  const isExcepted = (id: string): boolean =>
    except.some(({ operation, places = [] }) => operation === id && places.length === 0);
  const isOpen = (id: string): boolean => (state.work[id]?.except.length ?? 1) > 0;
  const given = new Set((body.values ?? []).map(({ operation }) => operation));
  return plan.order
    .filter((id) => {
      const planned = plan.operations[id];
      if (planned?.station !== body.station || planned.scope !== 'section') return false;
      const isSigned = planned.entry === 'S' || planned.entry === 'V';
      return given.has(id) || (isSigned && !isExcepted(id) && isOpen(id));
    })
    .map((id) => ({
      operation: id,
      proof: 'signed',
      except: except.filter(({ operation }) => operation === id).flatMap(({ places = [] }) => places),
      values: valuesIn((body.values ?? []).filter(({ operation }) => operation === id)),
      photos: body.photos ?? [],
      instrument: null,
      station: body.station,
      occurredAt: body.occurredAt ?? '',
    }));
};

/** What an entry of the queue tells of the work; nothing where it tells of something else. */
export const toldIn = ({ route, body }: Unsent, plan: CompiledPlan, state: WorkState): readonly Told[] => {
  // The route says whose body it is.
  if (route === 'work') return [ofWork(body as Work)];
  return route === 'signOff' ? ofSignOff(body as unknown as SignOff, plan, state) : [];
};

/** Of each kind it uses up: what is mounted where the crew stood, else at the operation's own station. */
const lotsFor = ({ kit, plan }: Known, told: Told): readonly WorkedLot[] => {
  const planned = plan?.operations[told.operation];
  if (planned === undefined) return [];
  const kinds = lotKindsOf(planned);
  const near = [...mountedIn(kit, told.station), ...mountedIn(kit, planned.station)];
  return near.filter(
    (lot, at) => kinds.has(lot.kind) && near.findIndex(({ kind }) => kind === lot.kind) === at,
  );
};

const entryOf = (known: Known, told: Told, me: Me): Entry => ({
  operation: told.operation,
  proof: told.proof,
  except: told.except,
  values: [...carried(known, told), ...told.values],
  lots: lotsFor(known, told),
  instrument: instrumentIn(known.kit, told.instrument),
  photos: told.photos,
  signer: { actor: me.actor, crew: me.crew, roles: me.roles },
  station: told.station,
  occurredAt: told.occurredAt,
});

/** Values of an unfinished entry still stand where the next one gives none in their place. */
const carried = ({ plan, state }: Known, { operation, values }: Told): DoneWork['values'] => {
  const before = state.work[operation];
  if (before === undefined || plan?.operations[operation]?.entry === 'T') return [];
  if (before.except.length + before.missing.length === 0) return [];
  return before.values.filter(
    ({ characteristic }) => !values.some((value) => value.characteristic === characteristic),
  );
};

export type JudgedHere = { readonly known: Known; readonly findings: readonly Finding[] };

/** Judged by the rules the server judges by, and taken as done for what comes next. */
export const taken = (known: Known, told: Told, me: Me): JudgedHere => {
  const { plan, state } = known;
  if (plan === null) return { known, findings: [] };
  const entry = entryOf(known, told, me);
  const findings = judgeWork(plan, state, entry);
  const done: DoneWork = {
    proof: told.proof,
    except: told.except,
    values: entry.values,
    actor: me.actor,
    crew: me.crew,
    occurredAt: told.occurredAt,
    position: 0,
    missing: findings.flatMap(({ rule, operation, characteristic }) =>
      rule === 'value-missing' && operation === told.operation && characteristic !== undefined
        ? [characteristic]
        : [],
    ),
  };
  const work = { ...state.work, [told.operation]: done };
  return { known: { ...known, state: { ...state, work } }, findings };
};

/** With all that was told on this device and not taken by the record yet, in its order. */
export const withQueue = (known: Known, queue: readonly Unsent[], me: Me): Known =>
  queue
    .filter(({ state, body }) => state !== 'refused' && body.serial === known.section.serial)
    .reduce((before, entry) => withEntry(before, entry, me), known);

const withEntry = (known: Known, entry: Unsent, me: Me): Known => {
  const { route, body } = entry;
  if (route === 'move' || route === 'return' || route === 'start') {
    const { to, at } = body as { readonly to?: string; readonly at?: string };
    const section = {
      ...known.section,
      stage: 'on-line' as const,
      station: to ?? at ?? null,
      since: entry.madeAt,
    };
    return { ...known, section };
  }
  if (known.plan === null) return known;
  return toldIn(entry, known.plan, known.state).reduce(
    (before, told) => taken(before, told, me).known,
    known,
  );
};
