import { findingSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Finding } from '@libs/judge';
import type { Meta } from '@libs/kernel';
import { HOME, SECTION, labellingOf, releaseFindings } from '@libs/record';
import type { Unit } from '@libs/record';
import { unitFacts } from '../facts';
import type { Names } from '../names';
import type { Asked } from './asked';
import { nextLabel } from './label-log';
import { readThrough } from './read-through';

type Missing = AnswerOf<'sectionRelease'>['missing'][number];

/** What stands between a section and its label: asked by the very rules that decide when it goes on. */
export const sectionReleaseQuestion =
  (asked: Asked) =>
  async (serial: string): Promise<AnswerOf<'sectionRelease'> | undefined> => {
    const unit = await asked.ledger.state(SECTION, serial);
    if (unit.kind === 'unknown') return undefined;

    const names = asked.names.ofRevision(unit.revision);
    const findings = unit.label === null ? await missingFor(unit, asked) : [];
    const cards = await asked.views.cardsOfHome(unit.home);
    return {
      serial,
      home: unit.home,
      model: unit.model,
      station: unit.station,
      stage: unit.stage,
      label: unit.label,
      labelledAt: cards.find((card) => card.serial === serial)?.labelledAt ?? null,
      ready: unit.label === null && findings.length === 0,
      missing: findings.map((finding) => missingSays(finding, names)),
      nextLabel: await nextLabel(asked),
      agencySaw: [...(await agencySaw(unit, asked))],
    };
  };

const missingSays = (finding: Finding, names: Names): Missing => {
  const { places, ...rest } = finding;
  return {
    ...rest,
    ...(places === undefined ? {} : { places: [...places] }),
    says: findingSays(finding, names),
  };
};

const agencySaw = async (unit: Unit, { ledger }: Asked): Promise<ReadonlySet<string>> => {
  const seen = new Set((await ledger.state(HOME, unit.home)).seen);
  for (const serial of unit.sections) {
    for (const station of (await ledger.state(SECTION, serial)).seen) seen.add(station);
  }
  return seen;
};

/** What the decider would refuse for, but for who signs and where: nobody has signed yet. */
export const missingFor = async (
  unit: Unit,
  { ledger, plans, clock }: Asked,
): Promise<readonly Finding[]> => {
  const now = new Date(clock()).toISOString();
  const ref = { kind: 'section', serial: unit.serial } as const;
  const wanted = { receivedAt: now, senderRoles: [], forLabel: true };
  const facts = await readThrough(ledger, (read) => unitFacts(plans, ref, wanted)(read, nobodyAt(now)));
  const { plan, codes } = facts;
  if (plan === null || codes === null) return [];

  return releaseFindings(unit, null, { plan, codes, facts }).filter(({ grade }) => grade !== 'note');
};

/** A question is asked by nobody in particular, and leaves no trace. */
const nobodyAt = (occurredAt: string): Meta => ({
  key: '',
  actor: '',
  assurance: 'session',
  occurredAt,
  device: null,
  deviceSeq: null,
  skewMs: null,
  via: 'tablet',
  station: null,
});

/** Sections at the station where the label goes on, and past it; what each lacks is counted by the same rules. */
export const releasesQuestion = (asked: Asked) => async (): Promise<AnswerOf<'releases'>> => {
  const cards = await asked.views.cards(['on-line', 'pulled']);
  const sections: AnswerOf<'releases'>['sections'] = [];
  for (const card of cards) {
    const unit = await asked.ledger.state(SECTION, card.serial);
    if (!isNear(unit, asked)) continue;
    const missing = unit.label === null ? await missingFor(unit, asked) : [];
    sections.push({
      serial: card.serial,
      home: card.home,
      station: card.station,
      label: card.label,
      missing: missing.length,
      holds: card.holds.length,
      redTag: unit.redTags.length > 0,
    });
  }
  return { sections: sections.sort((one, other) => one.missing - other.missing) };
};

/** From the station before the label's on: further back, everything is missing, and nobody needs a screen to say so. */
const isNear = (unit: Unit, { plans }: Asked): boolean => {
  if (unit.revision === null) return false;
  const plan = plans.deviated(plans.planFor(unit.revision, unit.design), unit.deviations);
  const at = plan.stations.find(({ id }) => id === unit.station)?.pos ?? null;
  const station = labellingOf(plan, unit)?.station;
  const label = plan.stations.find(({ id }) => id === station)?.pos ?? null;
  return at !== null && label !== null && at >= label - STATIONS_BEFORE;
};

const STATIONS_BEFORE = 2;
