import { useQuestion } from '../../api/use-question';

const NOTHING = {};

/** The name of whoever is enrolled; the id of anyone else. */
export const useNames = (): ((person: string) => string) => {
  const { answer } = useQuestion('people', NOTHING);
  return (person) => answer?.people.find((one) => one.person === person)?.name ?? person;
};
