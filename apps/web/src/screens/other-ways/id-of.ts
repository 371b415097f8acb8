import { ask } from '../../api/client';

/** People know their name, the server their number. A name that two have is nobody's here: they use their numbers. */
export const idOf = async (typed: string): Promise<string> => {
  const wanted = typed.trim().toLocaleLowerCase();
  const listed = await ask('signIns');
  const named = listed.ok
    ? listed.answer.people.filter(({ name }) => name.toLocaleLowerCase() === wanted)
    : [];
  const [only] = named;
  return named.length === 1 && only !== undefined ? only.person : typed.trim();
};
