import type { Speech, WordKey } from '../../words/words';

const KNOWN: Readonly<Record<string, WordKey>> = {
  'no-answer': 'feed.why.no-answer',
  'own-network': 'feed.why.own-network',
  'tls-needed': 'feed.why.tls-needed',
  'secret-missing': 'feed.why.secret-missing',
  'no-mail-server': 'feed.why.no-mail-server',
};

/** Why a delivery failed, from its code. */
export const failureSays = (why: string, t: Speech['t']): string => {
  const known = KNOWN[why];
  if (known !== undefined) return t(known);
  const [, road, status = ''] = /^(http|smtp)-(\d+)$/.exec(why) ?? [];
  return road === undefined ? t('feed.why.unreachable', { code: why }) : t('feed.why.status', { status });
};
