import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Speech, WordKey } from '../../words/words';

type Entry = AnswerOf<'accesses'>['accesses'][number];

const SAYS: Readonly<Record<string, WordKey>> = {
  AccessGiven: 'access.AccessGiven',
  AccessWithdrawn: 'access.AccessWithdrawn',
  SignedIn: 'access.SignedIn',
  SignInsRefused: 'access.SignInsRefused',
  SignedOut: 'access.SignedOut',
  SessionsEnded: 'access.SessionsEnded',
  TokenMade: 'access.TokenMade',
  EntriesRefused: 'access.EntriesRefused',
  ExportTaken: 'access.ExportTaken',
  FeedSubscribed: 'access.FeedSubscribed',
  FeedEnded: 'access.FeedEnded',
  SampleDrawn: 'access.SampleDrawn',
  LinkIssued: 'access.LinkIssued',
  LinkOpened: 'access.LinkOpened',
  LinkEnded: 'access.LinkEnded',
  FactorAdded: 'access.FactorAdded',
  FactorRemoved: 'access.FactorRemoved',
  TabletOffered: 'access.TabletOffered',
  TabletAccepted: 'access.TabletAccepted',
  TabletEnded: 'access.TabletEnded',
};

const text = (value: unknown): string | number =>
  typeof value === 'number' || typeof value === 'string' ? value : '';

const sentence = ({ type, account, data }: Entry, t: Speech['t']): string => {
  const key = SAYS[type];
  if (key === undefined) return type;
  return t(key, {
    account,
    count: text(data['count'] ?? 1),
    route: text(data['route']),
    to: text(data['to']),
    name: text(data['name']),
    what: text(data['what']),
    subject: text(data['subject']),
    seed: text(data['seed']),
    factor: text(data['factor']),
    home: text(data['home']),
    purpose: text(data['purpose']),
  }).concat(typeof data['reason'] === 'string' ? `: ${data['reason']}` : '');
};

/** Who came in, who was kept out, who gave and took access: the latest first. */
export const Accesses = (): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const [before, setBefore] = useState<number | null>(null);
  const { answer, trouble, again } = useQuestion('accesses', {
    before: before === null ? null : String(before),
  });
  return (
    <section className="stack" aria-labelledby="accesses">
      <h2 id="accesses">{t('people.accesses')}</h2>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <TableFrame name={t('people.accesses')} short>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('people.when')}</th>
              <th scope="col">{t('people.what')}</th>
              <th scope="col">{t('people.by')}</th>
            </tr>
          </thead>
          <tbody>
            {answer?.accesses.map((entry) => (
              <tr key={entry.position}>
                <td className="mono">{times.moment(entry.at)}</td>
                <td>{sentence(entry, t)}</td>
                <td>{entry.by}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <div className="row">
        {before !== null && (
          <button type="button" className="button" onClick={() => setBefore(null)}>
            {t('people.latest')}
          </button>
        )}
        {answer !== null && answer.before !== null && (
          <button type="button" className="button" onClick={() => setBefore(answer.before)}>
            {t('people.older')}
          </button>
        )}
      </div>
    </section>
  );
};
