import type { AnswerOf } from '@libs/contracts';
import type { CompiledPlan, UsedInstrument, WorkedLot, WorkState } from '@libs/judge';
import { addressOf } from '../api/paths';
import { jsonAs } from '../api/json';
import { floorStore, keepFact, keptFact } from '../queue/store';

export type Kit = AnswerOf<'kit'>;
type Kept = { readonly tag: string; readonly kit: Kit };

/** One station's kit is kept under its name; a tablet that is carried about has several. */
const nameOf = (station: string): string => `kit/${station}`;
const IS_KIT = /^kit\//;

const inMemory = new Map<string, Kept>();

const keptKit = async (name: string): Promise<Kept | undefined> => {
  const known = inMemory.get(name) ?? (await keptFact<Kept>(name));
  if (known !== undefined) inMemory.set(name, known);
  return known;
};

/** Asks for what has changed. Nobody answers: what is kept stays. */
export const refreshKit = async (station: string): Promise<void> => {
  const name = nameOf(station);
  const before = await keptKit(name);
  const response = await fetch(addressOf('kit', { station }).path, {
    headers: {
      accept: 'application/json',
      ...(before === undefined ? {} : { 'if-none-match': before.tag }),
    },
  }).catch(nobodyThere);
  if (response?.status !== 200) return;
  const kept = { tag: response.headers.get('etag') ?? '', kit: jsonAs<Kit>(await response.text()) };
  inMemory.set(name, kept);
  await keepFact(name, kept);
};

/** `fetch` says TypeError when nobody answers. */
const nobodyThere = (fault: unknown): undefined => {
  if (fault instanceof TypeError) return undefined;
  throw fault;
};

/** All kits of this device, the newest first. */
export const keptKits = async (): Promise<readonly Kit[]> => {
  const names = (await (await floorStore()).getAllKeys('facts')).filter((name) => IS_KIT.test(name));
  const kits = await Promise.all(names.map(keptKit));
  return kits.flatMap((kept) => kept?.kit ?? []).sort((one, other) => other.position - one.position);
};

/** A section as this device last heard of it, ready for the judge. */
export type Known = {
  readonly kit: Kit;
  readonly section: Kit['sections'][number]['section'];
  readonly plan: CompiledPlan | null;
  readonly state: WorkState;
};

/** The boundary: the server took these from the judge's own shapes. */
const planIn = ({ plans }: Kit, digest: string | null): CompiledPlan | null =>
  ((digest === null ? undefined : plans[digest]) ?? null) as CompiledPlan | null;
export const mountedIn = ({ mounted }: Kit, station: string | null): readonly WorkedLot[] =>
  (mounted[station ?? ''] ?? []) as unknown as readonly WorkedLot[];
export const instrumentIn = ({ instruments }: Kit, id: string | null | undefined): UsedInstrument | null =>
  (instruments as unknown as readonly UsedInstrument[]).find(({ instrument }) => instrument === id) ?? null;

export const knownSection = async (serial: string): Promise<Known | undefined> => {
  for (const kit of await keptKits()) {
    const found = kit.sections.find(({ section }) => section.serial === serial);
    if (found !== undefined) {
      const state = found.state as unknown as WorkState;
      return { kit, section: found.section, plan: planIn(kit, found.plan), state };
    }
  }
  return undefined;
};
