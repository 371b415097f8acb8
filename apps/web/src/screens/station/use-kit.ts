import { useCallback, useEffect } from 'react';
import { useLive } from '../../api/live';
import { hereModule } from '../../api/here';
import { useSoon } from '../../ui/soon';

/** It is large, and wanted only when the network goes: not with every entry of a busy line. */
const A_WHILE_MS = 2_000;

/** What this station needs without a network is fetched when its screen opens, and again when something has happened. */
export const useKit = (station: string): void => {
  const fetchKit = useCallback(
    () => void hereModule().then(({ refreshKit }) => refreshKit(station)),
    [station],
  );
  const soon = useSoon(fetchKit, A_WHILE_MS);
  useEffect(fetchKit, [fetchKit]);
  useLive(soon);
};
