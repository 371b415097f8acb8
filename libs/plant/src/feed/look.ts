import type { AnswerOf } from '@libs/contracts';
import type { JsonObject } from '@libs/kernel';
import { noticeId } from './cloud-event';
import type { FeedGround } from './ground';
import type { Notice } from './subscription';

/** What the plant can be asked of that makes news, beside its events. */
export type Noticing = {
  readonly signals: (span: { readonly from: null; readonly to: null }) => Promise<AnswerOf<'signals'>>;
  readonly determinations: () => Promise<AnswerOf<'determinations'>>;
};

type Found = Omit<Notice, 'seq' | 'at' | 'data'> & { readonly data: JsonObject };

/**
 * Looks whether there is news that nobody told: an alarm of a chart is a fact about all that was told, and a day comes
 * near by itself. Each is noted once, whoever looks and however often. Only what somebody wants is looked for, so that
 * a new subscriber also hears of what is open already.
 */
export const look = async (
  { rows, tail, clock }: Pick<FeedGround, 'rows' | 'tail' | 'clock'>,
  asks: Noticing,
): Promise<number> => {
  const wants = (await rows.subscriptions()).map((one) => one.wants);
  const found = [
    ...(wants.some(({ alarms }) => alarms) ? await openAlarms(asks, tail.ledger) : []),
    ...(wants.some(({ clocks }) => clocks) ? await nearDays(asks, tail.ledger) : []),
  ];
  let fresh = 0;
  for (const { data, ...news } of found) {
    const at = new Date(clock()).toISOString();
    if (await rows.note({ ...news, at, data: JSON.stringify(data) })) fresh += 1;
  }
  return fresh;
};

const openAlarms = async (asks: Noticing, ledger: string): Promise<readonly Found[]> => {
  const { stations } = await asks.signals({ from: null, to: null });
  return stations.flatMap(({ station, name, alarm }) => {
    if (alarm?.acknowledged !== null) return [];
    const { day, change } = alarm;
    const share = `${String(change.after.count)}/${String(change.after.of)}`;
    return [
      {
        id: noticeId(ledger, 'alarm', station, day),
        kind: 'alarm' as const,
        subject: station,
        data: {
          station,
          day,
          since: change.since,
          before: { ...change.before },
          after: { ...change.after },
          says: {
            en: `${name.en} got worse around ${change.since}: since then ${share} sections with a nonconformance.`,
            es: `${name.es} empeoró hacia ${change.since}: desde entonces ${share} secciones con inconformidad.`,
          },
        },
      },
    ];
  });
};

const nearDays = async (asks: Noticing, ledger: string): Promise<readonly Found[]> => {
  const { determinations } = await asks.determinations();
  return determinations.flatMap(({ determination, clocks }) =>
    clocks
      .filter(({ standing }) => standing === 'soon' || standing === 'over')
      .map(({ clock, section, due, standing, says }) => ({
        id: noticeId(ledger, 'clock', determination, clock, due, standing),
        kind: 'clock' as const,
        subject: determination,
        data: {
          determination,
          clock,
          due,
          section: `24 CFR ${section}`,
          over: standing === 'over',
          says: {
            en: `${says.en}: due ${due}. The regulation and counsel decide, not this notice.`,
            es: `${says.es}: vence el ${due}. Deciden el reglamento y el abogado, no este aviso.`,
          },
        },
      })),
  );
};
