import type { ReactNode } from 'react';
import { useSignedIn } from '../session/session';
import { useSpeech } from '../words/words';

/** Which part of the home a section is, in the plant's own words. */
export const RoleTag = ({ role }: { readonly role: string | null }): ReactNode => {
  const { say } = useSpeech();
  const { plant } = useSignedIn();
  if (role === null) return null;
  const roles = plant.attributes?.find(({ id }) => id === 'role')?.values;
  const words = roles?.find(({ value }) => value === role)?.says;
  return <span className="tag">{words === undefined ? role : say(words)}</span>;
};
