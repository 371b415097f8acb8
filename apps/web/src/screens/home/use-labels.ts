import { useQuestion } from '../../api/use-question';
import type { Both } from '../../words/words';

export type Labels = (operation: unknown, characteristic: string) => Both;

/** What the build plan calls the values of its operations; a value it does not know goes by its code. */
export const useLabels = (serial: string | null): Labels => {
  const { answer } = useQuestion('section', serial === null ? null : { serial, at: 'all' });
  const cards = new Map(answer?.operations.map((card) => [card.operation, card.values]));
  return (operation, characteristic) => {
    const values = typeof operation === 'string' ? cards.get(operation) : undefined;
    const value = values?.find((one) => one.characteristic === characteristic);
    return value?.label ?? { en: characteristic, es: characteristic };
  };
};
