import { useLive } from '../../api/live';
import { useSoon } from '../../ui/soon';

/** Figures follow the record: whatever was recorded, they are asked for anew a moment later. */
export const useAgainSoon = (again: () => void): void => {
  const soon = useSoon(again);
  useLive(soon);
};
